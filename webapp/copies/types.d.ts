/** What a copy holds, and what it would change. */
import type { Deleted } from "../book/types";
import type { Choices } from "../machine/settings.js";
import type { Kept } from "../machine/types";
import type { Values } from "../page/types";

/** What is typed apart from the book: her own page, what stood there before, her shelf, the size table. */
export type SheetName = "mine" | "before" | "shelf" | "chart";
export type Sheets = Record<SheetName, Values | null>;

export interface Copy {
  book: Deleted[];
  sheets: Sheets;
  pairs: Kept[];
  /** what she has set otherwise than usual */
  settings: Partial<Choices> | null;
}
/** The copies' way to the machine. */
export interface Machine {
  /** `whole` is false where the phone did not hand out all pairs */
  copy(): Promise<Pick<Copy, "pairs" | "settings"> & { whole: boolean }>;
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
  /** only what differs, side by side */
  rows: Row[];
  take: "here" | "file";
  put(): Promise<void> | void;
}
/** What a copy would change, and what is the same in it. */
export interface Found {
  changes: Change[];
  same: Change["kind"][];
}
