/**
 * The line on the page that says what is on the machine, with the way to it, the way to put it away, and
 * the way back.
 * @import {Aside, Kept} from "./types"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/machine";
import { oneLine } from "../page/one_line.js";
import { setAside } from "../page/set_aside.js";
import { short } from "../page/short.js";
import { where, which } from "./moments.js";
import { fold, view } from "./progress.js";

/** @typedef {Record<"enter" | "putAway" | "bringBack" | "remove", (id: string) => void>} ForPairs */
/** @typedef {ForPairs & { drop: (one: Aside) => void }} Ways */
/** @typedef {{ unfinished: Kept[], away: Kept[], aside: Aside[] }} There */

/** Where a pair stands, in words. @param {Kept} kept */
export function standing({ session, happenings }) {
  const { sock, socks, places } = fold(session, happenings);
  const { title, ended } = view(socks[sock], places[sock]);
  if (ended) return say.standingOff({ sock: which(sock) });
  const there = { section: title, where: where(socks[sock], places[sock]) };
  return say.placeOfSock({ sock: which(sock), ...there });
}

/** What is knitted, as it is by now: sock two may have other foot rounds since. @param {Kept} kept */
function labelOf({ session, happenings }) {
  const { sock, socks } = fold(session, happenings);
  const begun = session.socks.some(({ words }) => words === session.label);
  return short(begun ? socks[sock].words : session.label);
}

/** @param {Kept} kept */
function lead({ session, happenings }) {
  const { sock, ended } = fold(session, happenings);
  return ended[sock] ? say.pairHalfKnitted : say.sockOnMachine;
}

/**
 * @param {HTMLElement} place @param {There} there @param {Ways} ways
 * @param {boolean} shown whether those put away are shown at once: one has just been
 */
export function drawLine(place, { unfinished, away, aside }, ways, shown) {
  render(
    html`${aside.map((one) => setAside(one.store === "happenings" ? say.countAside : say.pairAside, one.text, () => ways.drop(one)))}
    ${[...unfinished].reverse().map((kept) =>
      oneLine(
        html`<strong>${lead(kept)}</strong> ${say.stands({ place: standing(kept) })}`,
        html`<p class="quiet">${whose(kept)}${say.labelBegun({ label: labelOf(kept), day: day(kept.session.began) })} <bdi>${kept.session.socks[0].origin}</bdi></p>
          <button type="button" class="put-away" @click=${() => ways.putAway(kept.session.id)}>${say.putAway}</button>`,
        html`<button type="button" class="go-on" id="go-on-${kept.session.id}" @click=${() => ways.enter(kept.session.id)}>${say.goOn}</button>`,
        "on-machine",
      ),
    )}
    ${
      away.length
        ? html`<details class="line away" ?open=${shown}>
            <summary>${say.pairsAway({ pairs: away.length })}</summary>
            ${[...away].reverse().map((kept) => putAway(kept, ways))}
          </details>`
        : nothing
    }`,
    place,
  );
}

/** Whom a pair is for, where the book says it. @param {Kept} kept */
export function whose({ session: { who } }) {
  return who ? html`${say.forWhom({ who: short(who) })} ` : nothing;
}

/** @param {Kept} kept @param {Ways} ways */
function putAway(kept, { bringBack, remove }) {
  const { id, began } = kept.session;
  return html`<p>${say.stands({ place: standing(kept) })} <span class="quiet">${whose(kept)}${say.labelBegun({ label: labelOf(kept), day: day(began) })}</span></p>
    <div class="row">
      <button type="button" class="bring-back" @click=${() => bringBack(id)}>${say.bringPairBack}</button>
      <button type="button" class="remove" @click=${() => remove(id)}>${say.removePair}</button>
    </div>`;
}

/** @param {number} ms */
export function day(ms) {
  return new Date(ms).toLocaleDateString(document.documentElement.lang, {
    day: "numeric",
    month: "long",
  });
}
