/**
 * A size with the point of one of its numbers a place or two farther on, or a slash in place of a point: what
 * a slip of the pen may have made of it. Whether any is meant is for who knows what the size is for.
 */
export function pointSlips(text: string): readonly string[] {
  const found = new Set<string>();
  // The last number of a size is its tolerance or its upper limit, and the likelier slip.
  for (const match of [...text.matchAll(/\d*\.?\d+/g)].reverse()) {
    const [number] = match;
    const before = text.slice(0, match.index);
    const behind = text.slice(match.index + number.length);
    if (/[/⁄]$/.test(before) || /^[/⁄]/.test(behind)) continue;
    for (const places of [-1, 1, -2, 2]) {
      const moved = withPoint(number, places);
      if (moved !== null) found.add(before + moved + behind);
    }
    if (/^\d+\.\d+$/.test(number)) found.add(before + number.replace('.', '/') + behind);
  }
  return [...found];
}

/** The number with its point moved to the right by so many places, or to the left; null where no digit is left before or behind. */
function withPoint(number: string, places: number): string | null {
  const [whole = '', part = ''] = number.split('.');
  const digits = whole + part;
  const at = whole.length + places;
  if (at > digits.length + 1 || at < -2) return null;
  const padded =
    at > digits.length ? digits.padEnd(at, '0') : digits.padStart(digits.length - at, '0');
  const point = Math.max(at, 0);
  const left = padded.slice(0, point).replace(/^0+(?=\d)/, '');
  const right = padded.slice(point);
  return right === '' ? left : `${left || '0'}.${right}`;
}

/** Fractions of the ruled denominators that one digit of a fraction's own, changed, left out or put in, gives. */
export function ruledSlips(fraction: string): readonly string[] {
  const [numerator = '', denominator = ''] = fraction.split(/[/⁄]/);
  return ['2', '4', '8', '16', '32', '64']
    .filter((ruled) => Number(ruled) > Number(numerator) && isOneDigitOff(denominator, ruled))
    .map((ruled) => `${numerator}/${ruled}`);
}

function isOneDigitOff(written: string, meant: string): boolean {
  if (written.length === meant.length) {
    return [...written].filter((digit, index) => digit !== meant[index]).length === 1;
  }
  const isCut = (long: string, short: string): boolean =>
    long.length === short.length + 1 &&
    [...long].some((_, index) => long.slice(0, index) + long.slice(index + 1) === short);
  return isCut(written, meant) || isCut(meant, written);
}

/** A size without a letter that stands between two of its digits: a key that slipped. Null where none does. */
export function withoutStrayLetter(text: string): string | null {
  const cut = text.replace(/(?<=\d)[a-z](?=\d)/i, '');
  return cut === text ? null : cut;
}

/** A size with another of its fractions, each a slip of the pen away; the last first, which is the tolerance. */
export function fractionSlips(text: string): readonly string[] {
  return [...text.matchAll(/\d+[/⁄]\d+/g)]
    .reverse()
    .flatMap(({ 0: fraction, index }) =>
      ruledSlips(fraction).map(
        (each) => text.slice(0, index) + each + text.slice(index + fraction.length),
      ),
    );
}
