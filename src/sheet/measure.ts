import { rational, rescaled } from '../quantity/index.ts';
import type { Rational, Statement } from '../quantity/model.ts';
import { hasWord } from '../text/index.ts';
import type { Setting } from './model.ts';

type Measured = Pick<Setting, 'scale' | 'said'>;

const ONE = rational(1);

/**
 * How many of the measure that a figure is told in are one of the setting's own: 2 for degrees of the crank,
 * where the kind counts in those of the distributor. The figure's own words say it, or what is said of all.
 */
export function timesOf(text: string, { scale, said }: Measured): Rational {
  if (!scale) return ONE;
  const isSaid = (words: string): boolean => scale.words.some((word) => hasWord(words, word));
  if (isSaid(text)) return scale.times;
  const of = said.get('of')?.value ?? '';
  // `3 ± 1° distributor` beside a table of the crank names its own measure.
  return isSaid(of) && !/\p{L}{3,}/u.test(text.replace(/rpm/gi, '')) ? scale.times : ONE;
}

/** A statement in the setting's own measure. */
export function inOwnMeasure(statement: Statement, setting: Measured): Statement {
  return rescaled(statement, timesOf(statement.text, setting).inverse());
}

/** A statement in the measure in which another text of the setting is told. */
export function inMeasureOf(statement: Statement, text: string, setting: Measured): Statement {
  if (!setting.scale) return statement;
  return rescaled(statement, timesOf(text, setting).div(timesOf(statement.text, setting)));
}
