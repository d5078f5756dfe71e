/**
 * The gate for what the browser is to run or to take for markup: scripts of this site's own folder, the
 * engine's drawings, and the pages that its scripts bring. Where it knows Trusted Types it takes nothing else (build/headers.py).
 */

const gate = window.trustedTypes?.createPolicy("gate", {
  createScriptURL: own,
  createHTML: (/** @type {string} */ text) => text, // goes nowhere but into `drawing` and `fragment`
});

/**
 * The address of a script to be started as a worker. Throws if it is not of this site's own folder.
 * @param {string} address
 */
export function script(address) {
  return /** @type {any} */ (gate?.createScriptURL(address) ?? own(address));
}

/** @param {string} address */
function own(address) {
  const { href } = new URL(address, document.baseURI);
  if (href.startsWith(new URL(".", document.baseURI).href)) return href;
  throw new TypeError(`not of this site: ${href}`);
}

/**
 * An SVG text as an element that nothing of it can make run.
 * @param {string} svg
 */
export function drawing(svg) {
  const text = /** @type {any} */ (gate?.createHTML(svg) ?? svg);
  const drawn = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  const kept = document.adoptNode(drawn);
  for (const one of kept.querySelectorAll("script, foreignObject")) one.remove();
  return kept;
}

/**
 * Markup of the site's own templates (build/site.py), which nobody typed.
 * @param {string} markup
 */
export function fragment(markup) {
  const text = /** @type {any} */ (gate?.createHTML(markup) ?? markup);
  const { body } = new DOMParser().parseFromString(text, "text/html");
  const pages = document.createDocumentFragment();
  pages.append(...document.adoptNode(body).childNodes);
  return pages;
}
