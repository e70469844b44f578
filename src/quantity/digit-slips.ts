import type { Candidate } from './slips.ts';

/** One digit left out. */
export function* deletions(figure: string, put: (changed: string) => string): Generator<Candidate> {
  if (significant(figure) < 2) return;
  for (let i = 0; i < figure.length; i++) {
    if (!isDigit(figure, i)) continue;
    yield { kind: 'extra-digit', text: put(figure.slice(0, i) + figure.slice(i + 1)) };
  }
}

/** How many digits a figure has after its leading zeros. */
function significant(figure: string): number {
  return figure.replace(/[^\d]/g, '').replace(/^0+/, '').length;
}

function isDigit(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code >= 48 && code <= 57;
}

/** Two digits each in the place of the other: neighbors were swapped, others changed places. */
export function* swaps(figure: string, put: (changed: string) => string): Generator<Candidate> {
  const digits = [...figure.matchAll(/\d/g)].map(({ index }) => index);
  for (const [i, one] of digits.entries()) {
    for (const [j, two] of digits.entries()) {
      if (j <= i || figure.charAt(one) === figure.charAt(two)) continue;
      const changed =
        figure.slice(0, one) +
        figure.charAt(two) +
        figure.slice(one + 1, two) +
        figure.charAt(one) +
        figure.slice(two + 1);
      yield { kind: j === i + 1 ? 'swapped-digits' : 'exchanged-digits', text: put(changed) };
    }
  }
}

/** A 6 for a 9, or a 9 for a 6: a piece of type, a stamp or a plate that was read upside down. */
export function* flips(figure: string, put: (changed: string) => string): Generator<Candidate> {
  for (let i = 0; i < figure.length; i++) {
    const other = figure.charAt(i) === '6' ? '9' : figure.charAt(i) === '9' ? '6' : null;
    if (other === null) continue;
    yield { kind: 'upside-down', text: put(figure.slice(0, i) + other + figure.slice(i + 1)) };
  }
}

const TURNED: Readonly<Record<string, string>> = { 0: '0', 1: '1', 6: '9', 8: '8', 9: '6' };

/** A stamped number as it reads from the other side: 89 is 68; null where it reads as nothing or itself. */
export function upsideDown(figure: string): string | null {
  const turned = [...figure].reverse().map((digit) => TURNED[digit] ?? null);
  if (turned.includes(null) || turned[0] === '0') return null;
  const text = turned.join('');
  return text === figure ? null : text;
}

/** One digit another; of a single figure nothing would be left, so that explains nothing. */
export function* replacements(
  figure: string,
  put: (changed: string) => string,
): Generator<Candidate> {
  if (significant(figure) < 2) return;
  for (let i = 0; i < figure.length; i++) {
    if (!isDigit(figure, i)) continue;
    for (let digit = 0; digit < 10; digit++) {
      if (String(digit) === figure.charAt(i)) continue;
      if (digit === 0 && i === 0 && isDigit(figure, 1)) continue;
      yield {
        kind: 'wrong-digit',
        text: put(`${figure.slice(0, i)}${digit}${figure.slice(i + 1)}`),
      };
    }
  }
}

export function* insertions(
  figure: string,
  put: (changed: string) => string,
): Generator<Candidate> {
  for (let i = 0; i <= figure.length; i++) {
    for (let digit = 0; digit < 10; digit++) {
      // A zero before the whole part, or one put after the last decimal, changes nothing.
      if (digit === 0 && (i === 0 || (i === figure.length && figure.includes('.')))) continue;
      yield { kind: 'missing-digit', text: put(`${figure.slice(0, i)}${digit}${figure.slice(i)}`) };
    }
  }
}

/** The point one to three places to either side; zeros are filled in as a typist would. */
export function* slips(
  figure: string,
  put: (changed: string) => string,
  shifts: readonly number[] = SHIFTS,
): Generator<Candidate> {
  const mark = /[.,·]/.exec(figure)?.[0] ?? '.';
  const [whole = '', decimals = ''] = figure.split(/[.,·]/);
  for (const shift of shifts) {
    const point = whole.length + shift;
    const all = whole + decimals;
    const padded = point < 0 ? '0'.repeat(-point) + all : all.padEnd(Math.max(point, 0), '0');
    const at = Math.max(point, 0);
    const left = padded.slice(0, at).replace(/^0+(?=\d)/, '');
    // A whole number slips to a whole number where it can: 4750 to 475, not to 475.0.
    const right = decimals === '' ? padded.slice(at).replace(/0+$/, '') : padded.slice(at);
    const bare = figure.startsWith(mark) && /^0*$/.test(left);
    const lead = bare ? '' : left === '' ? '0' : left;
    // Papers state so many places, and a typist keeps to them: 0.5200 was 0.0520.
    const kept = right.replace(/0+$/, (zeros) => zeros.slice(right.length - decimals.length));
    for (const places of right.length > decimals.length && decimals !== ''
      ? [kept, right]
      : [right]) {
      yield {
        kind: 'slipped-point',
        text: put(places === '' ? left || '0' : `${lead}${mark}${places}`),
      };
    }
  }
}

/** Places that a point slips by, the likeliest first. */
export const SHIFTS: readonly number[] = [1, -1, 2, -2, 3, -3];
