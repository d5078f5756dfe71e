/** What the engine's doors answer. Made by build/answer_types.py: not to be edited. */
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
/** A table over sizes; `cells` hold it for a file, its head first. */
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
  cells: ((string | number | null)[])[];
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
/** The fit at one place; `stretch` is body over fabric.

    `chance` is how likely the verdict is right, and `sure` how it may be said for that; `offers` is
    the kind of leg that one choice would make of it.
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
  offers?: "shaped" | "plain";
  words: string;
}
/** What the foot tells before there is a plan. */
export interface FootAlone {
  measures: Record<string, Measure>;
  notes: Note[];
}
/** A heading; `id` is unique in its document, for links to it. */
export interface Heading {
  kind: "heading";
  level: number;
  id: string;
  text: string;
}
/** Some sentences; a `caution` is to be seen as one without color alone. */
export interface Paragraph {
  kind: "text" | "caution";
  text: string;
}
/** A list, numbered where it is `ordered`. */
export interface Listing {
  kind: "list";
  ordered: boolean;
  items: string[];
}
/** A row of a table: its own head, then a cell for each further column. */
export interface TableRow {
  head: string;
  cells: string[];
}
/** A table; the first of `head` stands over the heads of rows. */
export interface Table {
  kind: "table";
  caption: string;
  head: string[];
  rows: TableRow[];
}
/** A path in mm: an outline, or the line of a measure. */
export interface SchematicPath {
  kind: "part" | "measure";
  d: string;
}
/** A letter in its place, by its middle, in mm. */
export interface SchematicLetter {
  letter: string;
  x: number;
  y: number;
}
/** The sock from the side, its measures lettered; `text` says what is to be seen.

    The table after it says what the letters are in each size.
     */
export interface Schematic {
  kind: "schematic";
  text: string;
  width: number;
  height: number;
  letter_height: number;
  paths: SchematicPath[];
  letters: SchematicLetter[];
}
/** A washed sock, lying without stretch. */
export interface Finished {
  foot: Quantity;
  girth: Quantity;
  height: Quantity;
}
/** One color of a pair, and the same with the margin. */
export interface ColorNeeded {
  name: string;
  sections: string[];
  needed: Amount;
  with_margin: Amount;
}
/** What a pair takes of yarn, in all and by color. */
export interface YarnNeeded {
  needed: Amount;
  with_margin: Amount;
  colors: ColorNeeded[];
}
/** One size of a set.

    `reason` says why the cylinder does not fit it, and what would; `slots` are those of the
    cylinder that would. What cannot be knitted on this one has no counts (None, and no parts).
     */
export interface SetSize {
  label: string;
  foot_length: Quantity;
  ball_girth: Quantity;
  fits: boolean;
  reason: string | null;
  slots: number | null;
  finished: Finished | null;
  counts: Part[];
  yarn: YarnNeeded | null;
  how_sure: string;
}
/** The instructions: all sizes in one, and one for each size in its order. */
export interface SetDocument {
  all_sizes: (Heading | Paragraph | Listing | Table | Schematic)[];
  one_size: ((Heading | Paragraph | Listing | Table | Schematic)[])[];
}
/** A set of instructions over sizes, `by` a system or "length".

    `rows` hold its counts for a file, their head first; `link` opens it on another phone, None
    where it would be too long.
     */
export interface InstructionSet {
  units: "cm" | "in";
  title: string;
  by: string;
  sizes: SetSize[];
  document: SetDocument;
  rows: ((string | number | number | null)[])[];
  link: string | null;
  notes: Note[];
}
/** A plan made from a set: the request for it, which tells its origin. */
export interface Adopted {
  request: Record<string, any>;
}
/** What is kept of a sock's counts: the version that counted, by part, and for what. */
export interface Counted {
  engine: string;
  figures: Record<string, string>;
  facts: Fact[];
}
/** A plan with its picture and links; `counts_link` holds no person, None where it cannot.

    The picture is in pieces to be joined: markup at each even place, words at each odd one; `bare`
    is the sock alone, without a word.
     */
