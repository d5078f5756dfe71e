/**
 * Which language's page this is: the one that was chosen, whatever the browser speaks.
 * @import {Draft} from "../page/draft.js"
 */

/** @param {Draft} draft */
export function wireLanguages(draft) {
  const links = /** @type {NodeListOf<HTMLAnchorElement>} */ (
    document.querySelectorAll("#languages a")
  );
  for (const { href, hreflang } of links) {
    // Local storage, which the page's first script looks at, may have lost it.
    const chosen = () => draft.read("language") === hreflang && leave(href);
    chosen();
    draft.addEventListener("change", chosen);
  }
  document.getElementById("languages")?.addEventListener("click", (event) => {
    if (!(event.target instanceof HTMLAnchorElement)) return;
    event.preventDefault();
    draft.write("language", event.target.hreflang);
    leave(event.target.href);
  });
}

/** A link that was opened here goes along. @param {string} page */
function leave(page) {
  location.replace(page + location.hash);
}
