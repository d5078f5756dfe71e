/**
 * What a database answers, asked without loading what keeps it, and without making one; null where there is
 * none, or it cannot be asked.
 * @param {string} name @param {string} store @param {(store: IDBObjectStore) => IDBRequest} ask @returns {Promise<any>}
 */
export async function peeked(name, store, ask) {
  try {
    return await new Promise((resolve, reject) => {
      const asked = indexedDB.open(name);
      asked.onupgradeneeded = () => asked.transaction?.abort(); // there is none
      asked.onerror = () => reject(asked.error);
      asked.onsuccess = () => {
        const { result: database } = asked;
        database.onversionchange = () => database.close();
        const asking = ask(database.transaction(store).objectStore(store));
        asking.onsuccess = () => resolve(asking.result);
        asking.onerror = reject;
        database.close(); // once that is done
      };
    });
  } catch {
    return null;
  }
}
