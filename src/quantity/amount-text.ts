import type { Amount } from './model.ts';
import { normalize } from './normalize.ts';
import { isFault, numeralAt } from './numeral.ts';
import { wholeUnitAt } from './whole-unit.ts';
import { unitWord } from './write.ts';

/** `No. 29` alone: a gauge's number whose system stood elsewhere in the statement. */
const NAME_ALONE = /^(?:no\.?|nos\.?|number|size|gauge|#|№)? ?\d+(?:\/0)?$/;

/**
 * An amount as written, with the unit or the gauge's system that stood elsewhere in its statement:
 * the `13/64` of `13/64 ± 1/64"` is `13/64"`. `written` is the statement's text; without it the
 * unit's usual spelling is taken.
 */
export function fullText(amount: Amount, written: string | null): string {
  const lower = normalize(amount.text);
  if (amount.gauge && NAME_ALONE.test(lower)) return amount.gauge.label;
  const numeral = numeralAt(lower, 0);
  if (!numeral || isFault(numeral) || numeral.end < lower.length) return amount.text;
  const word = unitWord(amount.unit, amount.number);
  return amount.text + spelledUnit(written, amount.unit, spaced(word));
}

/** The unit as a statement spells it, with the blank before it; `otherwise` where it does not. */
export function spelledUnit(written: string | null, unit: string, otherwise: string): string {
  if (written === null || unit === 'turn' || unit === 'flat' || unit === 'notch') return otherwise;
  const lower = normalize(written);
  for (let at = 1; at < lower.length; at++) {
    if (/\p{L}/u.test(lower.charAt(at - 1))) continue;
    const found = wholeUnitAt(lower, at);
    if (found?.unit.id !== unit) continue;
    const joint = /[ -]/.test(lower.charAt(at - 1)) ? lower.charAt(at - 1) : '';
    return joint + written.slice(at, found.end);
  }
  return otherwise;
}

/** A unit's word with the blank that belongs before it: none before a degree or percent sign. */
export function spaced(word: string): string {
  return word === '°' || word === '%' ? word : ` ${word}`;
}
