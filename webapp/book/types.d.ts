/** The book of wearers: what is kept of each, and of each visit. */
import type { FirstSock } from "../machine/types";
import type { Machine, SheetName, Sheets } from "../copies/types";
import type { Again, Counted, Request, Values } from "../page/types";
import type { Dated, Dates } from "../storage/dated.js";
import type { Spelled } from "../storage/types";

export type State =
  | "to measure"
  | "measured"
  | "planned"
  | "sock one"
  | "sock two"
  | "grafted"
  | "washed"
  | "handed over";

/** What she may write about a wearer; all of it as typed. */
export interface Particulars {
  label: string;
  state: State;
  /** the day it is promised for, like 2026-11-28, or "" */
  due: string;
  price: string;
  /** who was asked whether the measures may be kept */
  asked: string;
  length: string;
  ease: "snug" | "" | "loose";
  colours: string;
  allergy: string;
  /** phone, mail, the number of a stand */
  contact: string;
  deposit: string;
  /** how many pairs are ordered */
  pairs: string;
}
export interface Wearer extends Particulars {
  id: string;
  /** the phone's clock, in ms: when it was written into the book */
  made: number;
  /** when each of the particulars was changed last, in ms; those of before dates are not named */
  changed?: Dates;
}
/** The counts of a pair, as they were looked at last or as they were knitted. */
export interface Plan {
  at: number;
  /** what it was planned from, as typed */
  values: Values;
  counted: Counted;
  /** sock two's, where sock one taught it others */
  two?: Counted;
  /** what of sock one taught that */
  measured?: FirstSock;
  /** the pair at the machine, or "by hand" where no counter was used; none while it is only planned */
  knitted?: string;
}
/** What the counter knows of a wearer's pair. */
export interface KnittedPair {
  wearer: string;
  session: string;
  began: number;
  request: Request;
  counted: Counted;
  two?: Counted;
  measured?: FirstSock;
  state: State;
}
/** One sheet: the foot as it was measured that day, and the machine and yarn it was planned on. */
export interface Visit {
  wearer: string;
  /** 1, 2, 3 … of this wearer; the last is the one on hand */
  number: number;
  at: number;
  values: Values;
  /** when each field of the values was changed last, in ms; those of before dates are not named */
  changed?: Dates;
  /** the one on hand last */
  plans?: Plan[];
  /** how it stood when the next visit began */
  state?: State;
  due?: string;
  price?: string;
}
/** An order as it goes to paper; the measures may stay behind. */
export interface Order {
  wearer: Wearer;
  measures: { title: string; text: string }[];
}
/** Something the phone holds that cannot be read: left as it is, and told. */
export interface Aside {
  store: "wearers" | "visits" | "gone";
  key: IDBValidKey;
  text: string;
}
/** All that is left of a record that was deleted, so that no copy brings it back unasked. */
export interface Gone {
  id: string;
  /** ms */
  at: number;
}
export interface Deleted {
  wearer: Wearer;
  visits: Visit[];
}

/** Of a next visit: that its measures are old, else "", and the step to begin at. */
export interface Next {
  old: string;
  step: "measure" | "yarn" | "counts";
}

/** A wearer's pair on the machine: where it stands, in words. */
export interface OnMachine {
  session: string;
  words: string;
}

/** Which page of the book is open. */
export interface View {
  name: "list" | "new" | "card" | "copies";
  id?: string;
  /** the foot that lies on the table goes along */
  keep?: boolean;
  /** it was come to from the list, so that Back leads there */
  over?: boolean;
}
/** What the book needs of the page. */
export interface Host {
  place: HTMLElement;
  /** the values on the table, and the machine and yarn of the knitter’s own sheet */
  table(): Values;
  machine(): Values;
  /** put a wearer's sheet on the table */
  open(wearer: Wearer, visit: Visit, next?: Next): void;
  /** the sheet to print for the foot that lies on the table */
  measuringSheet(): void;
  /** what was typed into a field of which nothing is made yet, "" for none */
  half(name: string): string;
  keepHalf(name: string, text: string): void;
  /** a text of a sheet's field with the unit it is meant in */
  spelled: Spelled;
  /** another tab typed on a visit's sheet */
  followed(visit: Visit): void;
  /** its label has changed */
  rename(id: string, label: string): void;
  /** its pair at the machine */
  toMachine(session: string): void;
  /** what the calculator counts of a kept plan by now */
  again(request: Request, counted: Counted): Promise<Again>;
  /** another takes its place: what lies on the table is old */
  replaced(id: string): void;
  /** it is deleted, here or in another tab: nothing of it may stay */
  forget(id: string, elsewhere?: boolean): void;
  /** what goes with this wearer's finished pair; fails where it cannot be loaded */
  tag(label: string, values: Values): Promise<void>;
  /** how many sets of instructions are kept */
  sets(): number;
  /** their list, over the book; fails where it cannot be loaded */
  openSets(closed: () => void): Promise<void>;
  /** fails where it cannot be loaded */
  printOrders(title: string, orders: Order[]): Promise<void>;
  go(view: View, options?: { replace?: boolean }): void;
  /** a copy that came from outside the page, told once; its file is null where it could not be read */
  came(): { file: File | null } | undefined;
  /** what is typed apart from the book, for copies */
  sheets: {
    copy(): Sheets;
    /** with the dates of its fields */
    dated(name: Exclude<SheetName, "before">): Dated;
    /** put together with what is here, field by field */
    join(name: Exclude<SheetName, "before">, sheet: Dated): void;
    take(name: SheetName, values: Values): void;
    /** whether all of it is on the phone */
    kept(): boolean;
  };
  /** the pairs on the machine, by their wearer; none where it could not be loaded */
  onMachine(): Promise<Map<string, OnMachine>>;
  /** seconds that a wearer's knitted pairs took, by their session */
  took(wearer: string): Promise<Map<string, number>>;
  /** what is kept at the machine, for copies; rejects where it could not be loaded */
  knitting(): Promise<Machine>;
}
