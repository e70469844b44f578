import { compareAmounts, principal, writeIn } from '../quantity/index.ts';
import type { Amount, Rational, Statement } from '../quantity/model.ts';
import type { Restated } from './statement-pairs.ts';

/** A figure that rounds to another although two of its digits are swapped. */
export interface HiddenSwap {
  readonly finer: Restated;
  readonly coarser: Restated;
  /** The figure with the digits in their places, as the finer one is written. */
  readonly suggestion: string;
}

/**
 * Figures of one setting in two units, the finer of which rounds to the coarser, is not the coarser
 * converted, and would be with two neighboring digits swapped: `0.423 mm` beside `0.017 in`, which is
 * 0.432 mm. By chance that is so for hardly any pair.
 */
export function hiddenSwaps(sizes: readonly Restated[]): readonly HiddenSwap[] {
  const found: HiddenSwap[] = [];
  for (const finer of sizes) {
    for (const coarser of sizes) {
      const suggestion = finer === coarser ? null : swapOf(finer.statement, coarser.statement);
      // Where another figure is what this one was converted from, it stands as it should.
      const isRight = (other: Restated): boolean =>
        other !== finer && isConverted(finer.statement, other.statement);
      if (suggestion === null || sizes.some(isRight)) continue;
      if (!found.some((each) => each.finer === finer)) found.push({ finer, coarser, suggestion });
    }
  }
  return found;
}

function swapOf(finer: Statement, coarser: Statement): string | null {
  const [one, two] = [figureOf(finer), figureOf(coarser)];
  if (!one || !two || one.unit === two.unit || one.places === null || two.places === null)
    return null;
  if (one.gauge || two.gauge || finer.form !== coarser.form) return null;
  const verdict = compareAmounts(two, one);
  if (verdict !== 'agrees' && verdict !== 'same') return null;
  if (width(one).mul(3).compare(width(two)) > 0) return null;
  const figure = /\d*[.,]?\d+/.exec(finer.text)?.[0];
  const right = /^\d*[.,]?\d+/.exec(
    writeIn(two.base, coarser.dimension, one.unit, one.places),
  )?.[0];
  if (!figure || !right || plain(figure) === plain(right) || !isSwap(plain(figure), plain(right)))
    return null;
  return finer.text.replace(figure, figure.startsWith('.') ? right.replace(/^0/, '') : right);
}

function isConverted(finer: Statement, other: Statement): boolean {
  const [one, two] = [figureOf(finer), figureOf(other)];
  if (!one || !two || one.unit === two.unit || one.places === null) return false;
  const figure = /\d*[.,]?\d+/.exec(finer.text)?.[0] ?? '';
  const right = /^\d*[.,]?\d+/.exec(writeIn(two.base, other.dimension, one.unit, one.places))?.[0];
  return right !== undefined && plain(figure) === plain(right);
}

function figureOf(statement: Statement): Amount | null {
  const { form, low, high } = statement;
  return principal(statement) ?? (form === 'range' ? null : (low?.amount ?? high?.amount ?? null));
}

function width({ could }: Amount): Rational {
  return could.high.sub(could.low);
}

function plain(figure: string): string {
  return figure.replace(',', '.').replace(/^0*\./, '.');
}

/** Whether two figures differ in two neighboring digits that stand the other way about. */
function isSwap(one: string, two: string): boolean {
  const at = [...one].findIndex((sign, i) => sign !== two.charAt(i));
  if (one.length !== two.length || at < 0 || at + 1 >= one.length) return false;
  const swapped = one.slice(0, at) + one.charAt(at + 1) + one.charAt(at) + one.slice(at + 2);
  return swapped === two;
}
