/** Whether a pair stands in the machine's database: asked without loading the counter, and without making one. */
export async function anyPair() {
  try {
    return await new Promise((resolve, reject) => {
      const asked = indexedDB.open("heelwise.machine");
      asked.onupgradeneeded = () => asked.transaction?.abort(); // there is none
      asked.onerror = () => reject(asked.error);
      asked.onsuccess = () => {
        const { result: database } = asked;
        database.onversionchange = () => database.close();
        const counting = database.transaction("sessions").objectStore("sessions").count();
        counting.onsuccess = () => resolve(counting.result > 0);
        counting.onerror = reject;
        database.close(); // once that is done
      };
    });
  } catch {
    return false;
  }
}
