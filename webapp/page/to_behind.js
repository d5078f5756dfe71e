/**
 * The way to the pages behind the steps (webapp/behind): they are fetched once the first screen stands, or
 * when one of them is opened before.
 * @import {Host, open} from "../behind/main.js"
 * @import {Answer} from "./types"
 */
import * as say from "words/page";
import { bundle } from "./bundle.js";
import { isBehind } from "./steps_nav.js";
import { nameScreen } from "./title.js";

/** @typedef {ReturnType<typeof open>} Pages */

export class ToBehind {
  /** @type {Promise<Pages> | undefined} */
  #pages;
  /** @type {Pages | undefined} */
  #there;

  /** @param {Host} host */
  constructor(host) {
    this.host = host;
    host.nav.addEventListener("step", () => this.#shown());
    this.#shown();
  }

  /** @returns {Promise<Pages>} */
  load() {
    this.#pages ??= this.#open().catch((error) => {
      this.#pages = undefined; // asked again, it may come
      throw error;
    });
    return this.#pages;
  }

  /** @returns {Promise<Pages>} */
  async #open() {
    const { behind = "", behindStyle = "" } = document.documentElement.dataset;
    const part = await bundle(behind, behindStyle);
    const pages = part.open(this.host);
    this.#there = pages;
    return pages;
  }

  /** As `Form.showIn`, for the lists beside the plan. @param {string} units */
  showIn(units) {
    this.#there?.shelf.form.showIn(units);
    this.#there?.chart.showIn(units);
  }

  /** The counts have changed, and what is ranked or tabled with them. @param {Answer} answer */
  follow(answer) {
    this.#there?.shelf.follow(answer);
    this.#there?.chart.follow(answer);
  }

  /** One of them is on screen. */
  async #shown() {
    const { nav, onTrouble } = this.host;
    if (!isBehind(nav.step) || this.#pages) return;
    try {
      await this.load();
      nameScreen();
      document.getElementById(`${nav.step}-title`)?.focus({ preventScroll: true });
    } catch (error) {
      console.error(error);
      onTrouble(say.partNotLoaded);
    }
  }
}
