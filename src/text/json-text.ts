/**
 * A value as JSON in which a terminal finds nothing to obey: what JSON lets stand raw and a terminal, or
 * the direction of writing, would take as an order is written by its number. Any reader of JSON gives the
 * same value back.
 */
export function jsonText(value: unknown, indent?: number): string {
  return JSON.stringify(value, null, indent).replace(
    /[\u007f-\u009f\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
