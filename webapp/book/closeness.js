/**
 * How close a wearer likes their socks: a wish of theirs, and a field of their sheet that the counts go by.
 * Both say the same; a sheet of before the field was there says nothing, and takes it from the wish.
 * @import { Values } from "../page/types"
 * @import { Particulars, Visit } from "./types"
 */

export const CLOSENESS = "sock.closeness";

/** @param {Values} values @returns {Particulars["ease"]} */
export function closenessOf({ [CLOSENESS]: told = "" }) {
  return told === "snug" || told === "loose" ? told : "";
}

/** Whether anybody chose on the sheet. @param {Visit} visit */
export function saysCloseness({ values, changed = {} }) {
  return Boolean(values[CLOSENESS]?.trim()) || Object.hasOwn(changed, CLOSENESS);
}
