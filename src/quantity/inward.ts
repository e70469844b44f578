import type { Rational } from './model.ts';
import { greater, lesser, roundTo } from './rational.ts';

/** A size with its limits, exactly, in one unit; null where there is none. */
export interface ExactFigures {
  readonly nominal: Rational | null;
  readonly low: Rational | null;
  readonly high: Rational | null;
}

/** The same as it is printed, all to one number of decimal places. */
export interface PrintedFigures extends ExactFigures {
  readonly places: number;
}

/** More places than any limits of the trade need to be told apart. */
const MOST_MORE = 9;

/**
 * The figures that a size and its limits are printed as, in whatever unit: the one place that says so.
 * Limits round inward, the lower up and the upper down, also one that stands alone, so that nothing is
 * let through that the source refuses (ISO 370:1975, BS 2856). The nominal is rounded to the places of
 * its limits and never stands outside of them as they are printed; one that its source has outside is
 * left out, and the limits tell. As many more places are taken as it needs for limits that
 * differ to go on differing, and for none to come to nothing.
 */
export function printedFigures(exact: ExactFigures, places: number): PrintedFigures {
  for (let more = 0; ; more++) {
    const printed = roundedInward(exact, places + more);
    if (more === MOST_MORE || isTrue(exact, printed)) return printed;
  }
}

function roundedInward({ nominal, low, high }: ExactFigures, places: number): PrintedFigures {
  const least = low && roundTo(low, places, 'up');
  const most = high && roundTo(high, places, 'down');
  const isOutside =
    nominal !== null &&
    ((low !== null && nominal.compare(low) < 0) || (high !== null && nominal.compare(high) > 0));
  if (nominal === null || isOutside) return { nominal: null, low: least, high: most, places };
  const near = roundTo(nominal, places);
  const raised = least ? greater(near, least) : near;
  return { nominal: most ? lesser(raised, most) : raised, low: least, high: most, places };
}

function isTrue(exact: ExactFigures, { low, high }: PrintedFigures): boolean {
  if (low?.n === 0n && exact.low?.n !== 0n) return false;
  if (high?.n === 0n && exact.high?.n !== 0n) return false;
  if (!low || !high || !exact.low || !exact.high) return true;
  return exact.low.compare(exact.high) < 0 ? low.compare(high) < 0 : low.compare(high) <= 0;
}
