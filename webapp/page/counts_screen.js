/**
 * The whole of step three: hands the newest answer to its pieces, marks the tape with what is known,
 * and says the foot rounds once they have settled, for those who listen.
 * @import {Answer, Guessed, Problem, Shown} from "./types"
 * @import {Form} from "./form.js"
 * @import {ToShare} from "./to_share.js"
 * @import {StepsNav} from "./steps_nav.js"
 */
import { nothing, render } from "lit-html";
import * as say from "words/page";
import { renderAround, renderNeed } from "./around.js";
import { renderCounts, renderPencil } from "./counts.js";
import { wordsOfSockTwo } from "./first_sock.js";
import { knitAnew, partsChanged } from "./motion.js";
import { joined, showPicture } from "./picture.js";
import { placeOf, stepOf } from "./place_of.js";
import { renderProblems } from "./problems.js";
import { renderSteps } from "./steps_list.js";
import { onTape } from "./steps_nav.js";
import { renderStock } from "./stock.js";

const SETTLED_MS = 1500;

/** @param {string} id */
const place = (id) => /** @type {HTMLElement} */ (document.getElementById(id));

/** The answer in a breath, for the tape. @param {Shown} plan */
function gist(plan) {
  const { rounds } = plan.counts.foot;
  return wordsOfSockTwo(plan) ? say.gistTwo({ rounds }) : say.gistBoth({ rounds });
}

export class CountsScreen {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #settling;
  #said = "";
  /** @type {Shown | undefined} */
  #plan;

  /** @param {StepsNav} nav @param {ToShare} share @param {Form} form */
  constructor(nav, share, form) {
    this.form = form;
    this.nav = nav;
    this.share = share;
    this.#pencil();
  }

  #take = (/** @type {string} */ leg) => this.form.set("sock.leg.kind", leg);

  /** @param {Answer} answer */
  show(answer) {
    const { plan } = answer;
    document.getElementById("not-yet")?.remove();
    renderProblems(plan ? [] : answer.errors, place("problems"), (step) => this.nav.go(step));
    if (plan) {
      place("to-cylinder").hidden = !answer.guessed.includes("cylinder");
      const changed = partsChanged(this.#plan?.parts, plan.parts);
      renderCounts(plan, place("counts-place"), this.#take, answer.guessed);
      showPicture(joined(answer.picture), place("picture-place"));
      knitAnew(place("picture-place"), changed);
      renderAround(plan, place("around-place"), (step) => this.nav.go(step));
      renderNeed(plan, place("need-place"));
      renderSteps(plan, place("steps-place"));
    } else {
      this.#pencil();
      place("to-cylinder").hidden = true;
      for (const id of ["around-place", "need-place", "steps-place"]) {
        render(nothing, place(id));
      }
      place("picture-place").hidden = true;
    }
    const panels = place("panels");
    panels.hidden = !plan && !answer.errors.some(({ field }) => panels.contains(placeOf(field)));
    this.share.show(plan ? answer : null);
    renderStock(plan);
    this.#mark(plan, plan && gist(plan), plan ?? answer.foot, answer.guessed);
    this.#say(plan ? wordsOfSockTwo(plan) || gist(plan) : "");
  }

  /** The range that stands above the form. */
  #pencil() {
    const between = document.querySelector("#so-far .figure")?.textContent ?? "";
    renderPencil(between, place("counts-place"));
  }

  /** Counts that the calculator has not checked yet, or none. @param {Shown | undefined} plan */
  showLast(plan) {
    if (plan) renderCounts(plan, place("counts-place"), this.#take);
    else this.#pencil();
    this.#mark(plan, plan && say.gistBefore({ rounds: plan.counts.foot.rounds }));
  }

  /**
   * @param {Shown | undefined} plan @param {string} [words] the counts in a breath
   * @param {{ measures: Shown["measures"] } | undefined} [told] what the foot tells, which may come first
   * @param {Guessed} [guessed]
   */
  #mark(plan, words = "", told = plan, guessed = []) {
    this.#plan = plan;
    const length = told?.measures.length;
    this.nav.mark(
      "measure",
      length ? `${length.from === "estimated" ? "≈ " : ""}${length.text}` : "",
    );
    const about = guessed.includes("cylinder") ? "≈ " : "";
    this.nav.mark("yarn", plan ? about + say.slots({ slots: plan.counts.needles }) : "");
    this.nav.mark("counts", words);
  }

  /** Without counts the tape says which step is in the way. @param {Problem[]} problems those told */
  markProblems(problems) {
    if (this.#plan) return;
    const steps = problems.map(({ field }) => onTape(stepOf(field)));
    for (const step of /** @type {const} */ (["measure", "yarn", "counts"])) {
      const count = steps.filter((one) => one === step).length;
      this.nav.mark(step, count ? say.toFix({ things: count }) : "");
    }
  }

  /** @param {string} words */
  #say(words) {
    clearTimeout(this.#settling);
    this.#settling = setTimeout(() => {
      if (words !== this.#said) place("said").textContent = words;
      this.#said = words;
    }, SETTLED_MS);
  }
}
