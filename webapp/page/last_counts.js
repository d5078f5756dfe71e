/**
 * The counts of the last visit: they stand, marked, until the calculator is up, as long as they belong
 * to what is typed. Where its answer to the same request is another (a new version), a line says so.
 * @import {Answer, Part, Request, Shown, Values} from "./types"
 * @import {CountsScreen} from "./counts_screen.js"
 * @import {Draft} from "./draft.js"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";
import { isEmpty, toRequest, withUsual } from "./request.js";

export class LastCounts {
  #answered = false;

  /** @param {Draft} draft @param {CountsScreen} screen */
  constructor(draft, screen) {
    this.draft = draft;
    this.screen = screen;
    this.line = /** @type {HTMLElement} */ (document.getElementById("last-time"));
    this.notYet = /** @type {HTMLElement} */ (document.getElementById("not-yet"));
    this.before = draft.last;
  }

  /** Until there is an answer. @param {Values} values as they are typed now */
  show(values) {
    if (this.#answered) return;
    let shown = this.#belongsTo(toRequest(values));
    try {
      this.screen.showLast(shown ? this.before?.plan : undefined);
    } catch {
      // Another version kept them in a form that this one does not know.
      this.screen.showLast(undefined);
      shown = false;
    }
    this.#say(shown ? [say.fromLastTime] : []);
    // Counts that came with a link stand there meanwhile (sent/main.js).
    this.notYet.hidden = shown || document.querySelector("#sent-place .tally") !== null;
    if (!isEmpty(values)) this.notYet.textContent = say.countsComing;
  }

  /** The calculator's own answer takes their place. @param {Answer} answer */
  settle({ request, plan }) {
    this.#answered = true;
    this.draft.last = plan ? { request, plan: kept(plan) } : null;
    const same = plan && this.#belongsTo(request);
    this.#say(same ? differences(this.before?.plan.parts ?? [], plan.parts) : []);
  }

  /** @param {Request} request */
  #belongsTo(request) {
    return planned(this.before?.request) === planned(request);
  }

  /** @param {string[]} sentences */
  #say(sentences) {
    render(sentences.length ? sentences.map((one) => html`<p>${one}</p>`) : nothing, this.line);
    this.line.hidden = !sentences.length;
  }
}

/**
 * What is typed, in whatever order its fields came, and whatever is known of the knitter.
 * @param {Request | undefined} request
 */
function planned(request) {
  const whole = request && { ...withUsual(request), knitter: undefined };
  return JSON.stringify(whole, (_, value) =>
    value instanceof Object && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort())
      : value,
  );
}

/** As much of a plan as is shown of it. @param {Shown} plan @returns {Shown} */
function kept({ parts, counts, fabric, notes, origin, measures: { length } }) {
  return { parts, counts, fabric, notes, origin, measures: { length } };
}

/** An older version kept no figure: then rounds and rows are compared. @param {Part[]} before @param {Part[]} now */
function differences(before, now) {
  return now.flatMap((part) => {
    const old = before.find((one) => one.part === part.part);
    const was = old?.figure ?? `${old?.count}`;
    const is = old?.figure ? part.figure : `${part.count}`;
    return !old || is === was
      ? []
      : [say.countedOtherwise({ title: part.title, now: is, before: was })];
  });
}
