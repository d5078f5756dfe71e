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

/**
 * What it has answered. @returns {Promise<"keeps" | "may delete" | "does not say">} may never come
 */
export async function persisted() {
  try {
    const answer = await navigator.storage?.persisted?.();
    return answer ? "keeps" : answer === false ? "may delete" : "does not say";
  } catch {
    return "does not say";
  }
}
