// What build/site.py puts in place of these names in service_worker.js.
declare const PRECACHE: { url: string; revision: string; integrity: string; size: number }[];
declare const VERSION: string;
/** Of each ending, the type that a browser wants. */
declare const TYPES: Record<string, string>;
