// Of what a page shows or a screen reader speaks: each text with letters that no brackets are around.
// `pattern` is what needs none.
([opens, closes, pattern]) => {
  const found = [];
  const nobodys = new RegExp(pattern, "gu");
  const letters = (text) => /\p{L}{2,}/u.test(text.replace(nobodys, ""));
  const seen = (e) => e.checkVisibility({ visibilityProperty: true });
  const unseen = ".said, .visually-hidden, svg"; // spoken all the same
  for (const e of [...document.querySelectorAll("*")].filter(seen)) {
    for (const name of ["aria-label", "title", "placeholder", "alt", "aria-description"]) {
      const text = e.getAttribute(name);
      if (text && letters(text) && !text.includes(opens)) {
        found.push(`${name} of ${e.localName}: ${text}`);
      }
    }
  }
  let depth = 0;
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const e = node.parentElement;
    if (!e || e.closest("script, style, noscript, [hidden], .wordmark, bdi, #languages")) continue;
    if (!seen(e) && !e.closest(unseen)) continue;
    let outside = "";
    for (const one of node.data) {
      if (one === opens) depth++;
      else if (one === closes) depth--;
      else if (!depth) outside += one;
    }
    const where = `${e.localName}.${e.className?.baseVal ?? e.className}`;
    if (letters(outside)) found.push(`${where}: ${outside.trim().slice(0, 80)}`);
  }
  if (depth) found.push(`brackets do not close: ${depth}`);
  return found;
};
