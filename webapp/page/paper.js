/**
 * One thing of the page goes to paper alone. What is printed is picked up at the phone's leisure, so the
 * page stays set for it until she goes on.
 * @param {"table" | "paper"} what
 */
export function printOnly(what) {
  const page = document.documentElement;
  page.dataset.print = what;
  const over = () => {
    delete page.dataset.print;
    removeEventListener("pointerdown", over, true);
    removeEventListener("keydown", over, true);
  };
  addEventListener("pointerdown", over, true);
  addEventListener("keydown", over, true);
  window.print();
}
