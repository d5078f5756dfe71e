/**
 * The counts that came with a link, as the sender's phone counted them: they stand before the calculator is
 * there, marked as such, until its own take their place; then it is said whether both count the same.
 * @import {Again, Asks} from "../page/types"
 * @import {Opened} from "../page/answers"
 * @import {StepsNav} from "../page/steps_nav.js"
 * @import {Form} from "../page/form.js"
 */
import * as say from "words/sent";
import { read } from "./read.js";

/** @typedef {import("./read.js").Counts} Counts */
/**
 * @typedef {{ nav: StepsNav, form: Form, engine: Asks, visit: unknown, away: () => void }} Page
 *   visit: another object once what was sent is changed; away: takes another sheet's counts off the screen
 */

const PARTS = /** @type {const} */ (["foot", "cuff", "leg", "heel", "toe"]);

/** The page's own counts, which are no longer in pencil. */
const COUNTED = ".counts:not(.pencil)";

/** Take the sender's counts away, where they stand. */
let clear = () => {};

/** Show what a link brings, if it brings anything. @param {string} link @param {Page} page */
export function show(link, { nav, away }) {
  clear();
  const counts = read(link);
  if (!counts) return;
  const whose = say.sent({ slots: counts.slots, socks: counts.two ? "two" : "both" });
  const list = made("ol", "counts", ...PARTS.flatMap((part) => row(part, counts)));
  const place = sentPlace();
  place.replaceChildren(line(made("p", "", whose)), list);
  const own = /** @type {HTMLElement} */ (document.getElementById("counts-place"));
  const notYet = document.getElementById("not-yet");
  away();
  const watch = new MutationObserver(() => own.querySelector(COUNTED) && clear());
  watch.observe(own, { childList: true, subtree: true, characterData: true });
  const elsewhere = () => {
    if (location.hash === link) return;
    clear();
    place.replaceChildren();
  };
  clear = () => {
    watch.disconnect();
    nav.removeEventListener("step", elsewhere);
    list.remove();
    if (notYet) notYet.hidden = own.querySelector(COUNTED) !== null;
  };
  if (notYet) notYet.hidden = true;
  nav.link = link;
  nav.go("counts");
  nav.addEventListener("step", elsewhere);
}

/**
 * Say how this phone counts what was sent, or nothing of a link that could not be opened.
 * @param {Partial<Opened>} opened @param {Page} page
 */
export async function check({ request, sent }, page) {
  const { engine, form, visit } = page;
  const place = sentPlace();
  const over = () => {
    form.removeEventListener("change", changed);
    clear();
    place.replaceChildren();
  };
  // Fields that join the form meanwhile change nothing; what she types does: it is no longer what was sent.
  const changed = () => page.visit === visit || over();
  if (!request || !sent) return over();
  form.addEventListener("change", changed);
  const counted = { figures: sent.figures };
  const found = /** @type {Again} */ (await engine.ask({ do: "again", request, counted }));
  if (page.visit !== visit) return;
  if (found.errors) return over(); // its own problems are shown
  const differences = found.moved.map(({ title, then, now }) =>
    made("li", "", say.countedOtherwise({ title, now, before: then })),
  );
  place.querySelector(".line")?.remove();
  place.prepend(
    differences.length
      ? line(made("p", "", say.otherwise), made("ul", "", ...differences))
      : line(made("p", "", say.same)),
  );
}

/** @param {typeof PARTS[number]} part @param {Counts} counts @returns {HTMLElement[]} none where it is not knitted */
function row(part, { [part]: count }) {
  const title = made("h3", "", say.part({ part }));
  const figure = made("p", "figure");
  if (typeof count === "number") {
    figure.textContent = `${count}`;
    const detail = made("p", "detail", made("strong", "", say.rounds({ rounds: count })));
    return count ? [made("li", `tally tally-${part}`, title, figure, detail)] : [];
  }
  const { needles, left } = count;
  figure.append(`${needles}`, made("i", "", "→"), `${left}`, made("i", "", "→"), `${needles}`);
  figure.setAttribute("aria-hidden", "true");
  const said = made("p", "said", say.turned({ needles, left }));
  const detail = made("p", "detail", made("strong", "", say.needles));
  detail.setAttribute("aria-hidden", "true");
  return needles ? [made("li", `tally tally-${part}`, title, figure, said, detail)] : [];
}

/** Where it all stands: before the page's own counts. @returns {HTMLElement} */
function sentPlace() {
  const found = document.getElementById("sent-place");
  if (found) return found;
  const place = made("div", "");
  place.id = "sent-place";
  place.setAttribute("role", "status");
  document.getElementById("counts-place")?.before(place);
  return place;
}

/** @param {(Node | string)[]} inside */
function line(...inside) {
  return made("div", "line", ...inside);
}

/** @param {string} name @param {string} look @param {(Node | string)[]} inside */
function made(name, look, ...inside) {
  const element = document.createElement(name);
  if (look) element.className = look;
  element.append(...inside);
  return element;
}
