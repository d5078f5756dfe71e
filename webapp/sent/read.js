/**
 * The five counts that a link of version 2 brings along, read without the engine: the layout is that of
 * engine/answers/sent_counts.py, and never changes.
 * @typedef {{ needles: number, left: number }} Turned a pocket's needles, and how many it leaves
 * @typedef {{ slots: number, cuff: number, leg: number, foot: number, heel: Turned, toe: Turned, two: boolean }} Counts
 *   rounds; 0 for what is not knitted; `two`: they are sock two's
 */
import { crc32 } from "../copies/checksum.js";

const COUNTS = 8; // bytes
const SUM = 4;

/** @param {string} link the address' fragment with its "#" @returns {Counts | null} null where it is damaged or brings none */
export function read(link) {
  const bytes = letters(link.match(/^#2\.([\w-]+)$/)?.[1] ?? "");
  if (!bytes || bytes.length <= COUNTS + SUM) return null;
  const counts = bytes.slice(0, COUNTS);
  const summed = new Uint8Array([...counts, ...bytes.slice(COUNTS + SUM)]);
  const kept = new DataView(bytes.buffer).getUint32(COUNTS);
  return Number.parseInt(crc32(summed), 16) === kept ? unpacked(counts) : null;
}

/** What letters of URL-safe base64 stand for. @param {string} text */
function letters(text) {
  try {
    const plain = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
    return Uint8Array.from(plain, (one) => one.charCodeAt(0));
  } catch {
    return null; // no letter of it, or one too few
  }
}

/** @param {Uint8Array} bytes @returns {Counts} */
function unpacked(bytes) {
  let left = bytes.reduce((total, byte) => (total << 8n) | BigInt(byte), 0n);
  /** The lowest bits, which are then gone. @param {bigint} bits */
  const take = (bits) => {
    const found = Number(left & ((1n << bits) - 1n));
    left >>= bits;
    return found;
  };
  const turned = () => {
    const kept = take(7n);
    return { needles: take(7n), left: kept };
  };
  const two = take(1n) === 1;
  const toe = turned();
  const foot = take(10n);
  const heel = turned();
  const leg = take(10n);
  const cuff = take(8n);
  return { slots: 2 * take(6n), cuff, leg, heel, foot, toe, two };
}
