/**
 * What comes after the counts: the plan's link as a code, copied, or handed to the phone's own share
 * sheet where there is one; the card on paper; and the next person's foot on the same machine. Nothing
 * of the person goes along unless she says so, for this person, and never on the card.
 * @import {Answer, Asks} from "../page/types"
 * @import {Sheets} from "../page/sheets.js"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/paper";
import { bundle } from "../page/bundle.js";
import { toValues } from "../page/request.js";
import { showCard } from "./card.js";
import { CodeSheet } from "./code_sheet.js";
import { TagSheet } from "./tag_sheet.js";

/** @typedef {Extract<Answer, {plan: object}>} Planned */

export class Share {
  #withFoot = false;
  #withRecord = false;
  #person = "";
  /** @type {unknown} what came of the last tap */
  #outcome = nothing;

  /** @param {{engine: Asks, sheets: Sheets, place: HTMLElement}} parts */
  constructor({ engine, sheets, place }) {
    this.engine = engine;
    this.sheets = sheets;
    this.place = place;
    this.code = new CodeSheet(engine);
  }

  /** @param {Planned} answer */
  show(answer) {
    const { foot, other_foot, person } = answer.request;
    const about = JSON.stringify([foot, other_foot, person]);
    if (about !== this.#person) this.#withFoot = false; // she chose it for another
    this.#person = about;
    this.#outcome = nothing;
    this.#draw(answer);
  }

  /** @param {Planned} answer */
  #draw(answer) {
    const { link, counts_link, counts_link_words, link_with_record } = answer;
    const [whole, bare] = this.#withRecord
      ? [link_with_record ?? link, answer.counts_link_with_record ?? counts_link]
      : [link, counts_link];
    const chosen = this.#withFoot ? whole : bare;
    /** @param {unknown} outcome */
    const tell = (outcome) => {
      this.#outcome = outcome;
      this.#draw(answer);
    };
    const print = async () => {
      try {
        await showCard(this.engine, answer.request, counts_link ? addressOf(counts_link) : "");
      } catch {
        tell(html`<p class="note">${say.cardNotMade}</p>`);
      }
    };
    const tag = () => {
      const { visit, draft } = this.sheets;
      const { request } = answer;
      new TagSheet({ engine: this.engine, draft, request, label: visit?.label ?? "" });
    };
    const sets = async () => {
      try {
        const { sets: script = "", setsStyle } = document.documentElement.dataset;
        const { SetsSheet } = await bundle(script, setsStyle);
        const plan = toValues(answer.request);
        new SetsSheet({ engine: this.engine, draft: this.sheets.draft, plan });
      } catch (error) {
        console.error(error);
        tell(html`<p class="note">${say.setsNotLoaded}</p>`);
      }
    };
    /** @param {boolean} withFoot */
    const choose = (withFoot) => {
      this.#withFoot = withFoot;
      tell(nothing);
    };
    const record = () => {
      this.#withRecord = !this.#withRecord;
      tell(nothing);
    };
    /** @param {boolean} withFoot @param {string} words */
    const choice = (withFoot, words) => html`<button type="button" class="chosen"
      aria-pressed=${withFoot === this.#withFoot} @click=${() => choose(withFoot)}>${words}</button>`;
    render(
      html`
        <p>${say.linkMeans}</p>
        ${
          link === counts_link
            ? nothing
            : html`<div class="row" role="group" aria-label=${say.goesAlong}>
                  ${choice(false, say.countsOnly)} ${choice(true, say.withFoot)}
                </div>
                <p class="goes-along">${this.#withFoot ? say.wholeLink : `${chosen ? say.bareLink : ""} ${counts_link_words}`.trim()}</p>`
        }
        ${
          link_with_record
            ? html`<button type="button" class="chosen" id="with-record" aria-pressed=${this.#withRecord} @click=${record}>${say.withRecord}</button>
                <p class="goes-along">${say.recordMeans}</p>`
            : nothing
        }
        ${chosen ? this.#ways(addressOf(chosen), tell) : nothing}
        <div role="status">${this.#outcome}</div>
        <p class="goes-along">${say.onPaper}</p>
        <div class="row">
          <button type="button" id="print-card" @click=${print}>${say.printCard}</button>
          <button type="button" id="write-tag" @click=${tag}>${say.writeTag}</button>
          <button type="button" id="write-set" @click=${sets}>${say.writeSet}</button>
        </div>
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
  return `${new URL(".", document.baseURI).href}#${link}`;
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
