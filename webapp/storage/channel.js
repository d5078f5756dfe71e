/**
 * To this page in other tabs. @param {string} name
 * @returns {BroadcastChannel | undefined} none where the browser has no such thing, or closes it to us
 */
export function channel(name) {
  try {
    return new BroadcastChannel(name);
  } catch {
    return undefined;
  }
}
