/**
 * An answer's messages as sentences. Python answers facts: a message is an id, in `say`, with arguments.
 * @typedef {Record<string, (given: Record<string, any>) => string>} Sentences by id
 */

/**
 * A value out of JSON with a sentence in the place of each message; what is inside a message comes
 * first. Done by hand, for `JSON.parse` takes three times as long where it is to ask for every value.
 * @param {any} value changed where it is @param {Sentences} sentences @returns {any}
 */
export function aloud(value, sentences) {
  if (typeof value !== "object" || value === null) return value;
  for (const name in value) {
    const one = value[name];
    if (typeof one === "object" && one !== null) value[name] = aloud(one, sentences);
  }
  return sentences[value.say]?.(value) ?? value;
}
