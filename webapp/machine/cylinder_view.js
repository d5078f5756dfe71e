/**
 * The cylinder from above, as the knitter stands before it: the front half is at the bottom, the left
 * half mark at the left. A needle in work is a long stroke toward the middle, one in hold is pulled out
 * and hollow, one that is out is a dot. All strokes of a kind are one path, so that a row changes little.
 * @import {Knit, Row} from "./types"
 */
import { nothing, svg } from "lit-html";
import * as say from "words/machine";
import { each } from "../page/needles.js";

const RIM = 112;
const [TIP, BUTT, HELD, WAY, MARK] = [84, 116, 130, 126, 141];
// The number of the needle stands inside the ring, clear of the figure.
const NUMBER = 64;

/**
 * A point at a place of the ring; place 0.5 is the left half mark, and places run along the front first.
 * @param {number} slots @param {number} slot @param {number} radius
 */
function point(slots, slot, radius) {
  const angle = Math.PI - ((slot - 0.5) * 2 * Math.PI) / slots;
  return [radius * Math.cos(angle), radius * Math.sin(angle)];
}

/** @param {number[]} xy */
function pair([x, y]) {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}

/**
 * The three kinds of needles as paths.
 * @param {number} slots @param {(slot: number) => "work" | "hold" | "out"} kindOf
 */
function needles(slots, kindOf) {
  const drawn = { work: "", hold: "", out: "" };
  const round = Math.min(5, (0.36 * 2 * Math.PI * HELD) / slots);
  for (let slot = 1; slot <= slots; slot += 1) {
    const at = (/** @type {number} */ radius) => pair(point(slots, slot, radius));
    const kind = kindOf(slot);
    if (kind === "work") drawn.work += `M${at(BUTT)}L${at(TIP)}`;
    else if (kind === "hold") {
      drawn.hold += `M${at(RIM)}L${at(HELD - round)}${circle(point(slots, slot, HELD), round)}`;
    } else drawn.out += circle(point(slots, slot, RIM), 3);
  }
  return drawn;
}

/** @param {number[]} middle @param {number} radius */
function circle([x, y], radius) {
  const [r, across] = [radius.toFixed(1), (2 * radius).toFixed(1)];
  return `M${pair([x - radius, y])}a${r} ${r} 0 1 0 ${across} 0a${r} ${r} 0 1 0 -${across} 0`;
}

/** From where the carrier stands to where it goes. @param {number} slots @param {number} from @param {number} to */
function way(slots, from, to) {
  const [start, end] = [point(slots, from, WAY), point(slots, to, WAY)];
  const large = Math.abs(to - from) > slots / 2 ? 1 : 0;
  const sweep = to > from ? 0 : 1;
  const back = to > from ? -1 : 1;
  // The head's two barbs lie a few degrees before the end, to both sides of the way.
  const degrees = (6 * slots) / 360;
  const barbs = [WAY - 8, WAY + 8].map((radius) => pair(point(slots, to + back * degrees, radius)));
  return `M${pair(start)}A${WAY} ${WAY} 0 ${large} ${sweep} ${pair(end)}M${barbs[0]}L${pair(end)}L${barbs[1]}`;
}

/** @param {Knit} knit @param {Row} row @param {number} left rows left, in the middle */
export function cylinderView(knit, row, left) {
  const { slots, pockets } = knit;
  const pocket = pockets[row.part];
  // A pocket that reaches behind the left mark begins before place 1.
  const first = pocket.first_slot - (pocket.first_slot > slots / 2 ? slots : 0);
  const slotOf = (/** @type {number} */ needle) => first + needle - 1;
  const [from, to] = row.knits.map(slotOf);
  const [low, high] = [Math.min(...row.knits), Math.max(...row.knits)];
  const drawn = needles(slots, (slot) => {
    const one = ((slot - first + slots) % slots) + 1;
    return one >= low && one <= high ? "work" : "hold";
  });
  const moved = each(row.back ?? row.hold);
  const stroke = Math.min(6, (0.52 * 2 * Math.PI * TIP) / slots).toFixed(1);
  return svg`<svg class="cylinder" viewBox="-148 -142 296 288" aria-hidden="true" focusable="false">
    <circle class="rim" r=${RIM} />
    <text class="ring-figure" y="-34">${left}</text>
    <text class="ring-words" y="-14">${say.leftWords({ unit: "row", left })}</text>
    <path class="half-mark" d="M-${MARK + 7} 0L-${MARK - 6} -7V7ZM${MARK + 7} 0L${MARK - 6} -7V7Z" />
    <path class="needle-hold" d=${drawn.hold} />
    <path class="needle-work" stroke-width=${stroke} d=${drawn.work} />
    <path class="way" d=${way(slots, from, to)} />
    <circle class="carrier" cx=${point(slots, from, WAY)[0].toFixed(1)} cy=${point(slots, from, WAY)[1].toFixed(1)} r="9" />
    ${moved.length ? concerned(slots, moved, slotOf, Boolean(row.back)) : nothing}
  </svg>`;
}

/** With every nth needle out, as for a mock rib. @param {number} slots @param {number} every */
export function needlesOut(slots, every) {
  const drawn = needles(slots, (slot) => (slot % every ? "work" : "out"));
  const stroke = Math.min(6, (0.52 * 2 * Math.PI * TIP) / slots).toFixed(1);
  return svg`<svg class="cylinder-out" viewBox="-148 -120 296 240" aria-hidden="true" focusable="false">
    <circle class="rim" r=${RIM} />
    <path class="half-mark" d="M-${MARK + 7} 0L-${MARK - 6} -7V7ZM${MARK + 7} 0L${MARK - 6} -7V7Z" />
    <path class="needle-work" stroke-width=${stroke} d=${drawn.work} />
    <path class="needle-out" d=${drawn.out} />
  </svg>`;
}

/** The needles to move, numbered; arrows point in for those that come back, out for those to lift. @param {number} slots @param {number[]} moved @param {(needle: number) => number} slotOf @param {boolean} back */
function concerned(slots, moved, slotOf, back) {
  const [head, foot] = back ? [TIP - 2, BUTT + 6] : [BUTT + 8, TIP - 2];
  const neck = head + (back ? 12 : -12);
  const places = moved.map(slotOf);
  const middle = (places[0] + places[places.length - 1]) / 2;
  const more = 17 * (moved.length - 1);
  const wide = 38 + 2 * more;
  const [x, y] = point(slots, middle, NUMBER - more);
  // One head for all, a roof over their stems: those of neighbours would lie on each other.
  const stems = places.map((slot) => {
    const end = more ? neck : head;
    return `M${pair(point(slots, slot, foot))}L${pair(point(slots, slot, end))}`;
  });
  const barb = more ? 9 : 5;
  const at = (/** @type {number} */ radius, aside = 0) =>
    pair(point(slots, middle + (aside * slots) / 360, radius));
  return svg`
    <path class="needle-now" d="${stems.join("")}M${at(neck, -barb)}L${at(head)}L${at(neck, barb)}" />
    <g transform="translate(${x.toFixed(1)} ${y.toFixed(1)})">
      <rect class="needle-label" x=${-wide / 2} y="-14" width=${wide} height="28" rx="4" />
      <text class="needle-number" y="7.5">${moved.join(" ")}</text>
    </g>`;
}
