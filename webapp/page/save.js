/** Hand a text to the phone as a file. */

/** @param {string} text @param {string} name of the file @param {string} type */
export function save(text, name, type) {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
