/**
 * The button that begins a pair at the machine with the counts on screen.
 * @import {Machine} from "../machine/main.js"
 * @import {FirstSock, Knit} from "../machine/types"
 * @import {Answer, Asks, Request, Visit} from "./types"
 */
import * as say from "words/page";
import { samePlan, sockOneIn } from "./pair_of_sheet.js";

export class KnitIt {
  /** @type {Request | undefined} */
  #request;
  /** @type {Visit | null} whose it is, where it is not her own */
  #visit = null;
  /** @type {PromiseWithResolvers<void> | undefined} kept when what is typed by now is answered */
  #answer;
  /** @type {string[]} */
  #cautions = [];
  #care = /** @type {HTMLElement} */ (document.getElementById("to-care"));
  #button = /** @type {HTMLButtonElement} */ (document.getElementById("knit-it"));

  /**
   * @param {object} parts
   * @param {Asks} parts.engine @param {() => Promise<Machine>} parts.load
   * @param {(id: string) => Promise<void>} parts.enter put a pair's counter on screen
   * @param {(sentence: string) => void} parts.trouble "" when it is over
   */
  constructor({ engine, load, enter, trouble }) {
    this.engine = engine;
    this.load = load;
    this.enter = enter;
    this.trouble = trouble;
    this.#button.addEventListener("click", () => this.#begin());
    this.#care.addEventListener("click", () => this.#takeCare());
  }

  /** What is typed has changed, or whose sheet it is on. */
  changed() {
    this.#answer ??= Promise.withResolvers();
  }

  /** What it would begin, and whose sheet it is on. @param {Answer} answer @param {Visit | null} visit */
  offer({ plan, request, guessed }, visit) {
    this.#visit = visit;
    this.#request = plan && request;
    this.#cautions = plan?.cautions ?? [];
    this.#button.hidden = !plan || guessed.includes("cylinder"); // nobody's machine
    this.#care.hidden = !plan;
    this.#answer?.resolve();
    this.#answer = undefined;
  }

  /** What is written of sock one, if it is this very plan's. @param {Request} request @returns {Record<string, string>} */
  measured(request) {
    const planned = this.#request;
    if (!planned?.first_sock || !samePlan(planned, request)) return {};
    const typed = /** @type {FirstSock} */ (planned.first_sock);
    return planned.units === request.units ? { ...typed } : sockOneIn(typed, planned.units);
  }

  async #begin() {
    let again = false; // she thought better of it
    this.#button.disabled = true;
    this.trouble("");
    try {
      await this.#answer?.promise; // or it would begin what stood here before
      const request = this.#request;
      if (!request) return;
      const { first_sock, ...one } = request;
      const { kind, id: wearer = "", label = "" } = this.#visit ?? {};
      const who = kind === "wearer" ? { wearer, who: label } : {};
      const [machine, knit, two] = await Promise.all([
        this.load(),
        this.#knit(one),
        first_sock ? this.#knit(request) : undefined,
      ]);
      const measured = /** @type {FirstSock | undefined} */ (first_sock);
      const cautions = this.#cautions;
      const pair = { request: /** @type {Request} */ (one), knit, two, measured, cautions, ...who };
      const id = await machine.begin(pair);
      if (id) await this.enter(id);
      else again = true;
    } catch (error) {
      console.error(error);
      this.trouble(say.counterNotBegun);
    } finally {
      this.#button.disabled = false;
      if (again) this.#button.focus(); // which it could not have, disabled
    }
  }

  async #takeCare() {
    this.trouble("");
    try {
      (await this.load()).care(this.#cautions);
    } catch (error) {
      console.error(error);
      this.trouble(say.counterNotLoaded);
    }
  }

  /** @param {object} request @returns {Promise<Knit>} */
  async #knit(request) {
    const answer = /** @type {any} */ (await this.engine.ask({ do: "knit", request }));
    if (answer.errors) throw new Error(JSON.stringify(answer.errors)); // what has a plan can be knitted
    return answer;
  }
}
