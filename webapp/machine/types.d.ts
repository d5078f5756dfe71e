/** A sock on the machine: the steps as the engine gave them, what happened, and where it stands. */
import type { Knit, KnitStep as Step } from "../page/answers";
import type { Request } from "../page/types";

export type {
  Knit,
  KnitDo as Do,
  KnitRounds as Rounds,
  KnitRow as Row,
  KnitStep as Step,
  PocketPlace,
} from "../page/answers";

/** Index into `steps`, and the rounds done in that step (0 for a row and for what is done by hand).
 * At `steps.length` the sock is off the machine. */
export interface Place {
  step: number;
  done: number;
}
export interface Session {
  id: string;
  /** the phone's clock, in ms: for showing only */
  began: number;
  label: string;
  /** the wearer in the book that it is for, and what they are called there */
  wearer?: string;
  who?: string;
  request: Request;
  socks: [Knit, Knit];
  /** seconds a round or row, as learned on socks before this pair */
  earlier?: Pace;
  /** put away, and still there to be brought back */
  away?: boolean;
}
export type Sock = 0 | 1;
/** What was done at the machine; never changed once it is written. */
export interface Happening {
  session: string;
  /** 1, 2, 3 … in a session */
  number: number;
  sock: Sock;
  /** yarn: what the sock took is off the shelf, or with
   * no text back on it. turn: now this sock is on the machine. plan: this sock's counts are others now. lost: what it was
   * cannot be read; each place is told whole, so the next one says where the sock stands. */
  kind: "done" | "back" | "jump" | "note" | "turn" | "plan" | "yarn" | "lost";
  /** where this sock stands after it; with `done`, `back` and `jump`, and with a `plan` that moves it */
  place?: Place;
  text?: string;
  knit?: Knit;
  /** ms since the happening before it in the same visit, by a clock that never goes back */
  took: number | null;
  /** the phone's clock, in ms: for showing only */
  at: number;
  /** which visit of which tab counted it; the journal writes it in */
  tab?: string;
}
export interface Note {
  sock: Sock;
  place: Place;
  text: string;
  number: number;
}
export interface State {
  sock: Sock;
  places: [Place, Place];
  /** where the sock on the machine stood before each of the last ten steps of it, the newest last */
  undo: Place[];
  notes: Note[];
  /** what is told of each sock's yarn once it is off the shelf */
  yarn: [string, string];
  socks: [Knit, Knit];
  ended: [boolean, boolean];
  /** number of the last happening */
  last: number;
}
/** Something the phone holds that cannot be read: left as it is, and told. */
export interface Aside {
  /** of a session with all that happened in it, or of one happening */
  key: string | [string, number];
  text: string;
}
/** A session with all that happened, as it is kept. */
export interface Kept {
  session: Session;
  happenings: Happening[];
}

/** What the screen shows of a place. */
export interface View {
  /** undefined once the sock is off the machine */
  step: Step | undefined;
  title: string;
  /** what a section is counted in; "thing" where all of it is done by hand */
  unit: "round" | "row" | "thing";
  /** of the section, in that unit */
  done: number;
  total: number;
  left: number;
  /** rounds or rows left in this step; 0 for what is done by hand */
  stepLeft: number;
  /** what comes after this step; "" at the end */
  next: string;
  /** of the whole sock, 0 to 1 */
  share: number;
  ended: boolean;
}
/** Seconds a round or row by part and unit ("foot round"). */
export type Pace = Record<string, number>;
/** Seconds left; null where nothing tells yet. */
export interface TimeLeft {
  section: number | null;
  sock: number | null;
}
