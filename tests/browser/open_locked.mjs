// Opens a locked copy as any other program would: the key in hexadecimal is given, the cipher is node's.
import { createDecipheriv } from "node:crypto";
import { readFileSync } from "node:fs";

const [, , path, key] = process.argv;
const { cipher, sealed } = JSON.parse(readFileSync(path, "utf-8"));
const bytes = Buffer.from(sealed, "base64");
const tag = cipher.tag / 8;
const nonce = Buffer.from(cipher.nonce, "base64");
const opening = createDecipheriv(`aes-${cipher.bits}-gcm`, Buffer.from(key, "hex"), nonce);
opening.setAuthTag(bytes.subarray(-tag));
process.stdout.write(opening.update(bytes.subarray(0, -tag)));
process.stdout.write(opening.final());
