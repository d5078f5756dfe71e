/** The colours: as the phone is set, or light or dark whatever the phone says; remembered. */

const KEY = "heelwise.theme";

export function wireTheme() {
  const choice = document.getElementById("theme");
  const set = (/** @type {string} */ theme) => {
    if (theme === "light" || theme === "dark") document.documentElement.dataset.theme = theme;
    else delete document.documentElement.dataset.theme;
    const radio = choice?.querySelector(`input[value="${theme}"]`);
    if (radio instanceof HTMLInputElement) radio.checked = true;
  };
  try {
    set(localStorage.getItem(KEY) ?? "phone");
  } catch {
    set("phone");
  }
  choice?.addEventListener("change", (event) => {
    const theme = /** @type {HTMLInputElement} */ (event.target).value;
    set(theme);
    try {
      localStorage.setItem(KEY, theme);
    } catch {
      // Only this visit then; the status line says that the phone keeps nothing.
    }
  });
}
