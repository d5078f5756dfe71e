/** Why nothing of a file can be taken in: a sentence to show as it stands. */
export class Unreadable extends Error {}
