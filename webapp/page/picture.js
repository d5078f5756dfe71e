/** The sock as the engine drew it: an SVG text becomes part of the page, never markup of its own. */

/** @param {string} svg @param {HTMLElement} place */
export function showPicture(svg, place) {
  const drawn = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
  place.hidden = drawn.localName !== "svg";
  if (place.hidden) return;
  const kept = document.adoptNode(drawn);
  for (const script of kept.querySelectorAll("script, foreignObject")) script.remove();
  place.replaceChildren(kept);
}
