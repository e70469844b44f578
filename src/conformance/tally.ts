import type { AssessedRecord } from './assess-record.ts';
import type { AcceptanceRule } from './model.ts';
import { type VerdictWord, verdictWord } from './words.ts';

/** How many of a record's settings came out which way, by their as-left readings. */
export type Tally = Readonly<Record<VerdictWord | 'no reading', number>>;

/** Counts the settings of a record by what came out for each. */
export function tallyOf({ entries }: Pick<AssessedRecord, 'entries'>): Tally {
  const tally = {
    conforms: 0,
    'does not conform': 0,
    unproven: 0,
    'no limits': 0,
    'no reading': 0,
  };
  for (const { left } of entries) tally[left === null ? 'no reading' : verdictWord(left)] += 1;
  return tally;
}

/** Whether everything that could be judged is proven right, and something was. */
export function isAllRight(tally: Tally): boolean {
  const wrong = tally['does not conform'] + tally.unproven + tally['no reading'];
  return wrong === 0 && tally.conforms > 0;
}

const tallyLabels: readonly (readonly [keyof Tally, string, string])[] = [
  ['conforms', 'conforms', 'conform'],
  ['does not conform', 'does not conform', 'do not conform'],
  ['unproven', 'is unproven', 'are unproven'],
  ['no limits', 'has no limits to be judged by', 'have no limits to be judged by'],
  ['no reading', 'has no as-left reading', 'have no as-left reading'],
];

/** `As left, 2 conform, 1 is unproven, 3 have no limits to be judged by.` */
export function tallyWords(tally: Tally, rule: AcceptanceRule): string {
  const parts = tallyLabels.flatMap(([key, one, many]) =>
    tally[key] === 0 ? [] : [`${tally[key]} ${tally[key] === 1 ? one : many}`],
  );
  const by = rule === 'simple' ? ' (simple acceptance)' : '';
  return `As left${by}, ${parts.join(', ')}.`;
}
