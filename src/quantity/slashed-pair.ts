import type { SizeProblem } from './model.ts';
import type { Numeral } from './numeral.ts';
import { problem } from './problems.ts';
import { exactPlaces, exactText, rational } from './rational.ts';
import type { Term } from './term.ts';
import type { UnitOfMeasure } from './units.ts';
import { unitWord } from './write.ts';

/** Units that papers tell in fractions: there a slash between two whole numbers is a fraction. */
const FRACTIONAL: ReadonlySet<string> = new Set(['in', 'ft', 'turn', 'oz', 'lb', 'ozf', 'lbf']);

/**
 * What two whole numbers with a slash between are, in one place (common practice, no source):
 *
 * - in inches, turns and ounces a fraction;
 * - elsewhere a fraction where it is one part of an even division (`1/2°`, `1/4 psi`);
 * - a pair of limits where the numbers are no fraction that anybody writes (`550/600 rpm`, `18/22 thou`);
 * - and in doubt where they could be either (`3/4 psi`): told, with both.
 *
 * Null for a fraction and for what has no slash.
 */
export function slashedPair(
  lower: string,
  term: Term,
): { first: Term; second: Term } | { problem: SizeProblem } | null {
  const { numeral, unit, gauge } = term;
  if (!numeral?.ratio || numeral.style !== 'fraction' || !unit || gauge) return null;
  const slash = lower.indexOf('/', term.start);
  // Only figures have a slash to part them: `half a` has none, and `½` is one sign.
  if (
    slash < 0 ||
    slash >= numeral.end ||
    !/^\d+\/\d+$/.test(lower.slice(term.start, numeral.end))
  ) {
    return null;
  }
  const [low, high] = numeral.ratio;
  // `600/550 rpm` is no fraction either: limits, the wrong way round.
  const isReversed = low > high && high >= 10n && !FRACTIONAL.has(unit.id);
  if ((low >= high && !isReversed) || low === 0n || isFraction(low, high, unit)) return null;
  // `13/64 mm` is rather a fraction of an inch with the wrong unit: told as no fraction of that unit.
  if (unit.dimension === 'length' && [16n, 32n, 64n].includes(high)) return null;
  if (isDoubtful(low, high, unit)) return { problem: doubtful(lower, term, unit) };
  const end = (start: number, stop: number): Numeral => ({
    start,
    end: stop,
    style: 'integer',
    value: rational(lower.slice(start, stop)),
    places: 0,
    ratio: null,
    comma: null,
  });
  return {
    first: { ...term, end: slash, numeral: end(term.start, slash) },
    second: { ...term, start: slash + 1, numeral: end(slash + 1, numeral.end) },
  };
}

const HALVES = [2n, 4n, 8n, 16n];

function isFraction(low: bigint, high: bigint, unit: UnitOfMeasure): boolean {
  if (FRACTIONAL.has(unit.id)) return true;
  if (unit.id === 'flat' || unit.id === 'notch') return low === 1n && (high === 2n || high === 4n);
  if (unit.metric) return low === 1n && [...HALVES, 5n, 10n, 20n, 50n, 100n].includes(high);
  return low === 1n && [...HALVES, 3n].includes(high);
}

/** A proper fraction of small numbers in lowest terms that could as well be a pair. */
function isDoubtful(low: bigint, high: bigint, unit: UnitOfMeasure): boolean {
  if (unit.dimension === 'speed') return false;
  return high <= 10n && common(low, high) === 1n;
}

function common(a: bigint, b: bigint): bigint {
  return b === 0n ? a : common(b, a % b);
}

function doubtful(lower: string, { start, end, numeral }: Term, unit: UnitOfMeasure): SizeProblem {
  const [low, high] = numeral?.ratio ?? [0n, 1n];
  const value = rational(low, high);
  const joint = /^[°%]/.test(unitWord(unit.id, value)) ? '' : ' ';
  const pair = `${low}–${high}${joint}${unitWord(unit.id, rational(high))}`;
  const one =
    exactPlaces(value) === null ? null : `${exactText(value)}${joint}${unitWord(unit.id, value)}`;
  const candidates = one === null ? [pair] : [pair, one];
  return problem(
    'unreadable',
    `${lower.slice(start, end)} could be limits, ${pair}, or ${one ?? 'a fraction'}`,
    `write ${candidates.join(' or ')}, as the source means it`,
    start,
    end,
    candidates,
  );
}
