/** Made by build/words.py of en/sent.ftl: not to be edited. */
export function countedOtherwise(given: { before: string | number; now: string | number; title: string | number }): string;
export const needles: string;
export const otherwise: string;
export function part(given: { part: "cuff" | "foot" | "heel" | "leg" | "toe" }): string;
export function rounds(given: { rounds: number }): string;
export const same: string;
export function sent(given: { slots: string | number; socks: "both" | "two" }): string;
export function turned(given: { left: string | number; needles: string | number }): string;
