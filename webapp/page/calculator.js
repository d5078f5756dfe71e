/**
 * Works out what is typed, while it is being typed.
 * @import {Field} from "./fields.js"
 * @import {Answer, Asks, Problem, Request, Values} from "./types"
 */
import { ECHOED } from "./fields.js";
import { Newest } from "./newest.js";
import { untold, withUsual } from "./request.js";

// What is told beside or after the plan.
const LATER = ["first_sock", "stock"];

/** Fires "answer" (a plan or its problems), "readings" and "trouble" (a sentence), each in its detail. */
export class Calculator extends EventTarget {
  #newest;

  /** @param {Asks} engine */
  constructor(engine) {
    super();
    this.#newest = new Newest(engine);
  }

  /** What is worked out now is of no more use. */
  drop() {
    this.#newest.drop();
  }

  /**
   * Work out a request, after a short pause in which a newer one may take its place.
   * @param {Request} request @param {Values} values
   */
  work(request, values) {
    const fields = Object.fromEntries(
      Object.entries(values).filter(
        ([name, value]) => ECHOED.includes(/** @type {Field} */ (name)) && value.trim(),
      ),
    );
    this.#newest.work(
      async (ask) => {
        this.#tell("readings", await ask({ do: "read", fields, units: request.units }));
        this.#tell("answer", await page(request, ask));
      },
      (sentence) => this.#tell("trouble", sentence),
    );
  }

  /** @param {string} event @param {unknown} detail */
  #tell(event, detail) {
    this.dispatchEvent(new CustomEvent(event, { detail }));
  }
}

/**
 * What comes of what is told; cylinder and yarn are the usual ones until they are. While only sock one or the
 * stock is in doubt the counts stay: those without it, with its problems beside.
 * @param {Request} told @param {(call: object) => Promise<any>} ask
 * @returns {Promise<Answer>}
 */
async function page(told, ask) {
  const request = withUsual(told);
  const guessed = untold(told);
  const drawn = async () => {
    const pencil = await ask({ do: "pencil", request: told });
    return pencil.errors ? undefined : pencil;
  };
  /** @type {import("./answers").Page & { errors?: Problem[] }} */
  const answer = await ask({ do: "page", request });
  const doubted = new Set(answer.errors?.map(({ field }) => field.split(".")[0]));
  if (!answer.errors) {
    return { ...answer, request, guessed, pencil: guessed.length ? await drawn() : undefined };
  }
  if (![...doubted].every((group) => LATER.includes(group))) {
    // The foot alone is enough to guess what was left out of it, and to ask about what is odd.
    const foot = await ask({ do: "foot", request });
    return {
      errors: answer.errors,
      request,
      foot: foot.errors ? undefined : foot,
      pencil: await drawn(),
    };
  }
  const before = /** @type {Request} */ (
    Object.fromEntries(Object.entries(request).filter(([group]) => !doubted.has(group)))
  );
  const { errors } = answer;
  return { ...(await ask({ do: "page", request: before })), errors, request: before, guessed };
}
