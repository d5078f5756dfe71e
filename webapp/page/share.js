/**
 * What comes after the counts: the plan's link as a code, copied, or handed to the phone's own share
 * sheet where there is one; the card on paper; and the next person's foot on the same machine. Nothing
 * of the person goes along unless she says so, for this person, and never on the card.
 * @import {Answer, Asks} from "./types"
 * @import {CodeSheet} from "./code_sheet.js"
 * @import {Sheets} from "./sheets.js"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";
import { paper } from "./to_paper.js";

/** @typedef {Extract<Answer, {plan: object}>} Planned */

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
    const tell = (outcome) => {
      this.#outcome = outcome;
      this.#draw(answer);
    };
    const print = async () => {
      try {
        const { printCard } = await paper();
        await printCard(this.engine, answer.request, counts_link ? addressOf(counts_link) : "");
      } catch {
        tell(html`<p class="note">${say.cardNotMade}</p>`);
      }
    };
    const tag = async () => {
      try {
        const { TagSheet } = await paper();
        const { visit, draft } = this.sheets;
        const { request } = answer;
        new TagSheet({ engine: this.engine, draft, request, label: visit?.label ?? "" });
      } catch {
        tell(html`<p class="note">${say.tagNotMade}</p>`);
      }
    };
    /** @param {boolean} withFoot */
    const choose = (withFoot) => {
      this.#withFoot = withFoot;
      tell(nothing);
    };
    /** @param {boolean} withFoot @param {string} words */
    const choice = (withFoot, words) => html`<button type="button" class="chosen"
      aria-pressed=${withFoot === this.#withFoot} @click=${() => choose(withFoot)}>${words}</button>`;
    render(
      html`
        <hr class="knit" />
        <h3>${say.passOn}</h3>
        <p>${say.linkMeans}</p>
        ${
          link === counts_link
            ? nothing
            : html`<div class="row" role="group" aria-label=${say.goesAlong}>
                  ${choice(false, say.countsOnly)} ${choice(true, say.withFoot)}
                </div>
                <p class="goes-along">${this.#withFoot ? say.wholeLink : `${chosen ? say.bareLink : ""} ${counts_link_words}`.trim()}</p>`
        }
        ${chosen ? this.#ways(addressOf(chosen), tell) : nothing}
        <p class="goes-along">${say.onPaper}</p>
        <div class="row">
          <button type="button" id="print-card" @click=${print}>${say.printCard}</button>
          <button type="button" id="write-tag" @click=${tag}>${say.writeTag}</button>
        </div>
        <div role="status">${this.#outcome}</div>
        ${this.sheets.visiting ? nothing : this.#nextFoot()}
      `,
      this.place,
    );
  }

  /** @param {string} address @param {(outcome: unknown) => void} tell */
  #ways(address, tell) {
    const copy = async () => tell(await copied(address));
    const send = async () => {
      try {
        await navigator.share({ title: say.sockPlan, url: address });
      } catch (error) {
        if (error instanceof Error && error.name !== "AbortError") await copy();
      }
    };
    return html`<div class="row">
      <button type="button" id="show-code" @click=${() => this.code.show(address)}>${say.showCode}</button>
      <button type="button" id="copy-link" @click=${copy}>${say.copyLink}</button>
      ${"share" in navigator ? html`<button type="button" @click=${send}>${say.sendIt}</button>` : nothing}
    </div>`;
  }

  #nextFoot() {
    return html`<hr class="knit" />
      <h3>${say.nextFoot}</h3>
      <p>${say.nextFootMeans}</p>
      <button type="button" id="next-foot" @click=${() => this.sheets.nextFoot()}>${say.measureNextFoot}</button>`;
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
    return html`<p class="note">${say.copied}</p>`;
  } catch {
    return html`<p class="note">${say.notCopied}</p>
      <input class="address" readonly aria-label=${say.plansLink} .value=${address} @focus=${select} />`;
  }
}

/** @param {Event} event */
function select(event) {
  /** @type {HTMLInputElement} */ (event.target).select();
}
