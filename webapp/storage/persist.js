/**
 * Ask the phone not to throw away what is kept here when it runs short of room. Nobody waits for the answer,
 * which may never come, and nothing hangs on it.
 */
export async function persist() {
  try {
    await navigator.storage?.persist?.();
  } catch {
    // It may be thrown away, then: copies are for that.
  }
}
