import type { ReadProblem } from './model.ts';

// A surrogate half without its other half, U+FFFD (what a decoder leaves of bytes it cannot read),
// control characters that no text holds, marks that turn the direction of what follows (13 is then
// printed as 31), and UTF-8 that was read once as an old Western encoding.
const suspects =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for.
  /[\0-\x08\x0B\x0E-\x1F\x7F\u202A-\u202E\u2066-\u2069\uFFFD]|\u00C2[\u00A0-\u00BF]|\u00E2\u20AC[\u201C\u201D\u2122\u0153\u02DC\u201A]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

const saveAs = 'save the file as UTF-8 and put the character right';

/** Says where a text shows that it was saved in another encoding; the first place of each kind. */
export function encodingProblems(text: string): readonly ReadProblem[] {
  suspects.lastIndex = 0;
  const found = new Map<string, { start: number; end: number; count: number }>();
  for (let match = suspects.exec(text); match; match = suspects.exec(text)) {
    const what = name(match[0]);
    const known = found.get(what);
    if (known) known.count += 1;
    else found.set(what, { start: match.index, end: match.index + match[0].length, count: 1 });
  }
  return [...found].map(([what, { start, end, count }]) => ({
    kind: 'encoding',
    span: { start, end },
    message: count === 1 ? `here stands ${what}` : `here stands ${what}, the first of ${count}`,
    fix: saveAs,
  }));
}

function name(found: string): string {
  const code = found.charCodeAt(0);
  if (found.length > 1) return `\`${found}\`, which is one character read in a wrong encoding`;
  if (code === 0) return 'a zero byte, which no text holds';
  if (code === 0xfffd) return 'a character that could not be read';
  if (code >= 0xd800 && code <= 0xdfff) return 'half a character';
  if (code >= 0x202a && code <= 0x2069) {
    return `a mark that turns the direction of writing (U+${code.toString(16).toUpperCase()})`;
  }
  return `a control character (U+${code.toString(16).toUpperCase().padStart(4, '0')})`;
}
