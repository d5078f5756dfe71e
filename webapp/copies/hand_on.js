/**
 * A file handed on by the phone's own share sheet (Web Share API). Which kinds of file may go is the
 * browser's choice: where .json is refused, the same text goes as .txt, which is taken in as well.
 */

const KINDS = /** @type {const} */ ([
  ["json", "application/json"],
  ["txt", "text/plain"],
]);

/** @returns {((text: string, name: string) => File) | null} makes a file that may go; null where none may */
export function handable() {
  const kind = KINDS.find(([ending, type]) => {
    const files = [new File(["{}"], `heelwise.${ending}`, { type })];
    return navigator.canShare?.({ files });
  });
  if (!kind) return null;
  const [ending, type] = kind;
  return (text, name) => new File([text], `${name}.${ending}`, { type });
}

/**
 * @param {File} file
 * @returns {Promise<"handed on" | "left" | "tap again" | "refused">} `tap again`: the file took so long to
 *   make that the browser takes the tap for over
 */
export async function handOn(file) {
  try {
    await navigator.share({ files: [file] });
    return "handed on";
  } catch (error) {
    const { name } = /** @type {Error} */ (error);
    return name === "AbortError" ? "left" : name === "NotAllowedError" ? "tap again" : "refused";
  }
}
