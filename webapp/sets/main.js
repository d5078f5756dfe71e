/** Instructions over sizes, to publish: loaded once they are wanted. */
export { ReaderSheet } from "./reader_sheet.js";
export { SetsSheet } from "./sets_sheet.js";
