/** Made by build/words.py of en/installing.ftl: not to be edited. */
export const install: string;
export const toHomeScreen: string;
