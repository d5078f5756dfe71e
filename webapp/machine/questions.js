/**
 * What is asked before a pair is begun or goes for good: two answers, or none where the sheet is closed.
 * @import {Kept} from "./types"
 */
import { html } from "lit-html";
import * as say from "words/machine";
import { standing, whose } from "./on_machine.js";
import { Sheet } from "./sheet.js";

/**
 * @template T
 * @typedef {object} Answer
 * @property {string} id of its button
 * @property {string} words on it
 * @property {T} means
 */

/**
 * @template T
 * @param {string} title
 * @param {unknown} words
 * @param {Answer<T>} first what most want
 * @param {string} between
 * @param {Answer<T>} second
 * @returns {Promise<T | null>} null where she closed it
 */
function ask(title, words, first, between, second) {
  const sheet = new Sheet();
  return new Promise((resolve) => {
    /** @param {T | null} answer */
    const settle = (answer) => {
      sheet.remove();
      resolve(answer);
    };
    sheet.show(
      title,
      html`<p>${words}</p>
        <button type="button" class="go" id=${first.id} @click=${() => settle(first.means)}>${first.words}</button>
        <p>${between}</p>
        <button type="button" id=${second.id} @click=${() => settle(second.means)}>${second.words}</button>`,
      () => settle(null),
    );
  });
}

/**
 * A pair is begun already: go on with it, or begin a new one? One that is for somebody else is hardly meant.
 * @param {Kept} kept the pair begun @param {string | undefined} wearer whom the new one is for
 */
export function askWhich(kept, wearer) {
  const on = { id: "go-on-instead", words: say.goOnWithIt, means: "on" };
  const anew = { id: "begin-new", words: say.beginNew, means: "new" };
  const mine = kept.session.wearer === wearer;
  return ask(
    say.begunAlready,
    html`${whose(kept)}${say.stands({ place: standing(kept) })}`,
    mine ? on : anew,
    say.newBeside,
    mine ? anew : on,
  );
}

/** Sock one is measured already: knit its other, or sock one of a new pair? */
export function askSock() {
  return ask(
    say.askSock,
    say.oneIsMeasured,
    { id: "begin-sock-two", words: say.sockTwoOfIt, means: 1 },
    say.orNewPair,
    { id: "begin-sock-one", words: say.sockOneOfNew, means: 0 },
  );
}

/** Whether a pair is to go for good. */
export function askRemove() {
  return ask(
    say.askRemove,
    say.removeMeans,
    { id: "keep-pair", words: say.keepIt, means: false },
    say.ifSure,
    { id: "remove-pair", words: say.removeForGood, means: true },
  );
}
