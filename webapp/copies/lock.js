/**
 * A copy locked with a passphrase, by Web Crypto alone: AES-256 in GCM under a key of PBKDF2 with
 * HMAC-SHA-256. The file states all of it but the passphrase, so that any program that knows these standards
 * can open it.
 *
 * - PBKDF2: NIST SP 800-132. The salt is of 128 random bits, the least that it allows. It leaves the number
 *   of iterations open; 600,000 is what OWASP's Password Storage Cheat Sheet recommends for HMAC-SHA-256
 *   (2023; as others cite it, not read at the source).
 * - AES-GCM: NIST SP 800-38D. The 96-bit nonce is random, and so is the salt: no key is used twice.
 * - A passphrase counts in Unicode's form NFKC, as NIST SP 800-63B advises, so that two keyboards write the
 *   same; and has at least 8 characters, which is its least too. (Both from memory.)
 *
 * GCM cannot tell a wrong passphrase from a damaged file: a checksum of the sealed bytes does.
 */
import * as say from "words/copies";
import { crc32 } from "./checksum.js";
import { Unreadable } from "./unreadable.js";

export const SHORTEST = 8; // characters
const ITERATIONS = 600_000;
const MOST_ITERATIONS = 10_000_000; // a file that asks for more would hold the phone up for minutes
const [SALT, NONCE] = [16, 12]; // bytes

/** A locked copy, and no passphrase to open it with. */
export class Locked extends Error {}

/** Whether this browser can lock and open. Only a page that came by https may. */
export function canLock() {
  return Boolean(globalThis.crypto?.subtle);
}

/** @param {string} text @param {string} passphrase @returns {Promise<string>} the text of the locked file */
export async function locked(text, passphrase) {
  const salt = crypto.getRandomValues(new Uint8Array(SALT));
  const nonce = crypto.getRandomValues(new Uint8Array(NONCE));
  const key = await keyOf(passphrase, salt, ITERATIONS);
  const plain = new TextEncoder().encode(text);
  const sealed = new Uint8Array(
    await crypto.subtle.encrypt({ name: "AES-GCM", iv: nonce }, key, plain),
  );
  return JSON.stringify({
    heelwise: "locked",
    version: 1,
    key: { name: "PBKDF2", hash: "SHA-256", iterations: ITERATIONS, salt: written(salt) },
    cipher: { name: "AES-GCM", bits: 256, nonce: written(nonce), tag: 128 },
    sum: crc32(sealed),
    sealed: written(sealed),
  });
}

/**
 * @param {any} file what the locked file holds; null where it is not even JSON @param {string | undefined} passphrase
 * @returns {Promise<string>} the text that was locked
 * @throws {Unreadable | Locked}
 */
export async function opened(file, passphrase) {
  if (file && Number.isInteger(file.version) && file.version > 1) {
    throw new Unreadable(say.lockedNewer);
  }
  const { salt, nonce, sealed, iterations } = parts(file);
  if (!canLock()) throw new Unreadable(say.lockedNoHttps);
  if (passphrase === undefined) throw new Locked();
  const key = await keyOf(passphrase, salt, iterations);
  const plain = await crypto.subtle
    .decrypt({ name: "AES-GCM", iv: nonce }, key, sealed)
    .catch((error) => {
      if (error?.name !== "OperationError") throw error;
      throw new Unreadable(say.passphraseWrong);
    });
  return new TextDecoder().decode(plain);
}

/** @param {any} file @throws {Unreadable} where it is not as it was written */
function parts(file) {
  const { version, key, cipher, sum, sealed } = file ?? {};
  const known =
    version === 1 &&
    key?.name === "PBKDF2" &&
    key.hash === "SHA-256" &&
    Number.isInteger(key.iterations) &&
    key.iterations > 0 &&
    key.iterations <= MOST_ITERATIONS &&
    cipher?.name === "AES-GCM";
  const [salt, nonce, bytes] = [key?.salt, cipher?.nonce, sealed].map(bytesOf);
  if (!known || !salt || !nonce || !bytes || crc32(bytes) !== sum)
    throw new Unreadable(say.lockedDamaged);
  return { salt, nonce, sealed: bytes, iterations: key.iterations };
}

/** @param {string} passphrase @param {Uint8Array<ArrayBuffer>} salt @param {number} iterations */
async function keyOf(passphrase, salt, iterations) {
  const words = new TextEncoder().encode(passphrase.normalize("NFKC"));
  const key = await crypto.subtle.importKey("raw", words, "PBKDF2", false, ["deriveKey"]);
  const how = { name: "PBKDF2", hash: "SHA-256", salt, iterations };
  const cipher = { name: "AES-GCM", length: 256 };
  return crypto.subtle.deriveKey(how, key, cipher, false, ["encrypt", "decrypt"]);
}

/** In base64 (RFC 4648). @param {Uint8Array} bytes */
function written(bytes) {
  const pieces = [];
  for (let from = 0; from < bytes.length; from += 8192) {
    pieces.push(String.fromCharCode(...bytes.subarray(from, from + 8192)));
  }
  return btoa(pieces.join(""));
}

/** @param {unknown} text @returns {Uint8Array<ArrayBuffer> | null} null where it is no base64 */
function bytesOf(text) {
  try {
    return Uint8Array.from(atob(String(text)), (letter) => letter.charCodeAt(0));
  } catch {
    return null;
  }
}
