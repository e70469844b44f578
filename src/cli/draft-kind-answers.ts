import {
  askedConditions,
  commonNeed,
  dimensions,
  type KindPlan,
  type PlannedNeed,
  type PlannedOperation,
  type PlannedSetting,
  pairOf,
  plainName,
} from '../import/index.ts';
import { Refusal } from '../project/index.ts';
import type { Ask } from './talk.ts';

const STAGES = ['strip', 'bench', 'before-start', 'running', 'road'];

/** What a kind is begun with, asked on a terminal: what is set, and the operations with what each needs. */
export async function kindPlan(ask: Ask, hazards: readonly string[]): Promise<KindPlan> {
  const settings: PlannedSetting[] = [];
  for (;;) {
    const label = await ask(
      settings.length === 0 ? 'What is set first: ' : 'What is set next (Enter: no more): ',
      (text) => named(text, settings, settings.length > 0),
    );
    if (label === null) break;
    const dimension = await ask(
      '  In which dimension, such as length, angle, pressure, torque, voltage: ',
      (text) => oneOf(text, dimensions, 'dimension'),
    );
    const usual = await ask(
      '  Least and most on ordinary units, as `0.005 in, 0.05 in` (Enter: leave it): ',
      (text) => rangeOf(text),
    );
    settings.push({ label, dimension, usual });
  }
  const operations: PlannedOperation[] = [];
  for (;;) {
    const label = await ask('Which operation comes next (Enter: no more): ', (text) =>
      named(text, operations, true),
    );
    if (label === null) break;
    const stage = await ask(`  Its stage, of ${STAGES.join(', ')}: `, (text) =>
      oneOf(text, STAGES, 'stage'),
    );
    const makes = await ask(
      '  What of that does it set, parted by commas (Enter: nothing): ',
      (text) => listed(text).map((each) => settingOf(each, settings)),
    );
    const needs = await ask(
      '  What has to be so, as `cover off, engine running` (Enter: nothing): ',
      (text) => listed(text).map(needOf),
    );
    const met = await ask(
      `  Which hazards does it meet, of ${hazards.join(', ')} (Enter: none): `,
      (text) => listed(text).map((each) => oneOf(each, hazards, 'hazard')),
    );
    operations.push({ label, stage, makes, needs, hazards: met });
  }
  return { settings, operations };
}

function listed(text: string): readonly string[] {
  return text
    .split(',')
    .map((each) => each.trim())
    .filter((each) => each !== '');
}

function named(
  text: string,
  known: readonly { readonly label: string }[],
  mayEnd: boolean,
): string | null {
  const label = text.trim();
  if (label === '' && mayEnd) return null;
  const name = plainName(label);
  if (!/^[a-z]/.test(name) || name.length > 60)
    throw new Refusal('a name begins with a letter', 'such as `Static pressure`');
  if (known.some((each) => plainName(each.label) === name))
    throw new Refusal(`${label} is there already`, 'give another name');
  return label;
}

function oneOf(text: string, known: readonly string[], what: string): string {
  const name = plainName(text);
  if (known.includes(name)) return name;
  throw new Refusal(`${text.trim() || 'nothing'} is no ${what}`, known.join(', '));
}

function settingOf(text: string, settings: readonly PlannedSetting[]): string {
  const found = settings.find(({ label }) => plainName(label) === plainName(text));
  if (found) return found.label;
  throw new Refusal(
    `${text} is nothing that is set`,
    settings.map(({ label }) => label).join(', '),
  );
}

function rangeOf(text: string): readonly [string, string] | null {
  const [least, most, ...more] = listed(text);
  if (least === undefined) return null;
  if (most === undefined || more.length > 0)
    throw new Refusal('two sizes are needed, parted by a comma', 'such as `0.005 in, 0.05 in`');
  return [least, most];
}

function needOf(text: string): PlannedNeed {
  const words = text.toLowerCase().split(/\s+/);
  const need = { part: words.slice(0, -1).join(' '), condition: words.at(-1) ?? '' };
  if (commonNeed(need) !== null) return need;
  if (/^[a-z]/.test(plainName(need.part)) && pairOf(need.condition) !== null) return need;
  throw new Refusal(
    `${text} says no part with a condition that is known here`,
    `a part and one of ${askedConditions.join(', ')}; or engine running, engine hot, gear neutral, vehicle secured`,
  );
}
