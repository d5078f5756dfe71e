/**
 * The page's first script, which stands in the page itself. Where nothing is to be put back into the form,
 * it is seen before the rest of the page is even fetched, and what is typed meanwhile stays. Where the
 * phone has kept something, the page's script comes as it would if it stood here.
 */

const PATIENCE_MS = 1000; // nothing is painted where nobody looks

const { main = "", sent = "", languages = "" } = document.documentElement.dataset;
const other = wanted();
if (other) location.replace(`./${other}.html${location.hash}`);
if (inInches(navigator.languages)) {
  document.documentElement.dataset.units = "in";
  // Before the page's script reads the form, and before anybody can have chosen.
  document.addEventListener("readystatechange", chooseInches, { once: true });
}
if (other) {
  // Nothing more happens here.
} else if (navigator.serviceWorker?.controller || kept("length")) {
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

// A link's counts are looked at first, whatever else comes (sheets.js).
if (location.hash.startsWith("#2.")) import(address("", sent)).catch(() => {});

addEventListener(
  "error",
  ({ target }) => {
    if (target === window || target instanceof HTMLScriptElement) failed();
  },
  true,
);

/** Called a second time, it does nothing more. */
function start() {
  import(address("")).catch(failed);
}

/** @param {string} mark A module that failed is not tried again under the very same address. */
function address(mark, script = main) {
  return new URL(script + mark, document.baseURI).href;
}

/**
 * The page's script did not come, or threw. Where the browser holds an error in its place, which some hosts
 * allow for a year, the script may be there by now.
 */
async function failed() {
  if (usable()) return;
  try {
    if (!(await fetch(main)).ok && (await fetch(main, { cache: "reload" })).ok) {
      await import(address("#"));
      return;
    }
  } catch {
    // No host, or a script that throws: it has not started.
  }
  notStarted();
}

/** The page's script did not come, or threw before the page could be used. */
function notStarted() {
  if (usable()) return;
  const line = document.getElementById("not-started");
  if (line) line.hidden = false;
  line?.querySelector("button")?.addEventListener("click", anew);
  document.getElementById("waiting")?.classList.add("over");
}

/** Whether what is typed from now on stays. */
function usable() {
  return performance.getEntriesByName("usable").length > 0;
}

/**
 * Load the page from its host: whatever is wrong with this version stays away, here and in what the browser
 * holds of it for a year. Nothing is let go while there is no host.
 */
async function anew() {
  try {
    await fetch(main, { cache: "reload" });
    const own = await navigator.serviceWorker?.getRegistration();
    if (own) {
      await own.update();
      await own.unregister();
      // Other sites may share the host's name: of what is stored, this one's ends with its address.
      const names = (await caches.keys()).filter((name) => name.endsWith(own.scope));
      for (const name of names) await caches.delete(name);
    }
  } catch {
    // No host: what is here stays.
  }
  location.reload();
}

/** What local storage has under a key; how much it has, under "length". @param {string} key */
function kept(key) {
  try {
    return localStorage[key];
  } catch {
    return undefined; // storage is closed to us (private windows)
  }
}

/**
 * The language whose page is to be shown instead, if any: the one that was chosen, or the first of the
 * browser's that there is. Of English, what is not spoken in the United States is British (as
 * in Unicode CLDR, parent locales).
 */
function wanted() {
  const there = languages.split(" ");
  /** @param {string} one */
  const match = (one) => {
    const [language = ""] = one.split("-");
    if (there.includes(one)) return one;
    return language !== "en" || /^en(-US)?$/.test(one) ? language : "en-GB";
  };
  const asked = [kept("heelwise.language") ?? "", ...navigator.languages];
  const found = asked.map(match).find((one) => there.includes(one));
  return found === "en" ? "" : found;
}

/**
 * Whether the first of the languages is spoken where feet are measured in inches: the United States and
 * their territories, Liberia and Myanmar (Unicode CLDR, measurement systems). What was chosen or kept goes
 * before. A language without a region borrows that of the same language further on.
 * @param {readonly string[]} languages
 */
function inInches(languages) {
  const [first = ""] = languages;
  const spoken = languages.filter((one) => one.split("-")[0] === first.split("-")[0]);
  const region = spoken.join().match(/-([A-Z]{2})\b/)?.[1] ?? "";
  return ["US", "AS", "GU", "LR", "MM", "MP", "PR", "UM", "VI"].includes(region);
}

function chooseInches() {
  const inches = document.querySelector('[name="units"][value="in"]');
  if (inches instanceof HTMLInputElement) inches.checked = true;
}

export {}; // says to the type checker that nothing here is the other scripts' to see
