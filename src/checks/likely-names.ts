import { rational } from '../quantity/index.ts';
import { suspectsOf, type Verdict, type WorkedNumbers, wouldAgreeAt } from '../relations/index.ts';
import type { Sheet } from '../sheet/model.ts';
import type { CheckContext } from './define.ts';
import { likelyThreads } from './likely-threads.ts';

/**
 * The other thread or feature with which all of some figures would agree, as a clause of a cure:
 * `2 BA for the thread`, `\`eight-lobe\` among the features`; at most one of each, none where none would.
 */
export function likelyNames(
  verdicts: readonly Verdict[],
  numbers: WorkedNumbers,
  sheet: Sheet,
  { gauges }: CheckContext,
): readonly string[] {
  const [first] = verdicts;
  if (!first) return [];
  const found: string[] = [];
  for (const { place, label } of suspectsOf(first)) {
    const { bound, text, span } = place;
    if (bound.is === 'count') {
      const features = sheet.kind?.relations.counts.get(bound.name) ?? new Map<string, number>();
      const stated = new Set(sheet.unit.features.map(({ id }) => id));
      const right = [...features].find(
        ([feature, count]) =>
          !stated.has(feature) && wouldAgreeAt(numbers, verdicts, place, rational(count), gauges),
      );
      if (right) found.push(`\`${right[0]}\` among the features`);
    } else if (span && text !== null && isThread(label)) {
      const right = likelyThreads(text, span, numbers, gauges).find((each) => each.isBorneOut);
      if (right) found.push(`${right.text} for ${label}`);
    }
  }
  return found;
}

function isThread(label: string): boolean {
  return label === 'the thread' || label === 'the pitch';
}
