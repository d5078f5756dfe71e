/** What the engine's doors answer. Made by build/answer_types.py: not to be edited. */
/** What is wrong at a field, and the way out; `offers` are texts that would mend it. */
export interface Problem {
  field: string;
  message: string;
  way_out: string;
  offers?: string[];
}
/** A question or remark, beside a field where it has one. */
export interface Note {
  field: string | null;
  text: string;
}
/** A figure with its unit, in words of both systems. */
export interface Quantity {
  value: number;
  unit: string;
  text: string;
  other: string;
}
/** A measure of the foot with its middle 80 %. */
export interface Measure {
  value: number;
  unit: string;
  text: string;
  other: string;
  from: "measured" | "estimated";
  low: number;
  high: number;
  range_text: string;
  words: string;
}
/** The middle 80 % of a count. */
export interface Reach {
  low: number;
  high: number;
  words: string;
}
/** A heel or toe as it is turned. */
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
  rows: number;
  girth: Quantity;
  foot_rounds: number;
  chosen: boolean;
  stretch: number | null;
  verdict: string;
  level: "good" | "loose" | "tight" | "bad" | "apart" | "";
  words: string;
}
/** Rounds of a leg at one tension. */
export interface Band {
  rounds: number;
  from_round: number;
  to_round: number;
  mark: number | null;
  stitches: Quantity;
  from_height: Quantity;
  to_height: Quantity;
  words: string;
}
/** The cuff of the counts. */
export interface CuffCount {
  kind: string;
  rounds: number;
  needles: number;
  words: string;
}
/** The leg of the counts; `bands` where it is shaped. */
export interface LegCount {
  rounds: number;
  words: string;
  bands: Band[];
}
/** The foot rounds, and before they were rounded. */
export interface FootCount {
  rounds: number;
  exact: number;
  words: string;
}
/** The rounds after the toe. */
export interface EndCount {
  rounds: number;
  words: string;
}
/** Every count of a sock; `end` where there are rounds after its toe. */
export interface Counts {
  needles: number;
  cuff: CuffCount;
  leg: LegCount;
  heel: Pocket;
  foot: FootCount;
  toe: Pocket;
  end?: EndCount;
}
/** What is knitted in a part, and how much of it. */
export interface Part {
  part: "cuff" | "leg" | "heel" | "foot" | "toe" | "end";
  title: string;
  count: number;
  unit: string;
  detail: string;
}
/** The fit at one place; `stretch` is body over fabric.

    `chance` is how likely the verdict is right, and `sure` how it may be said for that.
     */
