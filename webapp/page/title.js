/**
 * Each screen has its own title, for tabs, for the list of pages one was on, and for those who listen. It
 * never names a wearer: browsers keep titles, and hand them on to other devices.
 */

/** @type {Record<string, string>} */
const BOOK = {
  list: "Wearers",
  new: "New wearer",
  card: "One wearer",
  copies: "Copies and lists",
};

/** Put the name of what is on screen by now into the window's title. */
export function nameScreen() {
  document.title = `${screenName()} · Heelwise`;
}

function screenName() {
  const { at, step } = document.documentElement.dataset;
  if (at === "machine") return "At the machine";
  if (at === "book") return BOOK[history.state?.book?.name ?? "list"];
  return document.getElementById(`${step}-title`)?.textContent;
}
