import { gaugeBook } from '../gauges/index.ts';
import { formatDecimal, readStatement } from '../quantity/index.ts';

/** What an edition says of its reading distance: in millimeters, or what is wrong with it. */
export type ReadingDistance =
  | { readonly mm: number }
  | { readonly message: string; readonly fix: string };

/** Nearer than a watchmaker works, or farther than an arm and a bench, is a slip of the pen. */
const nearestMm = 250;
const farthestMm = 1500;

/** Reads `700 mm` or `28 in`, ends inclusive from 250 to 1500 mm; a number alone has no unit. */
export function readingDistance(written: string): ReadingDistance {
  const fix = 'write one length with its unit, such as `500 mm` or `20 in`';
  const reading = readStatement(written, { gauges: gaugeBook(), expect: ['length'] });
  if (!reading.ok) {
    const { message } = reading.problem;
    return { message: `the reading distance can't be read: ${message}`, fix };
  }
  const { dimension, form, nominal } = reading.statement;
  if (dimension !== 'length' || form !== 'exact' || nominal === null || nominal.gauge !== null) {
    return { message: `\`${written}\` is no plain distance`, fix };
  }
  const mm = Number(formatDecimal(nominal.base, 3));
  if (mm >= nearestMm && mm <= farthestMm) return { mm };
  return {
    message: `a card is not read at ${written}: the press sizes type for ${nearestMm} to ${farthestMm} mm`,
    fix: 'correct the distance from the eye to the card; 500 mm is usual at a bench',
  };
}
