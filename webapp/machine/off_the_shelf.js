/**
 * What a finished sock took is taken off the shelf's yarn, where she wants that and the shelf says how
 * much there is.
 * @import {Quantity} from "../page/types"
 * @import {Counter} from "./counter.js"
 * @import {Sheet} from "./sheet.js"
 */
import { html, nothing } from "lit-html";
import * as say from "words/machine";

/**
 * @typedef {{ row: number, name: string, left: Quantity, after: string, likely: boolean }} Yarn
 * @typedef {{ takes: Quantity, yarns: Yarn[], errors?: { message: string, way_out: string }[] }} Used
 *
 * @typedef {object} Shelf the page's
 * @property {() => boolean} weighed whether it says of any yarn how much there is
 * @property {(request: object) => Promise<Used>} used
 * @property {(row: number, left: string) => void} put
 */

export class OffTheShelf {
  /** @type {Used | null} */
  #used = null;
  /** @type {Yarn | undefined} */
  #chosen;
  #words = "";
  /** @type {(() => void) | null} */
  #back = null;

  /** @param {Counter} counter @param {Sheet} sheet @param {Shelf} shelf */
  constructor(counter, sheet, shelf) {
    this.counter = counter;
    this.sheet = sheet;
    this.shelf = shelf;
  }

  async open() {
    this.#used = null;
    this.#words = say.workingOutYarn;
    this.#draw();
    try {
      const used = await this.shelf.used(this.counter.session.request);
      const [error] = used.errors ?? [];
      this.#words = error ? `${error.message} ${error.way_out}` : "";
      this.#used = error ? null : used;
      this.#chosen = used.yarns?.find(({ likely }) => likely) ?? used.yarns?.[0];
    } catch {
      this.#words = say.yarnUnknown;
    }
    this.#draw();
  }

  /** At the end of a sock. */
  template() {
    const { sock, yarn } = this.counter.state;
    if (yarn[sock])
      return html`<p>${yarn[sock]}</p>${
        this.#back
          ? html`<button type="button" id="put-yarn-back" @click=${this.#back}>${say.putYarnBack}</button>`
          : nothing
      }`;
    return this.shelf.weighed()
      ? html`<button type="button" id="off-the-shelf" @click=${() => this.open()}>${say.takeYarnOff}</button>`
      : nothing;
  }

  async #take() {
    const [used, yarn] = [this.#used, this.#chosen];
    if (!used || !yarn) return;
    this.shelf.put(yarn.row, yarn.after);
    this.#back = async () => {
      this.shelf.put(yarn.row, yarn.left.text);
      this.#back = null;
      await this.counter.yarn("");
    };
    await this.counter.yarn(
      say.yarnIsOff({ takes: used.takes.text, yarn: yarn.name, left: yarn.after }),
    );
    this.sheet.close();
  }

  #draw() {
    const used = this.#used;
    const choose = (/** @type {Yarn} */ yarn) => {
      this.#chosen = yarn;
      this.#draw();
    };
    this.sheet.show(
      say.yarnTitle,
      html`<div role="status">${this.#words ? html`<p>${this.#words}</p>` : nothing}</div>
        ${
          used
            ? html`<p>${say.sockTook({ takes: used.takes.text })}</p>
                <div class="choice stacked">${used.yarns.map(
                  (yarn) =>
                    html`<label><input type="radio" name="off-the-shelf" .checked=${yarn === this.#chosen} @change=${() => choose(yarn)} />
                      <span>${say.yarnLeft({ yarn: yarn.name, now: yarn.left.text, after: yarn.after })}</span></label>`,
                )}</div>
                <button type="button" class="go" id="take-yarn" @click=${() => this.#take()}>${say.takeItOff}</button>`
            : nothing
        }`,
    );
  }
}
