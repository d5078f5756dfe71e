/**
 * The colours: as the phone is set, or light or dark whatever the phone says; remembered.
 * @import {Draft} from "./draft.js"
 */

/** @param {Draft} draft */
export function wireTheme(draft) {
  const choice = document.getElementById("theme");
  const set = (/** @type {string} */ theme) => {
    if (theme === "light" || theme === "dark") document.documentElement.dataset.theme = theme;
    else delete document.documentElement.dataset.theme;
    const radio = choice?.querySelector(`input[value="${theme}"]`);
    if (radio instanceof HTMLInputElement) radio.checked = true;
  };
  const kept = () => set(draft.read("theme") ?? "phone");
  kept();
  draft.addEventListener("change", (event) => {
    if (/** @type {CustomEvent} */ (event).detail.names.includes("theme")) kept();
  });
  choice?.addEventListener("change", (event) => {
    const theme = /** @type {HTMLInputElement} */ (event.target).value;
    set(theme);
    draft.write("theme", theme);
  });
}
