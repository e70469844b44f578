import { nearestName } from '../text/index.ts';
import type { SizeProblem } from './model.ts';
import type { Numeral, NumeralFault } from './numeral.ts';
import type { UnitOfMeasure } from './units.ts';
import { splitVolumeAt } from './whole-unit.ts';

/**
 * A problem from its parts; offsets count in the text that was read. `offered` is how many of the candidates
 * the fix names, from the first; all of them unless it is said.
 */
export function problem(
  code: SizeProblem['code'],
  message: string,
  fix: string | null,
  start: number,
  end: number,
  candidates: readonly string[] = [],
  offered: number = candidates.length,
): SizeProblem {
  return { code, message, fix, start, end, candidates, offered };
}

/** `a, b or c`. */
export function orList(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? 'anything';
  return `${words.slice(0, -1).join(', ')} or ${words[words.length - 1]}`;
}

/** What a faulty numeral is told as. */
export function numeralFault(fault: NumeralFault, lower: string): SizeProblem {
  const written = lower.slice(fault.start, fault.end);
  if (fault.code === 'zero-denominator') {
    return problem(
      'zero-denominator',
      `${written} divides by zero`,
      'look in the source again',
      fault.start,
      fault.end,
    );
  }
  if (fault.code === 'improper') {
    return problem(
      'unreadable',
      `${written} has a fraction of one or more behind its whole number`,
      'look in the source again; write a range with `to`',
      fault.start,
      fault.end,
    );
  }
  return problem(
    'too-long',
    `${written.slice(0, 20)} has more digits than any size`,
    'write at most 12 digits',
    fault.start,
    fault.end,
  );
}

/** `1,250 in`: the comma could part decimals or thousands. */
export function unsettledComma(numeral: Numeral, unit: UnitOfMeasure): SizeProblem {
  const written = numeral.comma ?? '';
  const point = written.replace(',', '.');
  const none = written.replaceAll(',', '');
  return problem(
    'unreadable',
    `the comma in ${written} could part decimals or thousands`,
    `write ${point} ${unit.id} or ${none} ${unit.id}`,
    numeral.start,
    numeral.end,
    [`${point} ${unit.id}`, `${none} ${unit.id}`],
  );
}

/** `3 fl oz`, `30 seconds per pint`: two countries' measures share the name. */
export function volumeSystem(lower: string, at: number, start: number): SizeProblem | null {
  const blank = lower.charAt(at) === ' ' ? 1 : 0;
  const found = splitVolumeAt(lower, at + blank);
  if (!found) return null;
  const number = lower.slice(start, at);
  const candidates = ['US', 'imp'].map((whose) => `${number} ${found.told.replace('~', whose)}`);
  return problem(
    'bare-number',
    `${lower.slice(start, found.end)} does not say whose: the US and the imperial ${found.word} differ`,
    `write ${candidates.join(' or ')}`,
    start,
    found.end,
    candidates,
  );
}

/** A word where a unit should stand. */
export function unknownUnit(word: string, number: string, start: number, end: number): SizeProblem {
  const ids = [
    'in',
    'mm',
    'thou',
    'turns',
    'flats',
    'rpm',
    'inHg',
    'psi',
    'kPa',
    'mbar',
    'bar',
    'cm3',
    'cc',
    'ft-lb',
    'notches',
    'degrees',
  ];
  const near = nearestName(word, ids);
  return problem(
    'unknown-unit',
    `${word} is no unit that a size is written in`,
    near
      ? `write ${number} ${near}, if that is meant`
      : `say the unit after ${number}: in, mm, thou, turns, rpm ...`,
    start,
    end,
    near ? [`${number} ${near}`] : [],
  );
}
