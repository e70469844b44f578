import type { PressureReference, SizeProblem } from './model.ts';
import { isFault, type Numeral, numeralAt, settleComma } from './numeral.ts';
import { numeralFault, problem } from './problems.ts';
import { skipSpaces, type Term } from './term.ts';
import type { UnitOfMeasure } from './units.ts';
import { wholeUnitAt } from './whole-unit.ts';

/** A tolerance's number, with its unit where it has one of its own. */
export interface Tolerance {
  readonly numeral: Numeral;
  readonly unit: UnitOfMeasure | null;
  readonly reference: PressureReference | null;
}

const PLUS_MINUS = ['±', '+/-', '+-', '+ / -', '+ -', '+ or -', 'plus or minus', 'plus/minus', '∓'];

type ToleranceResult =
  | { readonly parts: { plus: Tolerance; minus: Tolerance }; readonly end: number }
  | { readonly problem: SizeProblem }
  | null;

/** A tolerance after a size's first term: `± 1/64 in`, `+0.010/-0 in`, `(± .005)`; null where none follows. */
export function toleranceAt(lower: string, first: Term): ToleranceResult {
  let at = skipSpaces(lower, lower.charAt(first.end) === ',' ? first.end + 1 : first.end);
  const open = lower.charAt(at) === '(';
  if (open) at = skipSpaces(lower, at + 1);
  for (const sign of PLUS_MINUS) {
    if (!lower.startsWith(sign, at)) continue;
    const both = toleranceNumber(lower, skipSpaces(lower, at + sign.length));
    if (!both || 'problem' in both) return both;
    return unitAfter(lower, first, { plus: both, minus: both }, closed(lower, both.end, open));
  }
  const sign = signAt(lower, at);
  if (sign === null) return null;
  const one = toleranceNumber(lower, skipSpaces(lower, at + signLength(lower, at)));
  if (!one || 'problem' in one) return one;
  let next = skipSpaces(lower, one.end);
  if (lower.charAt(next) === '/' || lower.charAt(next) === ',') next = skipSpaces(lower, next + 1);
  if (lower.startsWith('and ', next)) next = skipSpaces(lower, next + 4);
  const other = signAt(lower, next);
  if (other === null || other === sign) return sign === '+' ? oneSign(lower, first, one.end) : null;
  const two = toleranceNumber(lower, skipSpaces(lower, next + signLength(lower, next)));
  if (!two || 'problem' in two) return two;
  const [plus, minus] = sign === '+' ? [one, two] : [two, one];
  return unitAfter(lower, first, { plus, minus }, closed(lower, two.end, open));
}

/** `0.203 (+0.010/-0) in`: the unit of all three stands behind the parenthesis. */
function unitAfter(
  lower: string,
  first: Term,
  parts: { plus: Tolerance; minus: Tolerance },
  end: number,
): ToleranceResult {
  const stated = first.unit ?? first.gauge ?? parts.plus.unit ?? parts.minus.unit;
  const found = stated ? null : wholeUnitAt(lower, skipSpaces(lower, end));
  if (!found) return { parts, end };
  const { unit, reference } = found;
  const withUnit = (one: Tolerance): Tolerance => ({ ...one, unit, reference });
  return { parts: { plus: withUnit(parts.plus), minus: withUnit(parts.minus) }, end: found.end };
}

/** The offset after the closing parenthesis, where one was opened and is closed. */
function closed(lower: string, end: number, open: boolean): number {
  const at = skipSpaces(lower, end);
  return open && lower.charAt(at) === ')' ? at + 1 : end;
}

function oneSign(lower: string, first: Term, end: number): ToleranceResult {
  const written = lower.slice(first.start, end);
  const message = `${written} has a plus and no minus`;
  return {
    problem: problem('unreadable', message, `write both, as in ${written}/-0`, first.start, end),
  };
}

function signAt(lower: string, at: number): '+' | '-' | null {
  const char = lower.charAt(at);
  if (char === '+' || char === '-') return char;
  if (lower.startsWith('plus ', at)) return '+';
  return lower.startsWith('minus ', at) ? '-' : null;
}

function signLength(lower: string, at: number): number {
  const word = lower.charAt(at);
  return word === 'p' ? 5 : word === 'm' ? 6 : 1;
}

/** A tolerance's number, told with its own unit or none. */
function toleranceNumber(
  lower: string,
  at: number,
): (Tolerance & { end: number }) | { problem: SizeProblem } | null {
  const read = numeralAt(lower, at);
  if (!read) return null;
  if (isFault(read)) return { problem: numeralFault(read, lower) };
  const found = wholeUnitAt(lower, skipSpaces(lower, read.end));
  const numeral = found ? settleComma(read, found.unit) : read;
  if (!numeral) return null;
  return {
    numeral,
    unit: found?.unit ?? null,
    reference: found?.reference ?? null,
    end: found?.end ?? read.end,
  };
}
