/**
 * A sheet's words made safe for a terminal: line ends and tabs become one space, and any other
 * control or direction-changing character is shown by its number (`<U+001B>`), so that a sheet
 * can neither color, erase nor reorder what its own findings say.
 */
export function visible(text: string): string {
  return text.replace(/[\t\r\n\u2028\u2029]+/g, ' ').replace(
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are the point.
    /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/g,
    (character) => `<U+${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}>`,
  );
}

/** Text of several lines made as safe, with its line ends and tabs kept: what a terminal is given of data. */
export function visibleLines(text: string): string {
  return text.replace(/(?:[^\t\r\n]|\r(?!\n))+/g, (piece) => visible(piece));
}
