/** What a copy holds, and what it would change. */
import type { Deleted, Gone } from "../book/types";
import type { Choices } from "../machine/settings.js";
import type { Ended, Kept } from "../machine/types";
import type { Values } from "../page/types";
import type { Dates } from "../storage/dated.js";

/** What is typed apart from the book: her own page, what stood there before, her shelf, the size table, sets of instructions. */
export type SheetName = "mine" | "before" | "shelf" | "chart" | "sets";
export type Sheets = Record<SheetName, Values | null>;

export interface Copy {
  book: Deleted[];
  sheets: Sheets;
  /** when the fields of the sheets were changed, where that is known */
  dates: Partial<Record<SheetName, Dates>>;
  /** under way */
  pairs: Kept[];
  /** knitted */
  ended: Ended[];
  /** what was deleted */
  gone: { wearers: Gone[]; pairs: Gone[] };
  /** what she has set otherwise than usual */
  settings: Partial<Choices> | null;
}
/** Something of a file that cannot be read: it stays in the file. */
export interface Unread {
  /** which one it is, for people */
  title: string;
  text: string;
}
/** What came out of a file. */
export interface Read {
  copy: Copy;
  unread: Unread[];
  /** those records of the copy that are not as they were saved */
  altered: Set<unknown>;
  /** those that were saved and are not in the file */
  lacking: ("wearer" | "pair")[];
  /** whether anything of it is not as it was saved */
  damaged: boolean;
  /** whether it says when things were changed; older versions did not */
  dated: boolean;
}
/** The copies' way to the machine. */
export interface Machine {
  /** `whole` is false where the phone did not hand out all pairs; `aside`: damaged records that are not in it */
  copy(): Promise<
    Pick<Copy, "pairs" | "ended" | "settings"> & { gone: Gone[]; whole: boolean; aside: number }
  >;
  /** one that is knitted; rejects where the one that is here has gone further */
  takeEnded(ended: Ended): Promise<void>;
  /** what a pair leaves once it is knitted; null while it is under way */
  asEnded(kept: Kept): Ended | null;
  /** one that was deleted on another phone, at which ms */
  remove(id: string, at: number): Promise<void>;
  /** rejects where the one that is here is in the way; `instead`: in its place */
  take(kept: Kept, instead: boolean): Promise<void>;
  /** false while something is not on the phone */
  readonly kept: boolean;
  /** after the last one */
  taken(): Promise<void>;
  set(settings: Partial<Choices>): void;
  /** where a pair stands, in words */
  standing(kept: Kept): string;
}

export interface Row {
  title: string;
  here: string;
  file: string;
}
/** One thing that a copy would change. */
export interface Change {
  kind: "wearer" | "pair" | "sheet" | "settings";
  title: string;
  /**
   * new here, further than here, changed later than here, or other than here and nobody knows which is later;
   * deleted on the other phone, or deleted here since. She chooses but where it is plain.
   */
  how: "new" | "further" | "newer" | "other" | "gone" | "deleted";
  /** it is not as it was saved */
  altered: boolean;
  /** only what differs, side by side */
  rows: Row[];
  take: "here" | "file";
  put(): Promise<void> | void;
}
/** What a copy would change, and what is the same in it. */
export interface Found extends Omit<Read, "copy" | "altered" | "dated"> {
  changes: Change[];
  same: Change["kind"][];
  /** those that are deleted and were never here: the next copy says so too */
  stones: Gone[];
}
