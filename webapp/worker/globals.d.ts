// What build/site.py puts in place of this name in worker.js and updates.js: bytes by address in the site.
declare const SIZES: Record<string, number>;
