/**
 * Storage that never answers must not hold up the page: rejects once it has taken so long.
 * @template T @param {number} ms @param {Promise<T>} work @returns {Promise<T>}
 */
export function within(ms, work) {
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new Error("Storage is silent.")), ms);
    work.then(resolve, reject).finally(() => clearTimeout(late));
  });
}
