/** What each version brought, the newest first: longer with each, so it comes behind the page. */
import * as say from "words/changes";

/** By the day on which the last of it came; older days than 25 November 2026 are not known. */
const changes = [
  {
    day: "2026-11-28",
    title: say.turnsTitle,
    lines: [say.turns, say.looseAnkle, say.weights],
  },
  {
    day: "2026-11-27",
    title: say.bookTitle,
    lines: [
      say.setsPublished,
      say.measuredFar,
      say.bookRedrawn,
      say.paperRedrawn,
      say.bareLinks,
      say.sentCounts,
    ],
  },
  {
    day: "2026-11-27",
    title: say.nowTitle,
    lines: [
      say.wish,
      say.wishLeg,
      say.shoeSize,
      say.verdicts,
      say.ranges,
      say.sockOne,
      say.pair,
      say.offMachine,
      say.wash,
      say.heavy,
      say.hung,
      say.enough,
      say.weighedSock,
      say.cameOut,
      say.taught,
      say.swatches,
      say.smallFeet,
      say.asked,
      say.grams,
      say.ways,
      say.flap,
      say.instep,
      say.half,
    ],
  },
  { day: "2026-11-27", title: say.alikeTitle, lines: [say.custom, say.grafting, say.legInLinks] },
  { day: "2026-11-25", title: say.fairTitle, lines: [say.machine] },
  { day: "2026-11-25", title: say.fitTitle, lines: [say.bands, say.heelFit, say.twoFeet] },
  { day: "2026-11-25", title: say.tableTitle, lines: [say.tableLines] },
  { day: "2026-11-25", title: say.firstTitle, lines: [say.firstLines] },
];

/** @param {HTMLElement} place */
export function showChanges(place) {
  const whole = new Intl.DateTimeFormat(document.documentElement.lang, { dateStyle: "medium" });
  const told = changes.map(({ day, title, lines }) => {
    const date = made("small", whole.format(new Date(`${day}T00:00`)));
    const list = lines.map((line) => made("li", line));
    return made("details", made("summary", made("span", title, " ", date)), made("ul", ...list));
  });
  told[0]?.setAttribute("open", "");
  place.replaceChildren(...told);
}

/** @param {string} name @param {(Node | string)[]} inside */
function made(name, ...inside) {
  const element = document.createElement(name);
  element.append(...inside);
  return element;
}
