/**
 * Each screen has its own title, for tabs, for the list of pages one was on, and for those who listen. It
 * never names a wearer: browsers keep titles, and hand them on to other devices.
 */
import * as say from "words/page";

/** Put the name of what is on screen by now into the window's title. */
export function nameScreen() {
  document.title = `${screenName()} · Heelwise`;
}

function screenName() {
  const { at, step } = document.documentElement.dataset;
  if (at === "machine") return say.atTheMachine;
  if (at === "book") return say.screen({ name: history.state?.book?.name ?? "list" });
  return document.getElementById(`${step}-title`)?.textContent;
}
