/**
 * CRC-32 as in gzip and PNG (RFC 1952, section 8; polynomial 0xEDB88320, reflected): finds what was damaged
 * by chance. It guards against nobody: who changes a file on purpose reckons it anew.
 */
import { canonical } from "./canonical.js";

const POLYNOMIAL = 0xed_b8_83_20;
const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit += 1) sum = sum & 1 ? (sum >>> 1) ^ POLYNOMIAL : sum >>> 1;
  return sum;
});

/** @param {Uint8Array} bytes @returns {string} eight hexadecimal digits */
export function crc32(bytes) {
  let sum = 0xff_ff_ff_ff;
  for (const byte of bytes) sum = TABLE[(sum ^ byte) & 0xff] ^ (sum >>> 8);
  return ((sum ^ 0xff_ff_ff_ff) >>> 0).toString(16).padStart(8, "0");
}

/** Of a value, whatever order its names are in. @param {unknown} value */
export function checksum(value) {
  return crc32(new TextEncoder().encode(canonical(value)));
}
