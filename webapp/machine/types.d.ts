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
  /** those of any plan; none where an older version began it */
  cautions?: string[];
  /** put away, and still there to be brought back */
  away?: boolean;
  /** sock one, where it was knitted and measured before this counter began with sock two */
  measured?: FirstSock;
}
/** Sock one off the machine, washed and measured; as typed, bare numbers in the units of the request. */
export interface FirstSock {
  foot_rounds: string;
  /** "" where it is not washed yet */
  length: string;
  /** before the wash */
  unwashed_length?: string;
  flat_width?: string;
  /** what sock two shall be like; the foot where nothing is said */
  like?: string;
}
/** A pair whose sock one was measured at its counter. */
export interface MeasuredPair {
  wearer?: string;
  request: Request;
  measured: FirstSock;
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
  /** with a `plan`: what of sock one gave these counts */
  measured?: FirstSock;
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
  measured?: FirstSock;
  ended: [boolean, boolean];
  /** number of the last happening */
  last: number;
}
/** How long one section took. */
export interface SectionTime {
  /** seconds a round, and a row, where the section has them */
  round?: number;
  row?: number;
  /** seconds in all, each sock; 0 where nothing tells. Whoever paused is not counted */
  took: [number, number];
}
/** A pair that is knitted: what is learnt from it, in at most 3,000 bytes. What was tapped is gone. */
export interface Ended {
  id: string;
  /** the phone's clock, in ms: for showing only */
  began: number;
  ended: number;
  label: string;
  wearer?: string;
  who?: string;
  /** whose instructions it was knitted from */
  origin?: string;
  /** as planned, without sock one; only its units once its wearer is deleted */
  request: Request;
  /** of both socks; of each where sock two's became others */
  counted: Counted[];
  measured?: FirstSock;
  /** by the section that the steps name */
  times: Record<string, SectionTime>;
  notes: { sock: Sock; section: string; done: number; text: string }[];
  /** what is told of each sock's yarn once it is off the shelf */
  yarn: [string, string];
  /** number of the last happening there was */
  last: number;
  /** long notes were shortened */
  cut?: true;
}
/** A pair that was deleted. */
export interface Gone {
  id: string;
  /** the phone's clock, in ms */
  at: number;
}
/** Something the phone holds that cannot be read: left as it is, and told. */
export interface Aside {
  /** `sessions`: with all that happened in it */
  store: "sessions" | "happenings" | "ended" | "gone";
  key: IDBValidKey;
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
