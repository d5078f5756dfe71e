/**
 * The counts kept of a wearer's pairs, and what the calculator makes of each by now.
 * @import {Again} from "../page/types"
 * @import {Host, Plan} from "./types"
 */
import { html, nothing } from "lit-html";
import * as say from "words/book";
import { toRequest } from "../page/request.js";
import { dayOf } from "./days.js";

const PARTS = /** @type {const} */ (["cuff", "leg", "heel", "foot", "before_toe", "toe", "end"]);

/** Asks once of each plan whether it is counted otherwise by now. */
export class PlansList {
  /** @type {WeakMap<Plan, Again | null>} null while it is not known */
  #again = new WeakMap();

  /** @param {{ host: Host, draw: () => void }} parts */
  constructor({ host, draw }) {
    this.host = host;
    this.redraw = draw;
  }

  /** The newest first. @param {Plan[]} plans @param {(plan: Plan) => unknown} [way] what can be done with one */
  template(plans, way = () => nothing) {
    return plans.toReversed().map((plan) => this.#plan(plan, way));
  }

  /** @param {Plan} plan @param {(plan: Plan) => unknown} way */
  #plan(plan, way) {
    const again = this.#asked(plan);
    const { counted, two, knitted, at } = plan;
    const facts = counted.facts.map(({ name, text }) => `${name} ${text}`).join(" · ");
    return html`<details class="kept-plan">
      <summary>${knitted ? say.asKnitted : say.asPlanned}</summary>
      <p class="quiet">${knitted ? say.fromDay({ day: dayOf(at) }) : say.onDay({ day: dayOf(at) })} <bdi>${facts}</bdi></p>
      <table>
        <thead ?hidden=${!two}><tr><td></td><th scope="col">${say.sockOne}</th><th scope="col">${say.sockTwo}</th></tr></thead>
        <tbody>${PARTS.map((part) =>
          counted.figures[part]
            ? html`<tr><th scope="row">${say.part({ part })}</th><td><bdi>${counted.figures[part]}</bdi> <small>${say.partUnit({ part })}</small></td>
                ${two ? html`<td><bdi>${two.figures[part]}</bdi> <small>${say.partUnit({ part })}</small></td>` : nothing}</tr>`
            : nothing,
        )}</tbody>
      </table>
      ${again?.words ? html`<p class="note counted-otherwise">${again.words}</p>` : nothing}
      ${way(plan)}
    </details>`;
  }

  /** @param {Plan} plan */
  #asked(plan) {
    const known = this.#again.get(plan);
    if (known === undefined) this.#ask(plan);
    return known;
  }

  /** @param {Plan} plan */
  async #ask(plan) {
    this.#again.set(plan, null);
    try {
      const again = await this.host.again(toRequest(plan.values), plan.counted);
      this.#again.set(plan, again.errors ? { ...again, words: refusal(again.errors) } : again);
      if (again.errors || again.words) this.redraw();
    } catch {
      this.#again.delete(plan); // the calculator does not answer: asked again the next time it is drawn
    }
  }
}

/** @param {{ message: string, way_out: string }[]} errors */
function refusal([{ message, way_out }]) {
  return say.countsNoLonger({ problem: `${message} ${way_out}` });
}
