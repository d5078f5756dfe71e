/** What a copy holds, and what it would change. */
import type { Deleted } from "../book/types";
import type { Choices } from "../machine/settings.js";
import type { Ended, Gone, Kept } from "../machine/types";
import type { Values } from "../page/types";

/** What is typed apart from the book: her own page, what stood there before, her shelf, the size table. */
export type SheetName = "mine" | "before" | "shelf" | "chart";
export type Sheets = Record<SheetName, Values | null>;

export interface Copy {
  book: Deleted[];
  sheets: Sheets;
  /** under way */
  pairs: Kept[];
  /** knitted */
  ended: Ended[];
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
}
/** The copies' way to the machine. */
export interface Machine {
  /** `whole` is false where the phone did not hand out all pairs; `aside`: damaged records that are not in it */
  copy(): Promise<Omit<Copy, "book" | "sheets"> & { gone: Gone[]; whole: boolean; aside: number }>;
  /** one that is knitted; rejects where the one that is here has gone further */
  takeEnded(ended: Ended): Promise<void>;
  /** what a pair leaves once it is knitted; null while it is under way */
  asEnded(kept: Kept): Ended | null;
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
  /** new here, further than here, or other than here: then she chooses */
  how: "new" | "further" | "other";
  /** it is not as it was saved */
  altered: boolean;
  /** only what differs, side by side */
  rows: Row[];
  take: "here" | "file";
  put(): Promise<void> | void;
}
/** What a copy would change, and what is the same in it. */
export interface Found extends Omit<Read, "copy" | "altered"> {
  changes: Change[];
  same: Change["kind"][];
}
