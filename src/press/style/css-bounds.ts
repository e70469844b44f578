import { nearestName, svgFault } from '../../text/index.ts';
import { perhaps } from './template-fault.ts';

/** What a style may not have, where, and what to do. */
export interface CssFault {
  readonly start: number;
  readonly end: number;
  readonly message: string;
  readonly fix: string;
}

/**
 * A style as a browser reads it: blanks for comments, and signs for their escapes (CSS Syntax 3, 4.3.7), with
 * blanks behind them so that places stay.
 */
export function plainCss(text: string): string {
  return text
    .replace(/\/\*[\s\S]*?(?:\*\/|$)/g, (comment) => comment.replace(/[^\r\n]/g, ' '))
    .replace(
      /(?:[\w-]|\\(?:[0-9a-f]{1,6}\s?|[^\r\n0-9a-f]))+/gi,
      (word, at: number, all: string) => {
        if (!word.includes('\\')) return word;
        const plain = unescaped(word);
        // A function's name stays at its brace, that of a rule at its sign.
        return all[at - 1] === '@' ? plain.padEnd(word.length) : plain.padStart(word.length);
      },
    );
}

function unescaped(word: string): string {
  return word.replace(
    /\\(?:([0-9a-f]{1,6})\s?|(.))/gi,
    (_, code: string | undefined, sign = '') => {
      if (code === undefined) return /[\w-]/.test(sign) ? sign : '_';
      const point = Number.parseInt(code, 16);
      return point > 0x20 && point < 0x7f ? String.fromCharCode(point) : '_';
    },
  );
}

/** Functions that load what their strings name (CSS Images 4, 2 and 5; CSS Values 5, 2.2). */
const loading = /(?<![\w-])(?:-webkit-)?(?:image-set|cross-fade|image|src)\(/gi;

/** What in a style leads out of it. `fonts` are those in templates/fonts. */
export function outside(css: string, fonts: ReadonlySet<string>): CssFault[] {
  const faults: CssFault[] = [];
  const told = (start: number, end: number, address: string): void => {
    const message = `${shortened(address)} is not in the style itself, and a page loads nothing from outside`;
    const fix =
      'fonts go into templates/fonts and are named url(fonts/NAME); a picture goes into the style as data:';
    faults.push({ start, end, message, fix });
  };
  for (const match of css.matchAll(/url\(\s*(?:"([^"]*)"?|'([^']*)'?|([^"')]*))\s*\)?/gi)) {
    const address = (match[1] ?? match[2] ?? match[3] ?? '').trim();
    const end = match.index + match[0].length;
    if (/^data:/i.test(address)) {
      faults.push(...drawingIn(address, match.index, end));
      continue;
    }
    const font = /^fonts\/([^/]+)$/.exec(address)?.[1];
    if (font !== undefined && fonts.has(font)) continue;
    if (font === undefined) {
      told(match.index, end, address);
      continue;
    }
    const message = `there is no font ${font} in templates/fonts`;
    faults.push({
      start: match.index,
      end,
      message,
      fix: perhaps(nearestName(font, fonts), [], ''),
    });
  }
  for (const match of css.matchAll(loading)) {
    const rest =
      css.slice(match.index + match[0].length, match.index + 2000).split(/[;}]/)[0] ?? '';
    const string = /^[^"']*(["'])(?!data:)([^"']*)/i.exec(rest);
    if (string !== null) told(match.index, match.index + match[0].length, string[2] ?? '');
  }
  return faults;
}

/** A drawing that stands in the style is one like all others. */
function drawingIn(address: string, start: number, end: number): CssFault[] {
  const [, base64, data = ''] =
    /^data:image\/svg\+xml[^,]*?(;base64)?,([\s\S]*)$/i.exec(address) ?? [];
  if (data === '') return [];
  let svg: string;
  try {
    svg = base64 === undefined ? decodeURIComponent(data) : atob(data);
  } catch {
    return [];
  }
  const fault = svgFault(svg);
  const fix = 'save it as a plain SVG of shapes alone, or as PNG';
  return fault === null
    ? []
    : [{ start, end, message: `the picture in the style has ${fault.what}`, fix }];
}

