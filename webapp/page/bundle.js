/** A part of the page that the first screen does without: its script, once its style is there too. */

/** @param {string} script @param {string} [style] their addresses @returns {Promise<any>} */
export async function bundle(script, style) {
  const part = import(new URL(script, document.baseURI).href);
  try {
    await Promise.all([part, style && styled(style)]);
    return part;
  } catch (error) {
    // The browser may hold what came spoiled for a year: have it right when the page is loaded again.
    for (const one of [script, style]) if (one) fetch(one, { cache: "reload" }).catch(() => {});
    throw error;
  }
}

/** @param {string} address */
function styled(address) {
  return new Promise((resolve, reject) => {
    const link = document.createElement("link");
    Object.assign(link, { rel: "stylesheet", href: address, onload: resolve, onerror: reject });
    document.head.append(link);
  });
}