export interface Page {
  plan: Plan;
  picture: string[];
  bare: string;
  link: string;
  counts_link: string | null;
  link_with_record: string | null;
  counts_link_with_record: string | null;
  counts_link_words: string;
  counted: Counted;
}
/** A count that is another by now. */
export interface Moved {
  part: "cuff" | "leg" | "heel" | "foot" | "before_toe" | "toe" | "end";
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
/** Five counts as a sender's phone counted them: the figures by part. */
export interface Sent {
  slots: number;
  figures: Record<string, string>;
  two: boolean;
}
/** What a link holds; older ones bring no counts. */
export interface Opened {
  request: Record<string, any>;
  sent?: Sent;
  set?: Record<string, any>;
}
/** One finished sock; `off` and the ends of what was `promised` are shares of the planned. */
export interface CameOut {
  name: string;
  day: string;
  planned: Quantity;
  low: Quantity;
  high: Quantity;
  measured: Quantity;
  off: number;
  promised: number[];
  held: boolean;
  words: string;
}
/** How finished socks came out; `cells` hold it for a file, its head first. */
export interface KnittedRecord {
  rows: CameOut[];
  held: number;
  left_out: number;
  words: string[];
  cells: ((string | number | null)[])[];
}
/** Her scatter (relative), the degrees of freedom of it, a sock over its swatch, and its sd. */
export interface OfSide {
  scatter: number;
  weight: number;
  habit: number;
  habit_sd: number;
}
/** What finished pairs taught of a knitter, as a request carries it. */
export interface Knitter {
  pairs: number;
  stitches: OfSide;
  rounds: OfSide;
}
/** What of her finished pairs a plan reckons with; None where they are too few. */
export interface OfKnitter {
  knitter: Knitter | null;
  pairs: number;
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
  part: "cuff" | "leg" | "heel" | "foot" | "before_toe" | "toe" | "end" | "waste" | "between" | "finish";
  title: string;
  text: string;
  tension?: string;
  kind: "do";
  sets?: "tension" | "color";
  makes?: "grafted" | "washed";
  ticks?: string[];
}
/** Rounds of the whole tube. */
export interface KnitRounds {
  part: "cuff" | "leg" | "heel" | "foot" | "before_toe" | "toe" | "end" | "waste" | "between" | "finish";
  title: string;
  text: string;
  tension?: string;
  kind: "rounds";
  rounds: number;
}
/** One row of heel or toe; needles are numbered from 1 in the pocket. */
export interface KnitRow {
  part: "cuff" | "leg" | "heel" | "foot" | "before_toe" | "toe" | "end" | "waste" | "between" | "finish";
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
  joins?: number;
  joins_where?: string;
  remind: string[];
}
/** A piece of the drawn sock: its `courses` from the first of its `rows` on, in mm.

    A course is a quadratic Bezier, six numbers.
     */
export interface DrawnCloth {
  part: "cuff" | "leg" | "heel" | "foot" | "before_toe" | "toe" | "end" | "waste" | "between" | "finish";
  rows: number;
  dashes: boolean;
  courses: number[][];
}
/** The sock from the side, to be filled; `box` is left, top, width and height. */
export interface Drawing {
  box: number[];
  cloth: DrawnCloth[];
}
/** One sock as the counter follows it; older ones that are kept lack `drawing` or `origin`. */
export interface Knit {
  slots: number;
  every: number | null;
  half_marks: string;
  pockets: Record<string, PocketPlace>;
  parts: Part[];
  words: string;
  origin?: string;
  foot_rounds: number;
  pair: Pair | null;
  off_machine: OffMachine | null;
  notes: Note[];
  steps: (KnitDo | KnitRounds | KnitRow)[];
  second?: (KnitDo | KnitRounds | KnitRow)[];
  drawing?: Drawing;
  counted: Counted;
}
/** A part of the card, with the rounds or rows that its boxes end with. */
export interface CardPart {
  title: string;
  figure: string;
  words: string;
  boxes: number[];
}
/** What a card to knit from says; `code_words` tell why there is no code.

    `drawing` is the sock alone, without a word.
     */
export interface Card {
  title: string;
  drawing: string;
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
  drawing: string | null;
  code: string | null;
  code_words: string;
  caution: string;
}
/** What a measuring sheet says of a foot, by the fields of a request. */
export interface OffSheet {
  fields: Record<string, string>;
}
/** A link as a square code. */
export interface Code {
  svg: string;
  version: number;
  across: number;
}
/** From the least to the most of a count. */
export interface Span {
  low: number;
  high: number;
}
/** A sock that is told in part; `told` is what it stands on so far. */
export interface Pencil {
  picture: string;
  foot: Span;
  told: ("foot" | "cylinder" | "fabric")[];
}
/** A heel or toe as it is turned; `manner` tells how it differs from the usual. */
export interface Pocket {
  needles: number;
  left: number;
  rows: number;
  rows_each_way: number;
  words: string;
  manner?: string;
}
/** A toe for which nothing is knitted at the machine. */
export interface BareToe {
  kind: string;
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
/** The rounds after the toe, or before it. */
export interface EndCount {
  rounds: number;
  words: string;
}
/** Every count of a sock; `end` where there are rounds after its toe. */
export interface Counts {
  needles: number;
  cuff: CuffCount;
  leg: LegCount;
  heel?: Pocket;
  foot: FootCount;
  before_toe?: EndCount;
  toe: Pocket | BareToe;
  end?: EndCount;
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
/** One color of the pair; `balls` is None where nobody said what a ball weighs. */
export interface Color {
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
/** How a repeat of colors falls. */
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
  colors: Color[];
  enough: Enough | null;
  stripes: Stripes | null;
}
/** One thing to do: by hand, some rounds, or a row of heel or toe.

    A row for a page has no `title` and no `text`.
     */
export interface Step {
  part: "cuff" | "leg" | "heel" | "foot" | "before_toe" | "toe" | "end" | "waste" | "between" | "finish";
  title?: string;
  kind: "do" | "rounds" | "row";
  text?: string;
  sets?: "tension" | "color";
  makes?: "grafted" | "washed";
  rounds?: number;
  row?: number;
  direction?: "right" | "left";
  back?: number | number[] | null;
  knits?: number[];
  hold?: number | number[] | null;
  in_work?: number;
  joins?: number;
}
/** Sock two as it may be: within `off` of the foot's length, `apart` from sock one, 4 in 5. */
export interface PairWish {
  like: "foot" | "between" | "sock one";
  rounds: number;
  chosen: boolean;
  off: Quantity;
  apart: Quantity;
  words: string;
}
/** Sock one's own length, by its measure and by what else is known, and what sock two may be. */
export interface Pair {
  one: Quantity;
  wishes: PairWish[];
  why: string | null;
}
/** What sock one's foot should measure before the wash, 4 in 5; None where nobody knows. */
export interface OffMachine {
  length: Quantity | null;
  low: Quantity | null;
  high: Quantity | null;
  words: string;
}
/** The whole sheet of counts; `sizes` and `measures` by name, a heel's where there is one. */
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
  pair: Pair | null;
  off_machine: OffMachine | null;
  steps: Step[];
  cautions: string[];
  origin: string;
  notes: Note[];
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
/** Whether the yarn that is there makes the pair. */
export interface EnoughHere {
  level: "yes" | "maybe" | "no";
  words: string;
}
/** A cylinder with a yarn at a mark; `choose` holds the groups of a request that adopt it. */
export interface Candidate {
  rank: number;
  slots: number;
  cylinder: string | null;
  yarn: string;
  mark: string | null;
  left: Quantity | null;
  enough: EnoughHere | null;
  standing: "fits" | "worn" | "not";
  verdict: string;
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
/** The middle 80 % of a count. */
export interface Reach {
  low: number;
  high: number;
  words: string;
}
/** What is knitted in a part, and how much of it; `figure` as a card shows it. */
export interface Part {
  part: "cuff" | "leg" | "heel" | "foot" | "before_toe" | "toe" | "end";
  title: string;
  count: number;
  unit: "rounds" | "rows";
  figure: string;
  detail: string;
}
/** A name and its text, "" where it is written in by hand. */
export interface Fact {
  name: string;
  text: string;
}
/** What any door answers where something is in the way. */
export interface Refusal {
  errors: Problem[];
}
export type Block = Heading | Paragraph | Listing | Table | Schematic;
export type KnitStep = KnitDo | KnitRounds | KnitRow;
