/** What is kept on the phone apart from the book and what was counted at the machine. */

/** One thing, with when it was changed last, in ms; a sheet's value is `{ values, changed, ... }`. */
export interface Fact {
  at: number;
  value: any;
}
export interface Kind {
  /** what it is, where it cannot be had anew; "" where it can */
  words: string;
  /** throws where a value is none of its kind */
  sure(value: any): unknown;
  /** a sheet and nothing more: local storage has its values alone, as earlier versions had them */
  flat?: boolean;
  /** a word, which stands in local storage as it is */
  plain?: boolean;
  /** several, by name and id: "unkept.<id>" of each wearer */
  many?: boolean;
  /** the first guess alone is of use: the database does without */
  guess?: boolean;
}
export type Kinds = Record<string, Kind>;
/** A text of a sheet's field with the unit it is meant in. */
export type Spelled = (name: string, text: string, units: string) => string;