export interface Place {
  from: "measured" | "estimated";
  place: string;
  title: string;
  body: Quantity;
  fabric: Quantity;
  stretch: number;
  level: "good" | "loose" | "tight" | "bad" | "apart";
  verdict: string;
  sure: "plain" | "likely" | "open";
  chance: number;
  words: string;
}
/** A tube that says something of the fabric. */
export interface Observation {
  field: string;
  mark: number | null;
  stitches: Quantity | null;
  rounds: Quantity | null;
  share: number;
  off: number;
  words: string;
}
/** The mark that suits the ball of the foot; None where it is too far to be known. */
export interface MarkForBall {
  mark: number | null;
  low: number | null;
  high: number | null;
  use: string | null;
  words: string;
}
/** The fabric, and how it is known; `keep` is sock one as a row of swatches, but its sizes. */
export interface Fabric {
  from: "swatch" | "gauge" | "yarn";
  stitches: Quantity;
  rounds: Quantity;
  loop_length: Quantity;
  swatch_first: boolean;
  guessed: ("stitches" | "rounds")[];
  mark: number | null;
  line: string | null;
  mark_for_ball: MarkForBall | null;
  observations: Observation[];
  keep: Record<string, string> | null;
  words: string;
}
/** An amount of yarn. */
export interface Amount {
  metres: Quantity;
  grams: Quantity;
}
/** One colour of the pair; `balls` is None where nobody said what a ball weighs. */
export interface Colour {
  metres: Quantity;
  grams: Quantity;
  name: string;
  sections: string[];
  with_margin: Amount;
  balls: number | null;
}
/** Whether the yarn left is a sock. */
export interface Enough {
  probability: number;
  level: "yes" | "maybe" | "no";
  words: string;
  left: Quantity;
  needed: Quantity;
}
/** What to wind off so that the stripes begin alike. */
export interface WindOff {
  length: Quantity;
  rounds: number;
  within: Quantity;
  by_eye: boolean;
}
/** How a repeat of colours falls. */
export interface Stripes {
  rounds_per_repeat: number;
  wind_off: WindOff;
  words: string;
}
/** The yarn of a pair; None where nothing was told of it. */
export interface Yarn {
  metres: Quantity;
  grams: Quantity;
  words: string;
  with_margin: Amount;
  sections: Record<string, Amount>;
  stitches: Record<string, number>;
  waste: Amount;
  colours: Colour[];
  enough: Enough | null;
  stripes: Stripes | null;
}
/** One thing to do: by hand, some rounds, or a row of heel or toe. */
export interface Step {
  part: "cuff" | "leg" | "heel" | "foot" | "toe" | "end" | "waste" | "finish";
  title: string;
  kind: "do" | "rounds" | "row";
  text: string;
  sets?: "tension";
  makes?: "grafted" | "washed";
  rounds?: number;
  row?: number;
  direction?: "right" | "left";
  back?: number | number[] | null;
  knits?: number[];
  hold?: number | number[] | null;
  in_work?: number;
}
/** The whole sheet of counts; `sizes` and `measures` by name. */
export interface Plan {
  units: "cm" | "in";
  counts: Counts;
  parts: Part[];
  measures: Record<string, Measure>;
  fabric: Fabric;
  sizes: Record<string, Quantity>;
  fit: Place[];
  yarn: Yarn;
  range: Record<string, Reach>;
  choices: Record<string, PocketChoice[]>;
  steps: Step[];
  cautions: string[];
  notes: Note[];
}
/** A name and its text, "" where it is written in by hand. */
export interface Fact {
  name: string;
  text: string;
}
/** What is kept of a sock's counts: the version that counted, by part, and for what. */
export interface Counted {
  engine: string;
  figures: Record<string, string>;
  facts: Fact[];
}
/** A plan with its picture and links; `counts_link` holds no person, None where it cannot. */
export interface Page {
  plan: Plan;
  picture: string;
  link: string;
  counts_link: string | null;
  counts_link_words: string;
  counted: Counted;
}
/** A count that is another by now. */
export interface Moved {
  title: string;
  then: string;
  now: string;
}
/** What is counted otherwise by now; no words where nothing is. */
export interface Again {
  engine: string;
  moved: Moved[];
  words: string;
}
/** A yarn of the shelf before and after a sock. */
export interface OffTheShelf {
  row: number;
  name: string;
  left: Quantity;
  after: string;
  likely: boolean;
}
/** What a sock took off the shelf. */
export interface Used {
  takes: Quantity;
  yarns: OffTheShelf[];
}
/** A heel or toe on the cylinder; `first_slot` is its needle 1, from the left half mark. */
export interface PocketPlace {
  needles: number;
  first_slot: number;
  left: number;
  rows: number;
}
/** One thing by hand; `makes` is how far the sock is once it is done. */
export interface KnitDo {
  part: "cuff" | "leg" | "heel" | "foot" | "toe" | "end" | "waste" | "finish";
  title: string;
  text: string;
  tension?: string;
  kind: "do";
  sets?: "tension";
  makes?: "grafted" | "washed";
}
/** Rounds of the whole tube. */
export interface KnitRounds {
  part: "cuff" | "leg" | "heel" | "foot" | "toe" | "end" | "waste" | "finish";
  title: string;
  text: string;
  tension?: string;
  kind: "rounds";
  rounds: number;
}
/** One row of heel or toe; needles are numbered from 1 in the pocket. */
export interface KnitRow {
  part: "cuff" | "leg" | "heel" | "foot" | "toe" | "end" | "waste" | "finish";
  title: string;
  text: string;
  tension?: string;
  kind: "row";
  row: number;
  direction: "right" | "left";
  half: "narrow" | "widen";
  back: number | number[] | null;
  knits: number[];
  hold: number | number[] | null;
  in_work: number;
  back_where: string | null;
  hold_where: string | null;
  remind: string[];
}
/** One sock as the counter at the machine follows it. */
export interface Knit {
  slots: number;
  every: number | null;
  half_marks: string;
  pockets: Record<string, PocketPlace>;
  parts: Part[];
  words: string;
  foot_rounds: number;
  notes: Note[];
  steps: (KnitDo | KnitRounds | KnitRow)[];
  counted: Counted;
}
/** A part of the card, with the rounds or rows that its boxes end with. */
export interface CardPart {
  title: string;
  figure: string;
  words: string;
  boxes: number[];
}
/** What a card to knit from says; `code_words` tell why there is no code. */
export interface Card {
  title: string;
  socks: string[];
  parts: CardPart[];
  bands: string[];
  facts: Fact[];
  code: string | null;
  code_words: string;
}
/** What goes with a finished pair. */
export interface Tag {
  facts: Fact[];
  code: string | null;
  code_words: string;
  caution: string;
}
/** A link as a square code. */
export interface Code {
  svg: string;
  version: number;
  across: number;
}
/** What the foot tells before there is a plan. */
export interface FootAlone {
  measures: Record<string, Measure>;
  notes: Note[];
}
/** A foot of the table; None where heel and toe alone are longer. */
export interface ChartRow {
  label: string;
  length: Quantity;
  rounds: (number | null)[];
}
/** The row of this very foot, to stand before the row `at`. */
export interface OwnRow {
  label: string;
  length: Quantity;
  rounds: (number | null)[];
  at: number;
}
/** The column of this fabric, or the nearest to it. */
export interface OwnColumn {
  at: number;
  exact: boolean;
}
/** A table over sizes. */
export interface Chart {
  title: string;
  by: string;
  head: string;
  columns: Quantity[];
  rows: ChartRow[];
  taken: Record<string, string>;
  own: OwnRow | null;
  column: OwnColumn | null;
  assumptions: string[];
  csv: string;
}
/** How a place of a candidate would be felt. */
export interface Reason {
  place: string;
  title: string;
  value: number;
  level: "good" | "loose" | "tight" | "bad" | "apart";
  verdict: string;
  words: string;
  discomfort: number;
}
/** A cylinder with a yarn at a mark; `choose` holds the groups of a request that adopt it. */
export interface Candidate {
  rank: number;
  slots: number;
  cylinder: string | null;
  yarn: string;
  mark: string | null;
  left: Quantity | null;
  verdict: "fits well" | "can be worn" | "does not fit";
  score: number;
  lacks: string | null;
  swatch_first: boolean;
  stitches: Quantity;
  rounds: Quantity;
  tube: Quantity;
  ball: Quantity;
  reasons: Reason[];
  choose: Record<string, any>;
}
/** What would fit. */
export interface Wanted {
  words: string;
  slots?: number;
  yarn?: string;
  mark?: string;
  stitches?: Quantity;
  rounds?: Quantity;
}
/** A shelf, ranked: the `best` of all, and the best of each of the `yarns`. */
export interface Shelf {
  words: string;
  fits: boolean;
  tried: number;
  best: Candidate[];
  yarns: Candidate[];
  wanted: Wanted[];
  assumptions: string[];
  notes: Note[];
}
/** What a link holds. */
export interface Opened {
  request: Record<string, any>;
}
/** What was typed, read back. */
export interface Readings {
  readings: Record<string, Quantity>;
  errors: Problem[];
}
/** A field of a request. */
export interface RequestField {
  name: string;
  kind: string;
  echoed: boolean;
}
/** A list of rows. */
export interface RequestList {
  name: string;
  most: number;
}
/** Every field of a request. */
export interface FieldList {
  fields: RequestField[];
  lists: RequestList[];
}
/** What any door answers where something is in the way. */
export interface Refusal {
  errors: Problem[];
}
export type KnitStep = KnitDo | KnitRounds | KnitRow;
