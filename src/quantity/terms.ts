import { noSuchDrill } from './gauge-problems.ts';
import { fractionDrill, namedGaugeAt, sizedGauge, systemAt } from './gauge-terms.ts';
import { isFault, type Numeral, numeralAt, settleComma } from './numeral.ts';
import { numeralFault, unsettledComma, volumeSystem } from './problems.ts';
import { emptyTerm, type NotationContext, skipSpaces, type Term, type TermResult } from './term.ts';
import { unitAt, unitById } from './units.ts';
import { wholeUnitAt } from './whole-unit.ts';

/**
 * Reads a number with its unit, or a gauge's name, at an offset of a normalized text. Null where
 * neither starts there.
 */
export function termAt(lower: string, at: number, context: NotationContext): TermResult {
  return namedGaugeAt(lower, at, context) ?? numberAt(lower, at, context);
}

function numberAt(lower: string, at: number, context: NotationContext): TermResult {
  const read = numeralAt(lower, at);
  if (!read) return null;
  if (isFault(read)) return { problem: numeralFault(read, lower) };
  const beforeUnit = skipSpaces(
    lower,
    lower.charAt(read.end) === '-' ? hyphenUnit(lower, read.end) : read.end,
  );
  const found = wholeUnitAt(lower, beforeUnit);
  if (!found) return gaugeOrPlain(lower, at, read, context);
  const { unit, reference, end } = found;
  const numeral = settleComma(read, unit);
  if (!numeral) return { problem: unsettledComma(read, unit) };
  const term: Term = { ...emptyTerm(at, end), numeral, unit, reference };
  return unit.dimension === 'length' ? (sizedGauge(lower, term, context) ?? term) : term;
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
  const ounces = volumeSystem(lower, numeral.end, at);
  if (ounces) return { problem: ounces };
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
