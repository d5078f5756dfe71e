/** The sock as the engine drew it: an SVG text becomes part of the page, never markup of its own. */

/** @param {string} svg "" for none @param {HTMLElement} place */
export function showPicture(svg, place) {
  place.hidden = !svg; // no text would be parsed to an error with a style of its own, which is forbidden here
  if (place.hidden) return place.replaceChildren();
  const drawn = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
  const kept = document.adoptNode(drawn);
  for (const script of kept.querySelectorAll("script, foreignObject")) script.remove();
  place.replaceChildren(kept);
}
