/**
 * The line on the page that says what is on the machine, with the way to it, the way to put it away, and
 * the way back.
 * @import {Kept} from "./types"
 */
import { html, nothing, render } from "lit-html";
import { SOCKS } from "./counter_screen.js";
import { where } from "./moments.js";
import { fold, view } from "./progress.js";
import { Sheet } from "./sheet.js";

/** @typedef {Record<"enter" | "putAway" | "bringBack" | "remove", (id: string) => void>} Ways */

/** Where a pair stands, in words. @param {Kept} kept */
export function standing({ session, happenings }) {
  const { sock, socks, places } = fold(session, happenings);
  const { title, ended } = view(socks[sock], places[sock]);
  if (ended) return `${SOCKS[sock].toLowerCase()} is off the machine, the other comes next`;
  return `${SOCKS[sock].toLowerCase()}, ${title.toLowerCase()}, ${where(socks[sock], places[sock])}`;
}

/** @param {Kept} kept */
function lead({ session, happenings }) {
  const { sock, ended } = fold(session, happenings);
  return ended[sock] ? "A pair is half knitted:" : "A sock is on the machine:";
}

/**
 * @param {HTMLElement} place @param {Kept[]} unfinished @param {Kept[]} away @param {Ways} ways
 * @param {boolean} shown whether those put away are shown at once: one has just been
 */
export function drawLine(place, unfinished, away, ways, shown) {
  render(
    html`${[...unfinished].reverse().map(
      (kept) => html`<div class="line on-machine">
        <p><strong>${lead(kept)}</strong> ${standing(kept)}. <span class="quiet">${kept.session.label}, begun ${day(kept.session.began)}.</span></p>
        <div class="row">
          <button type="button" class="go-on" @click=${() => ways.enter(kept.session.id)}>Go on</button>
          <button type="button" class="put-away" @click=${() => ways.putAway(kept.session.id)}>Put away</button>
        </div>
      </div>`,
    )}
    ${
      away.length
        ? html`<details class="line away" ?open=${shown}>
            <summary>Put away: ${away.length === 1 ? "a pair" : `${away.length} pairs`}, kept as it stood</summary>
            ${[...away].reverse().map((kept) => putAway(kept, ways))}
          </details>`
        : nothing
    }`,
    place,
  );
}

/** @param {Kept} kept @param {Ways} ways */
function putAway(kept, { bringBack, remove }) {
  const { id, label, began } = kept.session;
  return html`<p>${standing(kept)} <span class="quiet">${label}, begun ${day(began)}.</span></p>
    <div class="row">
      <button type="button" class="bring-back" @click=${() => bringBack(id)}>Bring it back</button>
      <button type="button" class="remove" @click=${() => remove(id)}>Remove it…</button>
    </div>`;
}

/** @returns {Promise<boolean>} whether a pair is to go for good */
export function askRemove() {
  const sheet = new Sheet();
  return new Promise((resolve) => {
    /** @param {boolean} answer */
    const settle = (answer) => {
      resolve(answer);
      sheet.remove();
    };
    sheet.show(
      "Remove this pair?",
      html`<p>Its counts, its notes and how long it took go from this phone, and nothing brings them back.</p>
        <button type="button" class="go" id="keep-pair" @click=${() => settle(false)}>Keep it</button>
        <button type="button" id="remove-pair" @click=${() => settle(true)}>Remove it for good</button>`,
      () => settle(false),
    );
  });
}

/**
 * A pair is begun already: go on with it, or begin a new pair?
 * @param {string} words where it stands @returns {Promise<"on" | "new" | null>} null where she closed it
 */
export function askWhich(words) {
  const sheet = new Sheet();
  return new Promise((resolve) => {
    /** @param {"on" | "new" | null} answer */
    const settle = (answer) => {
      resolve(answer);
      sheet.remove();
    };
    sheet.show(
      "A pair is begun already",
      html`<p>Where it stands: ${words}.</p>
        <button type="button" class="go" id="go-on-instead" @click=${() => settle("on")}>Go on with it</button>
        <p>A new pair is kept beside it; both are at the top of the page.</p>
        <button type="button" id="begin-new" @click=${() => settle("new")}>Begin a new pair</button>`,
      () => settle(null),
    );
  });
}

/**
 * Sock one is measured already: is its other the one to knit, or sock one of a new pair?
 * @returns {Promise<0 | 1 | null>} null where she closed it
 */
export function askSock() {
  const sheet = new Sheet();
  return new Promise((resolve) => {
    /** @param {0 | 1 | null} sock */
    const settle = (sock) => {
      resolve(sock);
      sheet.remove();
    };
    sheet.show(
      "Which sock?",
      html`<p>A measured sock one stands on the plan.</p>
        <button type="button" class="go" id="begin-sock-two" @click=${() => settle(1)}>Sock two, its other</button>
        <p>Or the first sock of another pair, with the counts as planned.</p>
        <button type="button" id="begin-sock-one" @click=${() => settle(0)}>Sock one of a new pair</button>`,
      () => settle(null),
    );
  });
}

/** @param {number} ms */
function day(ms) {
  return new Date(ms).toLocaleDateString(undefined, { day: "numeric", month: "long" });
}
