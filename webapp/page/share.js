/**
 * What comes after the counts: the plan's link as a code, copied, or handed to the phone's own share
 * sheet where there is one; the card on paper; and the next person's foot on the same machine. Nothing
 * of the person goes along unless she says so, for this person, and never on the card.
 * @import {Answer, Asks} from "./types"
 * @import {CodeSheet} from "./code_sheet.js"
 * @import {Sheets} from "./sheets.js"
 */
import { html, nothing, render } from "lit-html";
import { paper } from "./to_paper.js";

/** @typedef {Extract<Answer, {plan: object}>} Planned */

const BARE = "Cylinder, yarn and counts go along, and nothing of the person.";
const WHOLE =
  "Every measure goes along, and what was said of the person, so that the fit can be read.";

export class Share {
  #withFoot = false;
  #person = "";
  /** @type {unknown} what came of the last tap */
  #outcome = nothing;

  /** @param {{engine: Asks, sheets: Sheets, code: CodeSheet}} parts */
  constructor({ engine, sheets, code }) {
    this.engine = engine;
    this.sheets = sheets;
    this.code = code;
    this.place = /** @type {HTMLElement} */ (document.getElementById("share-place"));
  }

  /** @param {Planned | null} answer null while there is nothing to share */
  show(answer) {
    this.place.hidden = !answer;
    if (!answer) return render(nothing, this.place);
    const { foot, other_foot, person } = answer.request;
    const about = JSON.stringify([foot, other_foot, person]);
    if (about !== this.#person) this.#withFoot = false; // she chose it for another
    this.#person = about;
    this.#outcome = nothing;
    this.#draw(answer);
  }

  /** @param {Planned} answer */
  #draw(answer) {
    const { link, counts_link, counts_link_words } = answer;
    const chosen = this.#withFoot ? link : counts_link;
    /** @param {unknown} outcome */
    const say = (outcome) => {
      this.#outcome = outcome;
      this.#draw(answer);
    };
    const print = async () => {
      try {
        const { printCard } = await paper();
        await printCard(this.engine, answer.request, counts_link ? addressOf(counts_link) : "");
      } catch {
        say(
          html`<p class="note">The card could not be made just now. Tap once more, or load the page again.</p>`,
        );
      }
    };
    const tag = async () => {
      try {
        const { TagSheet } = await paper();
        const { visit, draft } = this.sheets;
        const { request } = answer;
        new TagSheet({ engine: this.engine, draft, request, label: visit?.label ?? "" });
      } catch {
        say(
          html`<p class="note">The tag could not be made just now. Tap once more, or load the page again.</p>`,
        );
      }
    };
    /** @param {boolean} withFoot */
    const choose = (withFoot) => {
      this.#withFoot = withFoot;
      say(nothing);
    };
    /** @param {boolean} withFoot @param {string} words */
    const choice = (withFoot, words) => html`<button type="button" class="chosen"
      aria-pressed=${withFoot === this.#withFoot} @click=${() => choose(withFoot)}>${words}</button>`;
    render(
      html`
        <hr class="knit" />
        <h3>Keep it or pass it on</h3>
        <p>A link opens with the same counts on any phone that has this page, with or without a signal.</p>
        ${
          link === counts_link
            ? nothing
            : html`<div class="row" role="group" aria-label="What goes along">
                  ${choice(false, "Counts only")} ${choice(true, "With the foot")}
                </div>
                <p class="goes-along">${this.#withFoot ? WHOLE : `${chosen ? BARE : ""} ${counts_link_words}`.trim()}</p>`
        }
        ${chosen ? this.#ways(addressOf(chosen), say) : nothing}
        <p class="goes-along">On paper: a card with boxes to tick at the machine, and a tag that goes with the finished pair.</p>
        <div class="row">
          <button type="button" id="print-card" @click=${print}>Print the card</button>
          <button type="button" id="write-tag" @click=${tag}>Write the tag</button>
        </div>
        <div role="status">${this.#outcome}</div>
        ${this.sheets.visiting ? nothing : this.#nextFoot()}
      `,
      this.place,
    );
  }

  /** @param {string} address @param {(outcome: unknown) => void} say */
  #ways(address, say) {
    const copy = async () => say(await copied(address));
    const send = async () => {
      try {
        await navigator.share({ title: "A sock plan", url: address });
      } catch (error) {
        if (error instanceof Error && error.name !== "AbortError") await copy();
      }
    };
    return html`<div class="row">
      <button type="button" id="show-code" @click=${() => this.code.show(address)}>Show a code to scan</button>
      <button type="button" id="copy-link" @click=${copy}>Copy the link</button>
      ${"share" in navigator ? html`<button type="button" @click=${send}>Send it…</button>` : nothing}
    </div>`;
  }

  #nextFoot() {
    return html`<hr class="knit" />
      <h3>The next foot</h3>
      <p>Cylinder, fabric and yarn stay. All else is emptied, and can be brought back.</p>
      <button type="button" id="next-foot" @click=${() => this.sheets.nextFoot()}>Measure the next foot</button>`;
  }
}

/** @param {string} link */
function addressOf(link) {
  return `${location.href.split("#")[0]}#${link}`;
}

/** Copy it, or show it to be copied. @param {string} address */
async function copied(address) {
  try {
    await navigator.clipboard.writeText(address);
    return html`<p class="note">Copied. Paste it wherever you like.</p>`;
  } catch {
    return html`<p class="note">The phone would not copy it. Press and hold the link, then copy:</p>
      <input class="address" readonly aria-label="The plan’s link" .value=${address} @focus=${select} />`;
  }
}

/** @param {Event} event */
function select(event) {
  /** @type {HTMLInputElement} */ (event.target).select();
}
