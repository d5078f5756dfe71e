/**
 * Instead of the worker with Python in it: whoever stands behind `askDesk` answers. Set in a page before
 * its own scripts run; of `webapp/worker/runner.js` it knows what is said both ways.
 */
globalThis.Worker = class extends EventTarget {
  /** @param {object} message */
  async postMessage({ pyodide, id, text }) {
    if (pyodide) setTimeout(() => this.onmessage?.({ data: { ready: true } }));
    if (id === undefined) return;
    const answer = await globalThis.askDesk(text);
    this.onmessage?.({ data: { id, text: answer } });
  }

  terminate() {
    this.onmessage = null;
  }
};
