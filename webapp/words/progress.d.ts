/** Made by build/words.py of en/progress.ftl: not to be edited. */
export function calculatorComes(given: { come: string | number; of: string | number }): string;
export function calculatorLeft(given: { come: string | number; of: string | number; seconds: string | number }): string;
export function fasterStart(given: { size: string | number }): string;
export const getFasterStart: string;
export function meanwhile(given: { seconds: number }): string;
export const notAllStored: string;
export function storing(given: { come: string | number; of: string | number }): string;
