/** Whether a part of the page is shown at all. A Safari before 17.4 tells it by the room it takes alone. @param {HTMLElement} element */
export function isShown(element) {
  return element.checkVisibility?.() ?? element.getClientRects().length > 0;
}
