/** Made by build/words.py of en/worker.ftl: not to be edited. */
export const fault: string;
export const lineGone: string;
export const noAnswer: string;
export const noWebassembly: string;
export const noWebassemblyWay: string;
export const notStarted: string;
