/**
 * What a start waits for over the line: counted as it comes, and fetched again where it broke off. Files
 * that came whole are not asked for again: the browser holds them.
 *
 * A body that breaks off ends without an error in Firefox (brotli with a length) and in WebKit (in chunks),
 * so each is held against its size, which the build knows. Sizes are those of the plain files: what a
 * browser tells of compressed ones is how much it has unpacked.
 */

const WAITS_MS = [500, 2000, 5000, 10_000]; // before each further try: 17.5 s in all
const SILENT_MS = 30_000; // a line that gives nothing for so long is taken for broken
const TOLD_MS = 250; // between two words on how much came

/** The line is gone: no file is wrong. */
export class LineGone extends Error {}

export class Line {
  /** @type {Map<string, number>} bytes that came, by address */
  #come = new Map();
  #of = 0;
  #told = 0;

  /**
   * @param {(address: string) => number | undefined} sizeOf a file's bytes, where they are known
   * @param {(come: number, of: number) => void} tell bytes that came, of all that the start waits for
   */
  constructor(sizeOf, tell) {
    this.sizeOf = sizeOf;
    this.tell = tell;
  }

  /** Tell from now on, for it is known what is waited for. @param {string[]} addresses */
  expect(addresses) {
    this.#of = addresses.reduce((total, one) => total + (this.sizeOf(one) ?? 0), 0);
  }

  /**
   * Make something of a file, again where it broke off. Rejects with `LineGone` once it broke off too often,
   * and with the cause where it is something else.
   * @template T
   * @param {string} address @param {(response: Response) => Promise<T>} use
   * @returns {Promise<T>}
   */
  async get(address, use) {
    for (let tried = 0; ; tried += 1) {
      const body = { broken: false };
      try {
        return await use(await this.#fetched(address, tried ? "reload" : "default", body));
      } catch (error) {
        if (!body.broken) throw error;
        const wait = WAITS_MS[tried];
        if (wait === undefined) throw new LineGone(String(error));
        await new Promise((go) => setTimeout(go, wait));
      }
    }
  }

  /**
   * @param {string} address @param {RequestCache} cache what broke off may be in the browser's by halves
   * @param {{ broken: boolean }} body is told whether it broke off
   */
  async #fetched(address, cache, body) {
    const silence = new AbortController();
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    let timer;
    const heard = () => {
      clearTimeout(timer);
      timer = setTimeout(() => silence.abort(), SILENT_MS);
    };
    /** @param {unknown} error */
    const broke = (error) => {
      clearTimeout(timer);
      body.broken = true;
      return error;
    };
    heard();
    const response = await fetch(address, { cache, signal: silence.signal }).catch((error) => {
      throw broke(error);
    });
    if (!response.ok || !response.body) {
      clearTimeout(timer);
      throw new Error(`${address}: ${response.status}`);
    }
    const reader = response.body.getReader();
    const size = this.sizeOf(address);
    let come = 0;
    const counted = new ReadableStream({
      pull: async (to) => {
        try {
          const { done, value } = await reader.read();
          if (done && size && come < size) throw new Error(`${address}: ${come} of ${size}`);
          if (done) {
            clearTimeout(timer);
            return to.close();
          }
          heard();
          come += value.length;
          this.#count(address, come);
          to.enqueue(value);
        } catch (error) {
          to.error(broke(error));
        }
      },
      cancel: () => {
        clearTimeout(timer);
        return reader.cancel();
      },
    });
    return new Response(counted, { headers: response.headers });
  }

  /** @param {string} address @param {number} come */
  #count(address, come) {
    this.#come.set(address, come);
    const now = performance.now();
    if (!this.#of || now - this.#told < TOLD_MS) return;
    this.#told = now;
    const all = [...this.#come.values()].reduce((total, one) => total + one, 0);
    this.tell(Math.min(all, this.#of), this.#of);
  }
}

/** All of it. @param {Response} response @returns {Promise<Uint8Array<ArrayBuffer>>} */
export async function bytesOf(response) {
  return new Uint8Array(await response.arrayBuffer());
}
