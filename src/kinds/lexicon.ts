import { lexicon } from '../generated/lexicon.ts';
import type { KindData, PartData } from './data.ts';

/** What steps do in words, for every kind: `src/kinds/lexicon/changes.yaml`. */
export interface ChangesData {
  readonly verbs: Readonly<Record<string, readonly string[]>>;
  /** The change that a way stands for where no verb does: `take-off` for `away`. */
  readonly ways: Readonly<Record<string, string>>;
  /** The change that another is read as by a part that says nothing of it. */
  readonly as: Readonly<Record<string, string>>;
  /** Changes that are made wholly or not at all. */
  readonly whole: readonly string[];
}

/** Words for parts that every kind works beside: `src/kinds/lexicon/parts.yaml`. */
export interface PartWordsData {
  readonly parts: Readonly<Record<string, PartWords>>;
  readonly phrases: Readonly<Record<string, readonly string[]>>;
}

interface PartWords {
  readonly aliases: readonly string[];
  readonly reads: Readonly<Record<string, string>>;
  /** Words for each condition. */
  readonly conditions: Readonly<Record<string, readonly string[]>>;
}

const { changes, parts: common } = lexicon;

export { changes };

/** The words of a kind, its own before the common ones. */
export function wordsOf(data: KindData): Pick<Required<KindData>, 'parts' | 'phrases' | 'verbs'> {
  const parts = Object.fromEntries(
    Object.entries(data.parts ?? {}).map(([name, part]) => [name, withWords(name, part)]),
  );
  const has = (state: string): boolean => {
    const [part = '', condition = ''] = state.split(' ');
    return Object.hasOwn(parts, part) && Object.hasOwn(parts[part]?.conditions ?? {}, condition);
  };
  const phrases = Object.entries(common.phrases).filter(([state]) => has(state));
  const read = new Set(Object.values(parts).flatMap(({ reads }) => Object.keys(reads ?? {})));
  const verbs = Object.entries(changes.verbs).filter(([group]) => read.has(group));
  return {
    parts,
    phrases: joined(data.phrases ?? {}, phrases),
    verbs: joined(data.verbs ?? {}, verbs),
  };
}

function withWords(name: string, own: PartData): PartData {
  const part = own.reads === undefined ? own : { ...own, reads: withAlike(own.reads) };
  const words = Object.hasOwn(common.parts, name) ? common.parts[name] : undefined;
  if (!words) return part;
  const conditions = Object.entries(part.conditions).map(([condition, data]) => {
    const more = Object.hasOwn(words.conditions, condition) ? words.conditions[condition] : [];
    return [condition, { ...data, aliases: both(data.aliases, more) }] as const;
  });
  const reads = Object.entries(words.reads).filter(([, to]) => Object.hasOwn(part.conditions, to));
  return {
    ...part,
    aliases: both(part.aliases, words.aliases),
    reads: { ...Object.fromEntries(reads), ...part.reads },
    conditions: Object.fromEntries(conditions),
  };
}

function withAlike(reads: Readonly<Record<string, string>>): Record<string, string> {
  const all = { ...reads };
  for (const [group, like] of Object.entries(changes.as)) {
    const condition = reads[like];
    if (condition !== undefined && !Object.hasOwn(reads, group)) all[group] = condition;
  }
  return all;
}

function joined(
  own: Readonly<Record<string, readonly string[]>>,
  more: readonly (readonly [string, readonly string[]])[],
): Record<string, readonly string[]> {
  const all: Record<string, readonly string[]> = { ...own };
  for (const [name, words] of more)
    all[name] = both(Object.hasOwn(own, name) ? own[name] : [], words);
  return all;
}

function both(own: readonly string[] = [], more: readonly string[] = []): readonly string[] {
  return [...new Set([...own, ...more])];
}
