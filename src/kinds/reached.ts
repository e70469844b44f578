import type { KindData } from './data.ts';
import { wordsOf } from './lexicon.ts';
import { levelName } from './name-book.ts';
import { listOf } from './parts.ts';

/** What of a kind's parts its own words, steps and rules bring about; states as `part condition`. */
export interface Reached {
  /** States that a verb, a phrase, a model step, an operation or another state brings about. */
  readonly moved: ReadonlySet<string>;
  /** These, those that parts start in, and those that a step can name by words of their own. */
  readonly can: ReadonlySet<string>;
}

/** Which states the work of a kind can come into, by all that its data says; marks of sheets are left out. */
export function reachedStates(data: KindData): Reached {
  const { parts, phrases } = wordsOf(data);
  const moved = new Set<string>(Object.keys(phrases));
  for (const [name, { reads = {} }] of Object.entries(parts))
    for (const condition of Object.values(reads)) moved.add(`${name} ${condition}`);
  for (const { follows = {} } of Object.values(data.states ?? {}))
    for (const [part, { is }] of Object.entries(follows))
      for (const each of listOf(is)) moved.add(`${part} ${each}`);
  for (const { leaves = {}, steps = [] } of Object.values(data.operations)) {
    for (const [part, any] of Object.entries(leaves))
      for (const each of listOf(any)) moved.add(`${part} ${each}`);
    for (const mark of marksOf(steps))
      for (const state of statesNamed(mark, parts)) moved.add(state);
  }
  const can = new Set(moved);
  for (const [name, { starts, conditions }] of Object.entries(parts)) {
    if (starts !== undefined) can.add(`${name} ${starts}`);
    for (const [condition, { aliases = [] }] of Object.entries(conditions))
      if (aliases.length > 0) can.add(`${name} ${condition}`);
  }
  // Who is on the highest step is on a step that the sheet names.
  for (const [name, { conditions }] of Object.entries(parts))
    for (const [condition, { 'counts-as': counts = [] }] of Object.entries(conditions)) {
      if (can.has(`${name} ${condition}`)) for (const each of counts) can.add(`${name} ${each}`);
    }
  return { moved, can };
}

/** What stands in the marks of model steps: `cover off` of `:state[cover off]`. */
export function marksOf(steps: readonly string[]): readonly string[] {
  return steps.flatMap((step) =>
    [...step.matchAll(/:state\[([^\]]*)\]/g)].map(([, mark = '']) => mark),
  );
}

/** Every state that a mark may name, by names, labels and aliases of parts and conditions. */
function statesNamed(mark: string, parts: ReturnType<typeof wordsOf>['parts']): readonly string[] {
  const words = mark.trim().split(/\s+/);
  const found: string[] = [];
  for (let cut = 1; cut < words.length; cut += 1) {
    const part = levelName(words.slice(0, cut).join(' '));
    const condition = levelName(words.slice(cut).join(' '));
    for (const [name, { label, aliases = [], conditions }] of Object.entries(parts)) {
      if (![name, label, ...aliases].some((each) => levelName(each) === part)) continue;
      for (const [each, { aliases: also = [] }] of Object.entries(conditions))
        if ([each, ...also].some((one) => levelName(one) === condition))
          found.push(`${name} ${each}`);
    }
  }
  return found;
}