/** Millimeters of a unit; those of the page and of letters as on the largest page (CSS Values 4, 6). */
const mm: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  px: 25.4 / 96,
  q: 0.25,
  em: 4,
  rem: 4,
  ex: 2,
  ch: 2,
  lh: 5,
  vh: 3,
  vw: 3,
  '%': 3,
};

/** Longer than any page by ten times; letters higher than a page; a page that holds nothing. */
const longest = 3000;
const largestLetters = 300;
const leastPage = 25;

/** What makes a print of pages without number, or of letters that no page holds. */
export function boundless(css: string): CssFault[] {
  const faults: CssFault[] = [];
  const tell = (match: RegExpMatchArray, message: string, fix: string): void => {
    const start = match.index ?? 0;
    faults.push({ start, end: start + match[0].length, message, fix });
  };
  for (const match of css.matchAll(
    /(?<![\w.#-])(\d*\.?\d+(?:e[+-]?\d+)?)(mm|cm|in|pt|pc|px|q|r?em|ex|ch|lh|vh|vw|%)(?![\w-])/gi,
  )) {
    const length = Number(match[1]) * (mm[(match[2] ?? '').toLowerCase()] ?? 0);
    if (length > longest)
      tell(match, `${match[0]} is longer than any page`, 'write what the page has room for');
  }
  for (const match of css.matchAll(
    /calc\([^;{}]{0,300}?(?<![\w.#-])(\d{5,}(?:\.\d+)?|\d+e\d+)(?![\w.%-])/gi,
  )) {
    tell(
      match,
      `${match[1]} in a length is more than any page has`,
      'write what the page has room for',
    );
  }
  for (const match of css.matchAll(
    /font(?:-size)?\s*:[^;{}]{0,300}?(?<![\w.-])(\d*\.?\d+)(mm|cm|in|pt|pc|px)/gi,
  )) {
    const height = Number(match[1]) * (mm[(match[2] ?? '').toLowerCase()] ?? 0);
    if (height > largestLetters)
      tell(
        match,
        `letters of ${match[1]}${match[2]} are higher than a page`,
        'write a size that can be read',
      );
  }
  for (const match of css.matchAll(
    /(?<![\w-])size\s*:[^;{}]{0,300}?(?<![\w.-])(\d*\.?\d+)(mm|cm|in|pt|pc|px)/gi,
  )) {
    const side = Number(match[1]) * (mm[(match[2] ?? '').toLowerCase()] ?? 0);
    if (side < leastPage)
      tell(
        match,
        `a page of ${match[1]}${match[2]} holds nothing`,
        'take it out: the paper is chosen with --paper or in edition.yaml',
      );
  }
  for (const match of css.matchAll(
    /(?<![\w-])column(?:s|-count)\s*:[^;{}]{0,300}?(?<![\w.-])(\d{3,})(?![\w.%-])/gi,
  )) {
    tell(
      match,
      `${match[1]} columns are more than a page holds`,
      'write how many the page has room for',
    );
  }
  for (const match of css.matchAll(
    /(?:^|[}\s,>+~])\*(?:::?[\w-]+)?\s*\{[^}]{0,500}?(?:page-)?break-(?:before|after)\s*:\s*(?!auto|avoid)[a-z]+/gi,
  )) {
    tell(
      match,
      'a page is begun at everything, be it a word',
      'name what is to begin a page: h2 { break-before: page }',
    );
  }
  for (const match of css.matchAll(/content\s*:\s*("[^"]{2000,}|'[^']{2000,})/gi)) {
    tell(
      match,
      'the style prints a text of more than 2000 letters',
      'put the words into a template',
    );
  }
  return faults;
}

function shortened(address: string): string {
  if (address === '') return 'an empty address';
  return address.length > 60 ? `${address.slice(0, 57)}...` : address;
}
