/**
 * Below the counts, one of three at a time: the sock as it will be, its steps, its yarn. Tabs as ARIA's
 * authoring practices have them.
 */

const SHOWN = "panel"; // of this very page: another opens with the sock

/** @param {HTMLElement} panels */
export function wirePanels(panels) {
  /** @type {HTMLButtonElement[]} */
  const tabs = Array.from(panels.querySelectorAll("[role=tab]"));
  /** @param {HTMLButtonElement} chosen */
  const show = (chosen) => {
    for (const tab of tabs) {
      tab.setAttribute("aria-selected", String(tab === chosen));
      tab.tabIndex = tab === chosen ? 0 : -1;
      const panel = document.getElementById(`panel-${tab.dataset.panel}`);
      if (panel) panel.hidden = tab !== chosen;
    }
    remember(chosen.id);
  };
  for (const [at, tab] of tabs.entries()) {
    tab.addEventListener("click", () => show(tab));
    tab.addEventListener("keydown", ({ key }) => {
      const by = key === "ArrowRight" ? 1 : key === "ArrowLeft" ? -1 : 0;
      const next = tabs[(at + by + tabs.length) % tabs.length];
      if (!by || !next) return;
      show(next);
      next.focus();
    });
  }
  const before = remember();
  const first = tabs.find(({ id }) => id === before) ?? tabs[0];
  if (first) show(first);
}

/** Show the panel that something stands in. @param {Element} within */
export function reveal(within) {
  const panel = within.closest("[role=tabpanel]");
  if (panel instanceof HTMLElement && panel.hidden) {
    document.getElementById(panel.getAttribute("aria-labelledby") ?? "")?.click();
  }
}

/** Loaded anew, the page shows what it showed. @param {string} [id] @returns {string | null} none where the phone keeps nothing */
function remember(id) {
  try {
    if (id) sessionStorage.setItem(SHOWN, id);
    return sessionStorage.getItem(SHOWN);
  } catch {
    return null;
  }
}
