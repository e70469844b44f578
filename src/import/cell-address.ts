/** A column by its letters: 1 is `A`, 27 is `AA`. */
export function columnLetters(column: number): string {
  let letters = '';
  for (let left = column; left > 0; left = Math.floor((left - 1) / 26)) {
    letters = String.fromCharCode(65 + ((left - 1) % 26)) + letters;
  }
  return letters;
}

/** The column that letters name, 1-based: `AA` is 27; null for anything that is no column. */
export function columnNumber(letters: string): number | null {
  if (!/^[A-Za-z]{1,3}$/.test(letters)) return null;
  let column = 0;
  for (const letter of letters.toUpperCase()) column = column * 26 + letter.charCodeAt(0) - 64;
  return column;
}

/** A cell as spreadsheets name it: `B17`. */
export function cellName(row: number, column: number): string {
  return `${columnLetters(column)}${row}`;
}

/** The row and column of `B17`, or null; `$` of fixed references is passed over. */
export function cellPlace(name: string): { readonly row: number; readonly column: number } | null {
  const [, letters = '', digits = ''] = /^\$?([A-Za-z]{1,3})\$?(\d{1,7})$/.exec(name) ?? [];
  const column = columnNumber(letters);
  return column === null || Number(digits) < 1 ? null : { row: Number(digits), column };
}

/** Rows or columns in short, from the lowest: `14-16, 20`. */
export function spans(
  numbers: Iterable<number>,
  name: (number: number) => string = String,
): string {
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  const parts: string[] = [];
  for (let i = 0; i < sorted.length; ) {
    let end = i;
    while (sorted[end + 1] === (sorted[end] ?? 0) + 1) end += 1;
    const [first, last] = [name(sorted[i] ?? 0), name(sorted[end] ?? 0)];
    parts.push(first === last ? first : `${first}-${last}`);
    i = end + 1;
  }
  return parts.join(', ');
}
