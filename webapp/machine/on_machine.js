/**
 * The line on the page that says what is on the machine, with the way to it, the way to put it away, and
 * the way back.
 * @import {Aside, Kept} from "./types"
 */
import { html, nothing, render } from "lit-html";
import { setAside } from "../page/set_aside.js";
import { short } from "../page/short.js";
import { SOCKS } from "./counter_screen.js";
import { where } from "./moments.js";
import { fold, view } from "./progress.js";

/** @typedef {Record<"enter" | "putAway" | "bringBack" | "remove", (id: string) => void>} ForPairs */
/** @typedef {ForPairs & { drop: (one: Aside) => void }} Ways */
/** @typedef {{ unfinished: Kept[], away: Kept[], aside: Aside[] }} There */

const PAIR = "A pair at the machine cannot be read and was set aside. All others are as they were.";
const HAPPENING =
  "One thing that was counted at the machine cannot be read and was set aside. All before and after it counts as it did.";

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
 * @param {HTMLElement} place @param {There} there @param {Ways} ways
 * @param {boolean} shown whether those put away are shown at once: one has just been
 */
export function drawLine(place, { unfinished, away, aside }, ways, shown) {
  render(
    html`${aside.map((one) => setAside(one.store === "happenings" ? HAPPENING : PAIR, one.text, () => ways.drop(one)))}
    ${[...unfinished].reverse().map(
      (kept) => html`<div class="line on-machine">
        <p><strong>${lead(kept)}</strong> ${standing(kept)}. <span class="quiet">${whose(kept)}<bdi>${short(kept.session.label)}</bdi>, begun ${day(kept.session.began)}.</span></p>
        <div class="row">
          <button type="button" class="go-on" id="go-on-${kept.session.id}" @click=${() => ways.enter(kept.session.id)}>Go on</button>
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

/** Whom a pair is for, where the book says it. @param {Kept} kept */
export function whose({ session: { who } }) {
  return who ? html`For <bdi>${short(who)}</bdi>. ` : nothing;
}

/** @param {Kept} kept @param {Ways} ways */
function putAway(kept, { bringBack, remove }) {
  const { id, label, began } = kept.session;
  return html`<p>Where it stands: ${standing(kept)}. <span class="quiet">${whose(kept)}<bdi>${short(label)}</bdi>, begun ${day(began)}.</span></p>
    <div class="row">
      <button type="button" class="bring-back" @click=${() => bringBack(id)}>Bring it back</button>
      <button type="button" class="remove" @click=${() => remove(id)}>Remove it…</button>
    </div>`;
}

/** @param {number} ms */
export function day(ms) {
  return new Date(ms).toLocaleDateString(undefined, { day: "numeric", month: "long" });
}
