/**
 * Beside each field that is typed into, the places for what the calculator says of it: a guess, a note, and
 * what is wrong. They are made here, for the page itself has to fit into what a new connection sends at once.
 */

const PLACES = ["estimate", "note", "error"];

/** In the page and in the templates of its rows. @param {ParentNode} root */
export function placesBeside(root) {
  for (const field of root.querySelectorAll("[data-field]")) {
    const input = field.querySelector("input");
    if (!input || field.querySelector(".error")) continue;
    const places = PLACES.map((name) => {
      const place = document.createElement("p");
      place.className = name;
      place.id = `${input.id}-${name}`;
      return place;
    });
    field.append(...places);
    const described = places.map(({ id }) => id).join(" ");
    input.setAttribute(
      "aria-describedby",
      `${input.getAttribute("aria-describedby")} ${described}`,
    );
  }
  for (const { content } of root.querySelectorAll("template")) placesBeside(content);
}
