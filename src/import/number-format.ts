import { formatDecimal, rational } from '../quantity/index.ts';
import { dayOfSerial } from './calendar.ts';

/** How a spreadsheet shows a stored number. */
export interface ShownNumber {
  readonly text: string;
  readonly type: 'number' | 'date';
}

/**
 * A stored number as its number format (ECMA-376 part 1, 18.8.31) shows it: decimals, thousands,
 * percent, fractions, words in quotes; days and times as YYYY-MM-DD and hh:mm. What a format asks for
 * beyond that is left out, and a scientific one shows the plain number.
 */
export function shownNumber(value: number, format: string, from1904: boolean): ShownNumber {
  if (!Number.isFinite(value)) return { text: String(value), type: 'number' };
  const { section, bare } = sectionFor(value, format);
  const tokens = tokensOf(section);
  const code = tokens.map((token) => (token.literal ? '' : token.text)).join('');
  if (isDateCode(code)) return { text: dayOfSerial(value, from1904), type: 'date' };
  const size = bare ? Math.abs(value) : value;
  if (/general|@|e[+-]/i.test(code)) {
    const literals = /general/i.test(code) ? literalsAround(tokens, /general/i) : null;
    return { text: wrapped(literals, plainNumber(size)), type: 'number' };
  }
  if (!/[0#?]/.test(code)) {
    const words = tokens.map(({ text }) => text).join('');
    // Nothing at all is shown of a number that a format hides; only of a zero is nothing lost by it.
    return { text: words === '' && value !== 0 ? plainNumber(size) : words.trim(), type: 'number' };
  }
  const digits = /\//.test(code) ? fraction(size, tokens) : decimal(size, code);
  return { text: wrapped(literalsAround(tokens, /[0#?]/), digits), type: 'number' };
}

/** A number without a format: at most eleven digits, as spreadsheets show it. */
export function plainNumber(value: number): string {
  const short = Number(value.toPrecision(11));
  return exactDecimal(short);
}

/** Decimal notation without an exponent. */
function exactDecimal(value: number): string {
  const text = String(value);
  const [, sign = '', head = '', tail = '', power = '0'] =
    /^(-?)(\d+)(?:\.(\d+))?e([+-]\d+)$/.exec(text) ?? [];
  if (head === '') return text;
  const digits = head + tail;
  const point = head.length + Number(power);
  if (point <= 0) return `${sign}0.${'0'.repeat(Math.min(-point, 40))}${digits}`;
  return sign + digits.padEnd(Math.min(point, 40), '0');
}

interface Token {
  readonly text: string;
  readonly literal: boolean;
}

/** The section of a format for a number, and whether it shows it without its sign. */
function sectionFor(value: number, format: string): { section: string; bare: boolean } {
  const sections: string[] = [''];
  for (const { text } of rawTokens(format)) {
    if (text === ';') sections.push('');
    else sections[sections.length - 1] += text;
  }
  const conditions = sections.slice(0, 2).map(conditionOf);
  if (conditions.some((condition) => condition !== null)) {
    const found = conditions.findIndex((condition) => condition?.(value));
    const rest = conditions.indexOf(null);
    const at = found >= 0 ? found : rest >= 0 ? rest : 2;
    return { section: sections[at] ?? '', bare: false };
  }
  const [positive = '', negative, zero] = sections;
  if (value < 0 && negative !== undefined) return { section: negative, bare: true };
  return { section: value === 0 && zero !== undefined ? zero : positive, bare: false };
}

/** Which numbers a section is for, `[>=1]`; null where it does not say. */
function conditionOf(section: string): ((value: number) => boolean) | null {
  const [, sign, figure] =
    /^(?:\[[^\]]*\])*?\[(<=|>=|<>|<|>|=)(-?\d+(?:\.\d+)?)\]/.exec(section) ?? [];
  if (sign === undefined) return null;
  const than = Number(figure);
  return (value) =>
    sign === '<>'
      ? value !== than
      : (sign.includes('<') && value < than) ||
        (sign.includes('>') && value > than) ||
        (sign.includes('=') && value === than);
}

/** Quoted words, escaped signs and brackets each as one token. */
function* rawTokens(format: string): Generator<{ text: string }> {
  const pattern = /"[^"]*"|\\.|_.|\*.|\[[^\]]*\]|[\s\S]/g;
  for (const [text] of format.slice(0, 255).matchAll(pattern)) yield { text };
}

function tokensOf(section: string): Token[] {
  const tokens: Token[] = [];
  for (const { text } of rawTokens(section)) {
    if (text.length > 1 && text.startsWith('"')) {
      tokens.push({ text: text.slice(1, -1), literal: true });
    } else if (text.startsWith('\\')) tokens.push({ text: text.slice(1), literal: true });
    else if (text.startsWith('_')) tokens.push({ text: ' ', literal: true });
    else if (text.startsWith('*')) continue;
    else if (text.startsWith('[')) {
      const currency = /^\[\$([^-\]]*)/.exec(text)?.[1] ?? '';
      if (currency !== '') tokens.push({ text: currency, literal: true });
      // Elapsed time is a time; colors, conditions and languages show nothing.
      else if (/^\[(?:h+|m+|s+)\]$/i.test(text)) tokens.push({ text: 'h', literal: false });
    } else tokens.push({ text, literal: false });
  }
  return tokens;
}

function isDateCode(code: string): boolean {
  return /[ymdhs]/i.test(code.replace(/general/gi, '').replace(/e[+-]/gi, ''));
}

/** The words before and after the digits. Signs among the digits that are no placeholder are kept too. */
function literalsAround(tokens: readonly Token[], place: RegExp): [string, string] {
  const isPlace = (token: Token) =>
    !token.literal && (place.test(token.text) || /[0#?.,/]/.test(token.text));
  const isWord = (token: Token) => token.literal || /[%$€£+\-() ]/.test(token.text);
  const general = tokens.findIndex((token) => !token.literal && /^g$/i.test(token.text));
  const first = general >= 0 ? general : tokens.findIndex(isPlace);
  const last = general >= 0 ? general + 6 : tokens.findLastIndex(isPlace);
  const words = (part: readonly Token[]) =>
    part
      .filter(isWord)
      .map(({ text }) => text)
      .join('');
  return [words(tokens.slice(0, Math.max(first, 0))), words(tokens.slice(last + 1))];
}

function wrapped(around: [string, string] | null, digits: string): string {
  if (around === null) return digits;
  const [, sign = '', rest = ''] = /^(-?)(.*)$/.exec(digits) ?? [];
  return `${sign}${`${around[0]}${rest}${around[1]}`.trim()}`;
}

function decimal(value: number, code: string): string {
  const [whole = '', after = ''] = code.split('.');
  // Commas right behind the last digit of the whole, or of all, each leave out three places.
  const thousands = /[0#?](,+)(?![0#?,])/.exec(code)?.[1]?.length ?? 0;
  const scaled = rational(exactDecimal(value))
    .mul(code.includes('%') ? 100 : 1)
    .div(1000 ** Math.min(thousands, 4));
  const most = Math.min((after.match(/[0#?]/g) ?? []).length, 15);
  const least = Math.min((after.match(/0/g) ?? []).length, 15);
  let text = formatDecimal(scaled, most);
  for (let left = most - least; left > 0 && text.endsWith('0'); left -= 1) text = text.slice(0, -1);
  text = text.replace(/\.$/, '');
  const sign = text.startsWith('-') ? '-' : '';
  let [digits = '', tail] = text.slice(sign.length).split('.');
  const zeros = (whole.match(/0/g) ?? []).length;
  digits = digits.padStart(Math.min(zeros, 15), '0');
  // `#.000` shows no zero before the point.
  if (zeros === 0 && digits === '0' && tail !== undefined) digits = '';
  if (/[0#?],[0#?]/.test(whole)) digits = digits.replace(/\B(?=(\d{3})+$)/g, ',');
  return sign + (tail === undefined ? digits : `${digits}.${tail}`);
}

/** The nearest fraction that the format has room for: `# ?/?`, `# ??/??`, `# ?/64`, `#"-"?/4`. */
function fraction(value: number, tokens: readonly Token[]): string {
  const isPlace = ({ literal, text }: Token) => !literal && /^[0#?]$/.test(text);
  const slash = tokens.findIndex(({ literal, text }) => !literal && text === '/');
  const last = tokens.slice(0, slash).findLastIndex(isPlace);
  const first = tokens.slice(0, last + 1).findLastIndex((token) => !isPlace(token)) + 1;
  const wholeEnd = tokens.slice(0, first).findLastIndex(isPlace);
  const hasWhole = wholeEnd >= 0;
  const between = tokens.slice(wholeEnd + 1, first).map(({ text }) => text);
  const joint = hasWhole ? between.join('').trim() || ' ' : '';
  const above = tokens.slice(first, last + 1);
  const rear = tokens.slice(slash + 1).map(({ literal, text }) => (literal ? '\u0001' : text));
  const below = /^\s*([0#?\d]+)/.exec(rear.join(''))?.[1] ?? '';
  const sign = value < 0 ? '-' : '';
  const size = Math.abs(value);
  const whole = hasWhole ? Math.floor(size) : 0;
  const rest = size - whole;
  const fixed = /^[1-9]\d*$/.test(below) ? Number(below) : null;
  const [top, bottom] =
    fixed === null
      ? nearestFraction(rest, 10 ** Math.min(Math.max(below.length, above.length), 3) - 1)
      : [Math.round(rest * fixed), fixed];
  if (top === 0) return whole === 0 ? '0' : `${sign}${whole}`;
  if (hasWhole && top === bottom) return `${sign}${whole + 1}`;
  return whole === 0 ? `${sign}${top}/${bottom}` : `${sign}${whole}${joint}${top}/${bottom}`;
}

/** By trying every denominator: there are 999 at most. */
function nearestFraction(value: number, most: number): readonly [number, number] {
  let best: readonly [number, number] = [Math.round(value), 1];
  let error = Math.abs(value - best[0]);
  for (let bottom = 2; bottom <= most; bottom += 1) {
    const top = Math.round(value * bottom);
    const off = Math.abs(value - top / bottom);
    if (off < error - 1e-12) {
      best = [top, bottom];
      error = off;
    }
  }
  return best;
}
