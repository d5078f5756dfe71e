/**
 * The browser's Back closes a dialog and leaves what is beneath as it is: each that opens, whoever opens it,
 * gets an entry of its own in the history, which goes again when the dialog is closed in any other way.
 */
export class Dialogs {
  /** While an entry of ours is on its way out of the history. @type {PromiseWithResolvers<void> | null} */
  #going = null;
  #beneath = "";

  constructor() {
    // Before anybody else is told.
    addEventListener("popstate", (event) => this.#moved(event), { capture: true });
    new MutationObserver(() => this.#follow()).observe(document.body, {
      subtree: true,
      attributes: true,
      attributeFilter: ["open"],
    });
    this.#follow(); // loaded anew, the page has no dialog any more
  }

  /** Change the history now, or once a dialog's entry has gone from it. @template T @param {() => T} change */
  after(change) {
    return this.#going ? this.#going.promise.then(change) : change();
  }

  /** As many entries as there are dialogs open. */
  #follow() {
    if (this.#going) return;
    const spare = entries() - opened().length;
    if (spare > 0) {
      this.#going = Promise.withResolvers();
      history.go(-spare);
    } else if (spare < 0) {
      this.#beneath = where();
      // The way back would lead to the part that the address names, and its top.
      history.scrollRestoration = "manual";
      history.pushState({ ...history.state, dialogs: opened().length }, "");
    }
  }

  /** @param {PopStateEvent} event */
  #moved(event) {
    const going = this.#going;
    this.#going = null;
    const over = opened().slice(entries());
    for (const dialog of over) dialog.close();
    // From a dialog to what is beneath it, or to a dialog that is no more: nothing else has changed.
    if (going || ((over.length || entries()) && where() === this.#beneath)) {
      event.stopImmediatePropagation();
    }
    // Whether to go to that part is decided after this, by the next frame.
    requestAnimationFrame(() =>
      requestAnimationFrame(() => {
        if (!entries()) history.scrollRestoration = "auto";
      }),
    );
    going?.resolve();
    this.#follow();
  }
}

/** How many of the history's entries up to this one are dialogs'. @returns {number} */
function entries() {
  return history.state?.dialogs ?? 0;
}

/** @returns {HTMLDialogElement[]} */
function opened() {
  return [
    .../** @type {NodeListOf<HTMLDialogElement>} */ (document.querySelectorAll("dialog[open]")),
  ];
}

/** The place in the history, whatever stands over it. */
function where() {
  return JSON.stringify([location.href, { ...history.state, dialogs: 0 }]);
}
