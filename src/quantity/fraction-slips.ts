import { flips, swaps } from './digit-slips.ts';
import type { Candidate } from './slips.ts';

/** Every fraction one slip away: turned over, a digit of it, or of the whole number before it, another. */
export function* ratioCandidates(text: string, ratio: RegExpExecArray): Generator<Candidate> {
  const [whole, numerator = '', slash = '/', denominator = ''] = ratio;
  const put = (n: string, d: string): string =>
    text.slice(0, ratio.index) + n + slash + d + text.slice(ratio.index + whole.length);
  const isProper = Number(numerator) < Number(denominator);
  // Papers write `1-1/2`, not `3/2`: a proper fraction is no slip of an improper one.
  const isNumerator = (n: string): boolean =>
    isLowest(n, denominator) && (!isProper || Number(n) < Number(denominator));
  if (isLowest(denominator, numerator)) {
    yield { kind: 'reversed-fraction', text: put(denominator, numerator) };
  }
  for (const { text: d } of swaps(denominator, (t) => t)) {
    if (DENOMINATORS.includes(d) && isLowest(numerator, d))
      yield { kind: 'swapped-digits', text: put(numerator, d) };
  }
  for (const { text: n } of swaps(numerator, (t) => t)) {
    if (isNumerator(n)) yield { kind: 'swapped-digits', text: put(n, denominator) };
  }
  for (const { text: n } of flips(numerator, (t) => t)) {
    if (isNumerator(n)) yield { kind: 'upside-down', text: put(n, denominator) };
  }
  for (let i = 0; i < numerator.length; i++) {
    for (let digit = 0; digit < 10; digit++) {
      const n = `${numerator.slice(0, i)}${digit}${numerator.slice(i + 1)}`;
      if (isNumerator(n)) yield { kind: 'wrong-numerator', text: put(n, denominator) };
    }
  }
  // A digit dropped from or put before a numerator: 3/64 for 13/64.
  for (let digit = 1; digit < 10; digit++) {
    for (const n of [`${digit}${numerator}`, `${numerator}${digit}`])
      if (!isProper || Number(n) < Number(denominator))
        yield { kind: 'wrong-numerator', text: put(n, denominator) };
  }
  if (numerator.length > 1) {
    yield { kind: 'wrong-numerator', text: put(numerator.slice(1), denominator) };
    yield { kind: 'wrong-numerator', text: put(numerator.slice(0, -1), denominator) };
  }
  for (const d of DENOMINATORS) {
    if (d !== denominator) yield { kind: 'wrong-denominator', text: put(numerator, d) };
  }
  const before = /(\d+)([- ])$/.exec(text.slice(0, ratio.index));
  const lead = before ? text.slice(0, before.index) : text.slice(0, ratio.index);
  if (!before && /[\p{L}\d]$/u.test(lead)) return;
  for (let n = 0; n < 10; n++) {
    if (String(n) === before?.[1] || (!before && n === 0)) continue;
    const put = n === 0 ? '' : `${n}${before?.[2] ?? '-'}`;
    const rest = text.slice(ratio.index);
    yield {
      kind: n === 0 ? 'extra-digit' : before ? 'wrong-digit' : 'missing-whole',
      // `1/2 turn` with its whole number again is `1-1/2 turns`.
      text: lead + put + (before ? rest : rest.replace(/(?<=^\d+[/⁄]\d+ )(turn|flat)\b/, '$1s')),
    };
  }
}

/** What a rule, a drill or a screw's turn is divided by. */
const DENOMINATORS: readonly string[] = ['2', '3', '4', '6', '8', '16', '32', '64'];

/** Whether a fraction is in its lowest terms, as papers write it: 3/8 of an inch, 2/3 of a turn. */
function isLowest(numerator: string, denominator: string): boolean {
  if (!/^[1-9]\d{0,3}$/.test(numerator)) return false;
  let [one, two] = [Number(numerator), Number(denominator)];
  while (two > 0) [one, two] = [two, one % two];
  return one === 1;
}
