/**
 * The page's first script, which stands in the page itself. Where nothing is to be put back into the form,
 * it is seen before the rest of the page is even fetched, and what is typed meanwhile stays. Where the
 * phone has kept something, the page's script comes as it would if it stood here.
 */

const PATIENCE_MS = 1000; // nothing is painted where nobody looks

const { main = "" } = document.documentElement.dataset;
if (navigator.serviceWorker?.controller || kept()) {
  const written = `<script type="module" src="${main}"></script>`;
  // Whatever it is asked to let pass, it gives this one script.
  const gate = window.trustedTypes?.createPolicy("opening", {
    createHTML: (/** @type {string} */ _) => written,
  });
  document.write(/** @type {any} */ (gate?.createHTML("") ?? written));
} else {
  addEventListener("load", () => {
    setTimeout(start, PATIENCE_MS);
    new PerformanceObserver(start).observe({ type: "paint", buffered: true });
  });
}

/** Called a second time, it does nothing more. */
function start() {
  import(new URL(main, document.baseURI).href);
}

/** Whether something was typed here before. */
function kept() {
  try {
    return localStorage.length > 0;
  } catch {
    return false; // storage is closed to us (private windows)
  }
}

export {}; // says to the type checker that nothing here is the other scripts' to see
