/** The engine's door as the page sees it: what is asked, and what comes back. Leaf values of a request are as typed. */
export type Leaf = string | number | null | undefined;
export type Values = Record<string, string>;
export interface Request {
  units: "cm" | "in";
  [group: string]: unknown;
}

export interface Quantity {
  value: number;
  unit: string;
  text: string;
  other?: string;
}
export interface Measure extends Quantity {
  low: number;
  high: number;
  range_text: string;
  from: "measured" | "estimated";
  words: string;
}
export interface Pocket {
  needles: number;
  left: number;
  rows: number;
  rows_each_way: number;
  words: string;
}
/** A heel or toe beside the planned one, and what would come of it. */
export interface PocketChoice {
  needles: number;
  left: number;
  chosen: boolean;
  words: string;
}
export interface Part {
  part: "cuff" | "leg" | "heel" | "foot" | "toe";
  title: string;
  count: number | string;
  unit: string;
  detail: string;
}
export interface Fit {
  place: string;
  title: string;
  body: Quantity;
  fabric: Quantity;
  stretch: number;
  level: "good" | "loose" | "tight" | "bad" | "apart";
  verdict: string;
  words: string;
  from: "measured" | "estimated";
}
export interface Step {
  part: "waste" | "cuff" | "leg" | "heel" | "foot" | "toe" | "finish";
  title: string;
  kind: "rounds" | "row" | "do";
  text: string;
  rounds?: number;
  row?: number;
  direction?: "right" | "left";
  back?: number | null;
  knits?: [number, number];
  hold?: number | null;
  in_work?: number;
}
export interface Length {
  metres: Quantity;
  grams: Quantity | null;
}
/** One colour of the pair; `balls` is null where nobody said what a ball weighs. */
export interface Colour extends Length {
  name: string;
  with_margin: Length;
  balls: number | null;
}
/** Whether the yarn left is a sock. */
export interface Enough {
  level: "yes" | "maybe" | "no";
  words: string;
  left: Quantity;
  needed: Quantity;
}
export interface Plan {
  units: "cm" | "in";
  counts: {
    needles: number;
    cuff: { kind: string; rounds: number; needles: number; words: string };
    leg: { rounds: number; words: string };
    heel: Pocket;
    foot: { rounds: number; exact: number; words: string };
    toe: Pocket;
  };
  measures: Record<string, Measure>;
  fabric: {
    stitches: Quantity;
    rounds: Quantity;
    loop_length: Quantity;
    from: "swatch" | "gauge" | "yarn";
    swatch_first: boolean;
    guessed: ("stitches" | "rounds")[];
    words: string;
    mark?: number | null;
    line?: string | null;
    mark_for_ball?: { words: string; use: string | null } | null;
    observations?: { field: string; words: string }[];
    /** sock one as a piece of this yarn, but for its sizes */
    keep?: Values | null;
  };
  sizes: Record<string, Quantity>;
  fit: Fit[];
  yarn: Length & {
    words: string;
    sections: Record<string, Length>;
    stitches: Record<string, number>;
    waste: Length;
    colours: Colour[];
    enough: Enough | null;
    stripes: { words: string } | null;
  };
  range: Record<"cuff" | "leg" | "heel" | "foot" | "toe", { low: number; high: number; words: string }>;
  choices: Record<"heel" | "toe", PocketChoice[]>;
  steps: Step[];
  cautions: string[];
  notes: { field: string | null; text: string }[];
  parts: Part[];
}

/** What is kept of a sock's counts: the version that counted, the counts by part, and for what. */
export interface Counted {
  engine: string;
  figures: Record<string, string>;
  facts: { name: string; text: string }[];
}
/** What is counted otherwise by now than it was; no words where nothing is. */
export interface Again {
  moved: { title: string; then: string; now: string }[];
  words: string;
  errors?: Problem[];
}

export type FootAlone = Pick<Plan, "measures" | "notes">;
/** What the counts and the tape show of a plan. */
export type Shown = Pick<Plan, "parts" | "counts" | "fabric" | "notes" | "measures">;
/** The counts shown last, and what they were asked by. */
export interface Last {
  request: Request;
  plan: Shown;
}

export interface Problem {
  field: string;
  message: string;
  way_out: string;
  /** texts that would mend it when written into the field */
  offers?: string[];
}
/** What came of the newest request: a plan with its picture and link, or the problems in the way; a plan
 * beside problems is sock one's, where what was typed of sock one cannot be read yet. */
export type Answer =
  | {
      plan: Plan;
      picture: string;
      link: string;
      /** the same counts without the person, null where there can be no such link */
      counts_link: string | null;
      counts_link_words: string;
      counted: Counted;
      request: Request;
      errors?: Problem[];
    }
  | {
      errors: Problem[];
      request: Request;
      /** what the foot tells before there is a plan */
      foot?: FootAlone;
      plan?: undefined;
      picture?: undefined;
      link?: undefined;
      counted?: undefined;
    };
/** A table over sizes; `rounds` is null where heel and toe alone are longer than that foot. */
export interface Chart {
  title: string;
  by: string;
  head: string;
  columns: Quantity[];
  rows: { label: string; length: Quantity; rounds: (number | null)[] }[];
  taken: Record<string, string>;
  /** this foot, before the row `at`; its fabric's column, or the nearest to it */
  own: { at: number; label: string; length: Quantity; rounds: (number | null)[] } | null;
  column: { at: number; exact: boolean } | null;
  assumptions: string[];
  csv: string;
}
/** A cylinder with a yarn at a mark; `choose` holds the groups of a request that adopt it. */
export interface Candidate {
  rank: number;
  slots: number;
  yarn: string;
  mark: string | null;
  left: Quantity | null;
  lacks: string | null;
  verdict: "fits well" | "can be worn" | "does not fit";
  swatch_first: boolean;
  tube: Quantity;
  ball: Quantity;
  reasons: { place: string; title: string; value: number; words: string }[];
  choose: Record<string, unknown>;
}
export interface Shelf {
  words: string;
  best: Candidate[];
  wanted: { words: string }[];
  assumptions: string[];
  notes: { field: string | null; text: string }[];
}
/** What a card to knit from says; a fact without text is written in by hand. */
export interface Card {
  title: string;
  socks: string[];
  parts: { title: string; figure: string; words: string; boxes: number[] }[];
  bands: string[];
  facts: { name: string; text: string }[];
  code: string | null;
  /** why there is none, else "" */
  code_words: string;
}
/** What goes with a finished pair, as far as its counts tell it; a pair that has none has no facts. */
export interface Tag {
  facts: { name: string; text: string }[];
  code: string | null;
  code_words: string;
  caution: string;
}
export interface Code {
  svg: string;
  version: number;
  across: number;
}
export interface Readings {
  readings: Record<string, Quantity>;
  errors?: Problem[];
}

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
  /** as it was when the sheet was opened */
  allergy?: string;
  wishes?: string;
  /** that its measures are old, else "" */
  old?: string;
  link?: string;
  foot?: number;
  opened: Values;
  values: Values;
}
