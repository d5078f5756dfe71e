/** Hand a text or bytes to the phone as a file. */

/** @param {string | Uint8Array<ArrayBuffer>} content @param {string} name of the file @param {string} type */
export function save(content, name, type) {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
