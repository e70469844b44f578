import { amount } from './amount.ts';
import { CONDITIONS } from './lexicon.ts';
import type { SizeProblem, Statement } from './model.ts';
import { normalize } from './normalize.ts';
import { rational } from './rational.ts';
import { unitById } from './units.ts';

const INDEX =
  /^(?:(?:on|at|to|set (?:at|on|to)) )?(?:the )?(?:index(?: (?:mark|notch|line))?|(?:center|centre|central|middle) (?:mark|notch|line))$/;
const ORDINAL =
  /^(?:(\d{1,2})(?:st|nd|rd|th)|(first|second|third|fourth|fifth|sixth|seventh|eighth)) (?:notch|groove)(?:,? (?:counting )?(?:from|off) (?:the )?(top|bottom))?$/;
const NOTCH_NUMBER =
  /^(?:notch|groove) (?:no\.? ?|number |#)?(\d{1,2})(?:,? (?:counting )?(?:from|off) (?:the )?(top|bottom))?$/;
const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'];

/** A gauge or instrument that is named and has no size: its words are kept as they stand. */
export function namedTool(text: string): Statement {
  return conditionStatement(text, withoutStop(normalize(text.trim())));
}

/** Small words without the stop at their end, with single blanks. */
export function withoutStop(lower: string): string {
  return lower.replace(/\.$/, '').replace(/\s+/g, ' ');
}

/** A gauge that does not exist is no condition; what else has no figure may be one. */
export function mayBeCondition(lower: string, { code }: SizeProblem): boolean {
  if (/[\d½¼¾⅛⅜⅝⅞⅓⅔]/.test(lower)) return false;
  return code === 'unreadable' || code === 'unknown-unit' || code === 'no-unit';
}

/** A statement that is words and no figure. */
export function conditionStatement(text: string, condition: string): Statement {
  return { ...blank(text), dimension: 'condition', form: 'condition', condition };
}

/** `parallel`, `index`, `third notch from the top`: statements that have no figure, or an ordinal one. */
export function wordsOnly(text: string, lower: string): Statement | null {
  if (INDEX.test(lower)) return notchStatement(text, 0, 'index');
  const ordinal = ORDINAL.exec(lower) ?? NOTCH_NUMBER.exec(lower);
  if (ordinal) {
    const spelled = ordinal.length > 3 ? ordinal[2] : undefined;
    const count = spelled ? ORDINALS.indexOf(spelled) + 1 : Number(ordinal[1]);
    return notchStatement(text, count, ordinal[ordinal.length - 1] ?? null);
  }
  return CONDITIONS.has(lower) ? conditionStatement(text, lower) : null;
}

function blank(text: string): Omit<Statement, 'dimension' | 'form' | 'condition'> {
  return {
    text,
    nominal: null,
    low: null,
    high: null,
    about: false,
    sense: null,
    datum: null,
    reference: null,
    qualifier: null,
    ambiguous: [],
  };
}

function notchStatement(text: string, count: number, datum: string | null): Statement {
  const nominal = amount(text, rational(count), unitById('notch'), null, 'integer', null);
  return { ...blank(text), dimension: 'notches', form: 'exact', condition: null, nominal, datum };
}
