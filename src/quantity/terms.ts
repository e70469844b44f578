import { noSuchDrill } from './gauge-problems.ts';
import {
  fractionDrill,
  namedGaugeAt,
  sizedGauge,
  systemAt,
  withStatedSize,
} from './gauge-terms.ts';
import { isFault, type Numeral, numeralAt, settleComma } from './numeral.ts';
import { numeralFault, unsettledComma, volumeSystem } from './problems.ts';
import { rational } from './rational.ts';
import {
  emptyTerm,
  type NotationContext,
  skipSpaces,
  stick,
  type Term,
  type TermResult,
} from './term.ts';
import { unitAt, unitById } from './units.ts';
import { wholeUnitAt } from './whole-unit.ts';

/**
 * Reads a number with its unit, or a gauge's name, at an offset of a normalized text. Null where
 * neither starts there.
 */
export function termAt(lower: string, at: number, context: NotationContext): TermResult {
  const named = namedGaugeAt(lower, at, context);
  if (!named) return numberAt(lower, at, context);
  return 'problem' in named ? named : withStatedSize(lower, named);
}

function numberAt(lower: string, at: number, context: NotationContext): TermResult {
  const read = numeralAt(lower, at) ?? articleAt(lower, at);
  if (!read) return null;
  if (isFault(read)) return { problem: numeralFault(read, lower) };
  const beforeUnit = wordBeforeUnit(
    lower,
    skipSpaces(lower, lower.charAt(read.end) === '-' ? hyphenUnit(lower, read.end) : read.end),
  );
  const found = wholeUnitAt(lower, beforeUnit);
  // `seconds per pint` begins with a unit and is none all the same.
  const pints = found && found.unit.dimension !== 'time' ? null : volumeSystem(lower, read.end, at);
  if (pints) return { problem: pints };
  if (!found) return gaugeOrPlain(lower, at, read, context);
  const more = found.unit.counted ? andAPart(lower, read, found.end) : null;
  if (more) return { ...emptyTerm(at, more.end), numeral: more, unit: found.unit };
  const { unit, reference, end } = found;
  const numeral = settleComma(read, unit);
  if (!numeral) return { problem: unsettledComma(read, unit) };
  const term: Term = { ...emptyTerm(at, end), numeral, unit, reference };
  return unit.dimension === 'length' ? (sizedGauge(lower, term, context) ?? term) : term;
}

const BEFORE_TURNS = /(?:full|complete|whole|entire) /y;
const BEFORE_DEGREES = /(?:crankshaft|crank|camshaft|cam|distributor|distr?\.?) /y;

/** `2 full turns`, `8 crank degrees`: the unit may have a word before it that says of what it is. */
function wordBeforeUnit(lower: string, at: number): number {
  if (!/[cdefw]/.test(lower.charAt(at))) return at;
  for (const [pattern, dimension] of [
    [BEFORE_TURNS, 'turns'],
    [BEFORE_DEGREES, 'angle'],
  ] as const) {
    if (stick(pattern, lower, at) && unitAt(lower, pattern.lastIndex)?.unit.dimension === dimension)
      return pattern.lastIndex;
  }
  return at;
}

/** `1 turn and a half`: a part of the same unit behind it; null where none follows. */
function andAPart(lower: string, numeral: Numeral, end: number): Numeral | null {
  if (numeral.style !== 'integer' || !lower.startsWith(' and ', end)) return null;
  const part = numeralAt(lower, end + 5);
  if (
    !part ||
    isFault(part) ||
    part.style !== 'fraction' ||
    unitAt(lower, skipSpaces(lower, part.end))
  )
    return null;
  return {
    ...part,
    start: numeral.start,
    style: 'mixed',
    value: numeral.value.add(part.value),
  };
}

const ONE_OF = /an? (?=(?:turn|flat|notch|groove)(?!\p{L}))/uy;

/** The `a` of `a turn and a half`; null where another word stands there. */
function articleAt(lower: string, at: number): Numeral | null {
  if (!stick(ONE_OF, lower, at)) return null;
  const value = rational(1);
  return { start: at, end: at + 1, style: 'integer', value, places: 0, ratio: null, comma: null };
}

/** In `0.026-in wire` a hyphen ties number and unit. */
function hyphenUnit(lower: string, hyphen: number): number {
  return unitAt(lower, hyphen + 1) ? hyphen + 1 : hyphen;
}

/** A number with no unit after it: `9/64 drill`, the first of `13/64 ± 1/64 in`, or a bare one. */
function gaugeOrPlain(
  lower: string,
  at: number,
  numeral: Numeral,
  context: NotationContext,
): TermResult {
  const plain: Term = { ...emptyTerm(at, numeral.end), numeral };
  if (!numeral.ratio) return plain;
  const drill = systemAt(
    lower,
    skipSpaces(lower, lower.charAt(numeral.end) === '-' ? numeral.end + 1 : numeral.end),
  );
  if (drill?.system !== 'drill') return plain;
  const gauge = fractionDrill(numeral, context.gauges);
  const unit = unitById('in');
  if (gauge) return { ...plain, gauge, unit, end: drill.end };
  return {
    problem: noSuchDrill(
      lower.slice(at, numeral.end),
      numeral,
      unit,
      at,
      drill.end,
      context.gauges,
    ),
  };
}
