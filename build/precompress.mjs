// node build/precompress.mjs [DIST]
// Puts NAME.br and NAME.gz beside every file that gets smaller by it, compressed as hard as can be:
// for hosts that send such files as they are (nginx: gzip_static, brotli_static), and build/serve.py.
import { readdir, readFile, stat, writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";

if (process.argv.includes("--help")) {
  console.log(
    "usage: .venv/bin/node build/precompress.mjs [DIST]: compress the built site's files beforehand",
  );
  process.exit();
}

const DONE = /\.(br|gz|png)$|(^|\/)\./;
const dist = process.argv[2] ?? fileURLToPath(new URL("../dist", import.meta.url));
const brotli = (content) =>
  promisify(brotliCompress)(content, {
    params: {
      [constants.BROTLI_PARAM_QUALITY]: 11,
      [constants.BROTLI_PARAM_LGWIN]: 24,
      [constants.BROTLI_PARAM_SIZE_HINT]: content.length,
    },
  });
const ways = { br: brotli, gz: (content) => promisify(gzip)(content, { level: 9 }) };

const total = { plain: 0, br: 0, gz: 0 };
for (const name of (await readdir(dist, { recursive: true })).sort()) {
  const path = `${dist}/${name}`;
  if (DONE.test(name) || !(await stat(path)).isFile()) continue;
  const content = await readFile(path);
  total.plain += content.length;
  for (const [ending, way] of Object.entries(ways)) {
    const packed = await way(content);
    total[ending] += Math.min(packed.length, content.length);
    if (packed.length < content.length * 0.9) await writeFile(`${path}.${ending}`, packed);
  }
}
console.log(
  `${dist}: ${total.plain.toLocaleString("en")} bytes, ` +
    `${total.br.toLocaleString("en")} by brotli, ${total.gz.toLocaleString("en")} by gzip`,
);
