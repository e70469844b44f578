import Fraction from 'fraction.js';
import { gaugeLabel } from '../quantity/index.ts';
import type { Gauge } from '../quantity/model.ts';
import { NAME_LENGTH } from './systems.ts';

const SIZE =
  /^(?:(?<whole>\d{1,3})(?:-|\s+))?(?<above>\d{1,3})\/(?<below>\d{1,3})\s*(?<inch>in\.?|inch|inches|"|″)$|^(?<number>\d{0,6}(?:[.,]\d{1,9})?)\s*(?<unit>in\.?|inch|inches|"|″|thou|mm\.?)$/i;

const INCH_MM = new Fraction(254n, 10n);

/**
 * A wire, leaf or pin gauge from its own size: `0.026 in`, `.026"`, `26 thou`, `0,65 mm`,
 * `1/32 in`. The places are the stated ones, null for a fraction. Any size above nothing is one;
 * null where the name is no size, is zero or lacks its unit.
 */
export function sizedGauge(system: 'wire' | 'leaf' | 'pin', written: string): Gauge | null {
  const text = written.trim();
  const parts = text.length > NAME_LENGTH ? undefined : SIZE.exec(text)?.groups;
  if (!parts) return null;
  const size = parts.below === undefined ? fromDecimal(parts) : fromFraction(parts);
  if (!size || size.mm.n === 0n) return null;
  return {
    system,
    name: size.name,
    label: gaugeLabel(system, size.name),
    mm: size.mm,
    places: size.places,
    unit: size.unit,
    source: 'named by its own size',
  };
}

interface Sized {
  readonly name: string;
  readonly mm: Fraction;
  readonly places: number | null;
  readonly unit: 'in' | 'mm';
}

type Parts = Readonly<Record<string, string | undefined>>;

function fromFraction(parts: Parts): Sized | null {
  const below = BigInt(parts.below ?? '0');
  if (below === 0n) return null;
  const above = BigInt(parts.whole ?? '0') * below + BigInt(parts.above ?? '0');
  const whole = parts.whole === undefined ? '' : `${parts.whole}-`;
  const name = `${whole}${parts.above}/${parts.below} in`;
  return { name, mm: new Fraction(above, below).mul(INCH_MM), places: null, unit: 'in' };
}

function fromDecimal(parts: Parts): Sized | null {
  const [ahead = '', after = ''] = (parts.number ?? '').split(/[.,]/);
  if (ahead === '' && after === '') return null;
  const stated = (parts.unit ?? '').toLowerCase();
  const thou = stated === 'thou';
  const places = after.length + (thou ? 3 : 0);
  const digits = BigInt(ahead + after);
  const value = new Fraction(digits, 10n ** BigInt(places));
  if (stated.startsWith('mm')) {
    return { name: `${decimal(digits, places)} mm`, mm: value, places, unit: 'mm' };
  }
  return { name: `${decimal(digits, places)} in`, mm: value.mul(INCH_MM), places, unit: 'in' };
}

function decimal(digits: bigint, places: number): string {
  const text = digits.toString().padStart(places + 1, '0');
  return places === 0 ? text : `${text.slice(0, -places)}.${text.slice(-places)}`;
}
