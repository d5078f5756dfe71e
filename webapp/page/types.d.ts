/** The engine's door as the page sees it: what is asked, and what comes back. Leaf values of a request are as typed. */
import type { Again as Told, Amount, Counted, FootAlone, Page, Pencil, Place, Plan, Problem, Quantity } from "./answers";

export type Leaf = string | number | null | undefined;
export type Values = Record<string, string>;
export interface Request {
  units: "cm" | "in";
  [group: string]: unknown;
}

export type {
  Candidate,
  Card,
  Block,
  Chart,
  Code,
  Color,
  Counted,
  Enough,
  FootAlone,
  InstructionSet,
  Pencil,
  Measure,
  Part,
  Plan,
  Pocket,
  PocketChoice,
  Problem,
  Quantity,
  Schematic,
  Shelf,
  Step,
  Table,
  Tag,
} from "./answers";
/** The fit at one place. */
export type Fit = Place;
export type Length = Amount;
export type Again = Told & { errors?: Problem[] };
export interface Readings {
  readings: Record<string, Quantity>;
  errors?: Problem[];
}
/** What the counts and the tape show of a plan. */
export type Shown = Pick<Plan, "parts" | "counts" | "fabric" | "notes" | "measures"> &
  Partial<Pick<Plan, "fit" | "origin">>;
/** Of it, what stands in for something that was not told. */
export type Guessed = ("cylinder" | "fabric")[];
/** The counts shown last, and what they were asked by. */
export interface Last {
  request: Request;
  plan: Shown;
}
/** What came of the newest request: a plan with its picture and link, or the problems in the way; a plan
 * beside problems is sock one's, where what was typed of sock one cannot be read yet. */
export type Answer =
  | (Page & {
      request: Request;
      errors?: Problem[];
      /** what the request says as usual, because nothing else was told */
      guessed: Guessed;
      pencil?: Pencil | undefined;
    })
  | {
      errors: Problem[];
      request: Request;
      /** what the foot tells before there is a plan */
      foot?: FootAlone;
      pencil?: Pencil;
      guessed?: undefined;
      plan?: undefined;
      bare?: undefined;
      picture?: undefined;
      link?: undefined;
      counted?: undefined;
    };

/** The worker's messenger, as far as the page uses it. */
export interface Asks extends EventTarget {
  state: "starting" | "ready" | "failed";
  reason: string;
  start(): void;
  ask(call: object, options?: { signal?: AbortSignal; deadline?: number }): Promise<unknown>;
}

/** Which sheet is on the table when not her own: a wearer's, one that came by link, or the invented example. */
export interface Visit {
  kind: "wearer" | "link" | "demo";
  /** of a wearer */
  id?: string;
  label?: string;
  /** which of their visits */
  number?: number;
  /** as it was when the sheet was opened */
  allergy?: string;
  wishes?: string;
  /** that its measures are old, else "" */
  old?: string;
  link?: string;
  foot?: number;
  opened: Values;
  values: Values;
  /** when each field was changed last */
  changed: Record<string, number>;
}
