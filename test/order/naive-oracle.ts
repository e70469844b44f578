import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { builtInKinds } from '../../src/kinds/index.ts';
import { readStates } from '../../src/order/reading.ts';

/*
 * A second simulation of the work, written apart from src/order/walk.ts and as plainly as it goes:
 * it cuts the Markdown by lines, takes the rules from the kind's YAML as they stand, and says only
 * whether the work can be carried out in the order it is written. Slow and without messages on
 * purpose. It shares with the product the vocabulary (which heading names which operation) and the
 * reading of words (`readStates`), and nothing of the walk. It knows the hard rules only, and of those
 * that the kind's data lets the words of the steps soften (`disturbs-said`, `if-words`) only where the
 * words are there: what it calls wrong has to be found, and what it calls right has to be free of errors.
 */

type States = Readonly<Record<string, string | readonly string[]>>;

interface RawNeed {
  readonly is?: string | readonly string[];
  readonly not?: string | readonly string[];
  readonly because: string;
  readonly likely?: boolean;
  readonly unless?: States;
  readonly while?: States;
  readonly 'if-said'?: Readonly<Record<string, readonly string[]>>;
  readonly 'unless-stated'?: readonly string[];
  readonly from?: readonly string[];
  readonly again?: boolean;
  readonly 'if-feature'?: readonly string[];
  readonly 'if-words'?: readonly string[];
}

type RawNeeds = Readonly<Record<string, RawNeed>>;
type Reasons = Readonly<Record<string, string>>;

interface RawPart {
  readonly label: string;
  readonly aliases?: readonly string[];
  readonly starts?: string;
  readonly home?: readonly string[];
  readonly 'home-at-start'?: boolean;
  readonly 'if-feature'?: readonly string[];
  readonly 'only-if-named'?: boolean;
  readonly reads?: Readonly<Record<string, string>>;
  readonly conditions: Readonly<
    Record<
      string,
      { readonly aliases?: readonly string[]; readonly 'counts-as'?: readonly string[] }
    >
  >;
}

interface RawState {
  readonly needs?: RawNeeds;
  readonly follows?: RawNeeds;
  readonly bars?: RawNeeds;
  readonly after?: Reasons;
  readonly disturbs?: Reasons;
  readonly 'starts-up'?: boolean;
}

interface RawOperation {
  readonly stage: string;
  readonly settings?: readonly string[];
  readonly 'also-measures'?: readonly string[];
  readonly needs?: RawNeeds;
  readonly 'needs-said'?: Readonly<Record<string, string>>;
  readonly leaves?: States;
  readonly disturbs?: Reasons;
  readonly 'disturbs-said'?: Readonly<Record<string, readonly string[]>>;
}

export interface RawKind {
  readonly settings: Readonly<
    Record<
      string,
      {
        readonly needs?: RawNeeds;
        readonly replaces?: readonly string[];
        readonly 'says-state'?: string;
      }
    >
  >;
  readonly operations: Readonly<Record<string, RawOperation>>;
  readonly parts: Readonly<Record<string, RawPart>>;
  readonly states?: Readonly<Record<string, RawState>>;
}

export interface Change {
  readonly part: string;
  readonly to: string;
  readonly how: 'mark' | 'words';
  readonly verb: string | null;
}

export interface Step {
  /** Its words; absent where a rule cannot hang on them. */
  readonly text?: string;
  readonly changes: readonly Change[];
  readonly values: readonly string[];
}

export interface Job {
  readonly name: string | null;
  readonly steps: readonly Step[];
}

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();
const list = (any: string | readonly string[] | undefined): readonly string[] =>
  any === undefined ? [] : typeof any === 'string' ? [any] : any;

const rawKinds = new Map<string, RawKind>();

/** A kind's data as its file has it, with what it builds on under it. */
function rawFile(name: string): RawKind {
  const folder = join(import.meta.dirname, '..', '..', 'src', 'kinds');
  const read = (file: string): RawKind & { 'builds-on'?: readonly string[] } =>
    parse(readFileSync(join(folder, file), 'utf8'));
  const own = read(`${name}.yaml`);
  const under = (own['builds-on'] ?? []).map((each) => read(join('common', `${each}.yaml`)));
  return under.reduceRight<RawKind>(over, own);
}

/** One table over another, key by key; of aliases both. */
function over<T>(top: T, below: T): T {
  const isTable = (any: unknown): any is Record<string, unknown> =>
    typeof any === 'object' && any !== null && !Array.isArray(any);
  if (!isTable(top) || !isTable(below)) return top;
  const all: Record<string, unknown> = { ...below, ...top };
  for (const key of Object.keys(top)) {
    const [upper, lower] = [top[key], below[key]];
    if (key === 'aliases' && Array.isArray(upper) && Array.isArray(lower))
      all[key] = [...upper, ...lower];
    else if (isTable(upper) && isTable(lower)) all[key] = over(upper, lower);
  }
  return all as T;
}

/** Read once. */
function rawKind(name: string): RawKind {
  const kind = rawKinds.get(name) ?? rawFile(name);
  rawKinds.set(name, kind);
  return kind;
}

/** Whether the work of a sheet of a built-in kind can be carried out in the order it is written. */
export function canBeDone(text: string, kindName: string): boolean {
  const kind = rawKind(kindName);
  const front = parse(text.split(/^---$/m)[1] ?? '') as {
    readonly unit: { readonly features?: readonly string[] };
    readonly settings: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
  };
  const names = builtInKinds().get(kindName);
  const features = (front.unit.features ?? []).map((each) => names?.featureNamed(each)?.name ?? '');
  const said: Said = (own, part, key) => {
    for (const name of own) {
      if (kind.settings[name]?.['says-state'] !== part) continue;
      const words = plain(String(front.settings[name]?.value ?? '')).split(' ');
      if (words.some((word) => /\d/.test(word))) continue;
      const meant = words.find((to) => kind.parts[part]?.conditions[to]);
      if (meant) return meant;
    }
    const labels = [part, plain(kind.parts[part]?.label ?? '').replaceAll(' ', '-')];
    for (const [setting, keys] of Object.entries(front.settings)) {
      const called = names?.settingNamed(setting)?.name ?? setting;
      if (!own.includes(called)) continue;
      for (const each of [...(key === undefined ? [] : [key]), ...labels]) {
        if (keys[each] === undefined) continue;
        const word = plain(String(keys[each]));
        const meant = Object.entries(kind.parts[part]?.conditions ?? {}).find(
          ([to, { aliases = [] }]) => [to, ...aliases].some((one) => plain(one) === word),
        );
        if (meant) return meant[0];
      }
    }
    return null;
  };
  const jobs = jobsOf(text, kind, kindName);
  return jobsCanBeDone(jobs, kind, features, said);
}

/** The condition that a setting of an operation names under a key or the part's own name; null for none. */
type Said = (own: readonly string[], part: string, key: string | undefined) => string | null;

/** Whether jobs can be done one after the other, by the hard rules of a kind. */
export function jobsCanBeDone(
  jobs: readonly Job[],
  kind: RawKind,
  features: readonly string[] = [],
  said: Said = () => null,
): boolean {
  return simulate(jobs, kind, features, said);
}

function jobsOf(text: string, kind: RawKind, kindName: string): readonly Job[] {
  const names = builtInKinds().get(kindName);
  if (!names) throw new Error(kindName);
  return text
    .slice(text.indexOf('\n---\n') + 5)
    .split(/^(?=## )/m)
    .slice(1)
    .map((section) => {
      const [, title = '', id = ''] = /^## (.*?)(?: \{#(.*)\})?$/m.exec(section) ?? [];
      const name = (names.operationNamed(id) ?? names.operationNamed(title))?.name ?? null;
      const steps = section
        .split(/^(?=\d+\. )/m)
        .slice(1)
        .map((step) => step.split(/\n\n|\n(?=:::)/)[0] ?? '')
        .map((step): Step => {
          const marks = [...step.matchAll(/:state\[([^\]]*)\]/g)].flatMap(([, mark = '']) =>
            markIn(plain(mark), kind),
          );
          const words = readStates(
            step.replace(/:[a-z]+\[[^\]]*\]/g, (found) => ' '.repeat(found.length)),
            names,
          ).map(({ term, verb }) => ({ part: term.part, to: term.condition, verb }));
          return {
            text: step,
            changes: [
              ...words
                .filter((word) => !marks.some(({ part }) => part === word.part))
                .map((word): Change => ({ ...word, how: 'words' })),
              ...marks.map(
                (mark): Change => ({
                  ...mark,
                  how: 'mark',
                  verb:
                    words.find((w) => w.verb !== null && w.part === mark.part && w.to === mark.to)
                      ?.verb ?? null,
                }),
              ),
            ],
            values: [...step.matchAll(/:value\[([^\]]*)\]/g)].map(
              ([, value = '']) => names.settingNamed(value)?.name ?? value,
            ),
          };
        });
      return { name, steps };
    });
}

/** Names go before labels and aliases, as a mark may use either. */
function markIn(mark: string, kind: RawKind): readonly { part: string; to: string }[] {
  for (const round of ['name', 'alias'] as const) {
    for (const [part, { label, aliases = [], conditions }] of Object.entries(kind.parts)) {
      for (const called of round === 'name' ? [part, label] : aliases) {
        for (const [to, { aliases: words = [] }] of Object.entries(conditions)) {
          if ([to, ...words].some((word) => plain(`${called} ${word}`) === mark))
            return [{ part, to }];
        }
      }
    }
  }
  return [];
}

/** Whether some sentence of the steps holds one of some words, and hangs on no condition. */
function saysPlainly({ steps }: Job, words: readonly string[]): boolean {
  return steps.some(({ text = '' }) => {
    const [plainly = ''] = text.split('?');
    return plainly.split(/[.!;]\s/).some((sentence) => {
      const spoken = plain(sentence).split(' ');
      if (['if', 'should', 'unless'].some((each) => spoken.includes(each))) return false;
      return words.some((word) => spoken.includes(word));
    });
  });
}

interface Now {
  readonly is: string;
  readonly by: 'start' | 'mark' | 'words' | 'work';
  /** What was sure before the kind's own hearsay: an operation is taken to leave the part so. */
  readonly hides?: Now;
}

function simulate(
  jobs: readonly Job[],
  kind: RawKind,
  features: readonly string[],
  saidOf: Said,
): boolean {
  const named = new Set(
    jobs.flatMap(({ steps }) => steps.flatMap((s) => s.changes.map((c) => c.part))),
  );
  const marked = new Set(
    jobs.flatMap(({ steps }) =>
      steps.flatMap(({ changes }) => changes.filter((c) => c.how === 'mark').map((c) => c.part)),
    ),
  );
  const there = (part: string): boolean => {
    const { 'if-feature': only, 'only-if-named': ifNamed } = kind.parts[part] ?? {};
    if (ifNamed && !named.has(part)) return false;
    return only === undefined || only.some((feature) => features.includes(feature));
  };
  const satisfies = (part: string, is: string, wanted: readonly string[]): boolean =>
    wanted.includes(is) ||
    (kind.parts[part]?.conditions[is]?.['counts-as'] ?? []).some((each) => wanted.includes(each));
  const state = new Map<string, Now>();
  for (const [part, { starts }] of Object.entries(kind.parts))
    if (starts !== undefined && there(part)) state.set(part, { is: starts, by: 'start' });
  const holds = (states: States | undefined, part = ''): boolean =>
    Object.entries(states ?? {}).some(([other, wanted]) => {
      const now = state.get(other);
      return other !== part && now !== undefined && satisfies(other, now.is, list(wanted));
    });
  const isMet = (part: string, need: RawNeed, now = state.get(part)): boolean =>
    now !== undefined && !list(need.not).includes(now.is) && satisfies(part, now.is, list(need.is));
  /** What may well be so, and is not held against anyone unless what is sure is as bad. */
  const hear = (part: string, is: string): void => {
    const now = state.get(part);
    const hides = now?.by === 'words' ? now.hides : now;
    state.set(part, { is, by: 'words', ...(hides ? { hides } : {}) });
  };
  const made = new Map<string, Job>();
  const stale = new Set<string>();
  const done = new Set<string>();
  let fine = true;
  let hasRun = false;

  const spoil = (settings: readonly string[], by: Job, own: readonly string[]): void => {
    for (const each of settings)
      if (made.has(each) && made.get(each) !== by && !own.includes(each)) stale.add(each);
  };
  const allHome = (atStart: boolean): boolean =>
    Object.entries(kind.parts).every(([part, { home, 'home-at-start': also }]) => {
      const now = state.get(part);
      return (
        (home?.length ?? 0) === 0 ||
        now === undefined ||
        !there(part) ||
        (atStart && also === false) ||
        satisfies(part, now.is, home ?? []) ||
        (now.hides && (now.hides.by === 'start' || satisfies(part, now.hides.is, home ?? [])))
      );
    });
  /** Whether a need is surely not met: what only words say, or nobody, is not held against anyone. */
  const isBroken = (part: string, need: RawNeed, before?: Now): boolean => {
    if (need.likely || !kind.parts[part] || !there(part) || holds(need.unless)) return false;
    if (need.while && !holds(need.while)) return false;
    if (need['if-said'] || need['unless-stated']) return false;
    const now = state.get(part);
    if (isMet(part, need) || (before && isMet(part, need, before))) return false;
    const hidden = now?.hides;
    if (hidden && hidden.by !== 'start' && !isMet(part, need, hidden)) return true;
    return now?.by === 'mark' || now?.by === 'work' || (now?.by === 'start' && marked.has(part));
  };
  const needsOf = (name: string | null, own: readonly string[]): readonly [string, RawNeed][] => {
    const rules = name === null ? undefined : kind.operations[name];
    const needs = new Map(Object.entries(rules?.needs ?? {}));
    for (const part of Object.keys(kind.parts)) {
      const meant = saidOf(own, part, rules?.['needs-said']?.[part]);
      if (meant !== null) needs.set(part, { is: meant, because: '' });
    }
    return [...needs];
  };
  const settingsOf = (name: string): readonly string[] =>
    kind.operations[name]?.settings ?? (kind.settings[name] ? [name] : []);

  for (const job of jobs) {
    const rules = job.name === null ? undefined : kind.operations[job.name];
    const own = rules && job.name ? settingsOf(job.name) : [];
    if (job.steps.length === 0 && (!rules || rules.stage === 'any')) continue;
    const measuring =
      job.steps.find((step) => step.values.some((v) => own.includes(v))) ?? job.steps.at(-1);
    const isAnywhere =
      own.length > 0 && !job.steps.some((step) => step.values.some((v) => own.includes(v)));
    const needs = needsOf(job.name, own).filter(
      ([, { 'if-words': words }]) => !words || saysPlainly(job, words),
    );
    const moves = Object.keys(rules?.disturbs ?? {}).filter((name) => {
      const words = rules?.['disturbs-said']?.[name];
      return words === undefined || saysPlainly(job, words);
    });
    const met = new Set<string>();
    for (const step of job.steps) {
      const before = new Map(state);
      for (const change of step.changes) {
        const rule = kind.states?.[`${change.part} ${change.to}`] ?? {};
        const found = state.get(change.part);
        const was = found?.is;
        const isOld = found?.hides?.is === change.to;
        // Words that say again what is known already take nothing from it.
        if (was !== change.to || change.how === 'mark')
          state.set(change.part, { is: change.to, by: change.how });
        for (const [part, { is, from, again, 'if-feature': only }] of Object.entries(
          rule.follows ?? {},
        )) {
          if (only && !only.some((feature) => features.includes(feature))) continue;
          if (step.changes.some((c) => c.part === part && c.how === 'mark')) continue;
          const [then = ''] = list(is);
          const now = state.get(part);
          if (now?.is === then) {
            if (change.how === 'mark' && now.by !== 'work')
              state.set(part, { is: then, by: 'mark' });
            continue;
          }
          if (was === change.to && !again) continue;
          if (now && satisfies(part, now.is, [then])) continue;
          if (from && !from.includes(now?.is ?? '')) continue;
          if (isOld && !again) hear(part, then);
          else state.set(part, { is: then, by: change.how });
        }
      }
      for (const change of step.changes) {
        const rule = kind.states?.[`${change.part} ${change.to}`] ?? {};
        if (change.how === 'mark' && state.get(change.part)?.is === change.to)
          for (const [other, { is, by }] of state) {
            if (other === change.part || by === 'start' || by === 'words') continue;
            if (step.changes.some((c) => c.part === other)) continue;
            const bar = kind.states?.[`${other} ${is}`]?.bars?.[change.part];
            if (
              bar &&
              !bar.likely &&
              !bar.unless &&
              satisfies(change.part, change.to, list(bar.is))
            )
              fine = false;
          }
        if (
          before.get(change.part)?.is === change.to &&
          step.changes.filter((c) => c.part === change.part).length === 1
        )
          continue;
        if (change.how === 'mark') spoil(Object.keys(rule.disturbs ?? {}), job, []);
        for (const [part, need] of Object.entries(rule.needs ?? {}))
          if (isBroken(part, need)) fine = false;
        if (rule['starts-up'] && change.how === 'mark') {
          const first = Object.keys(rule.after ?? {});
          for (const name of first)
            if (jobs.some((j) => j.name === name) && !done.has(name) && job.name !== name)
              fine = false;
          if (!hasRun && first.flatMap(settingsOf).some((each) => stale.has(each))) fine = false;
          if (!allHome(true)) fine = false;
          hasRun = true;
        }
      }
      for (const [part, need] of needs) if (isAnywhere && isMet(part, need)) met.add(part);
      if (step === measuring && rules) {
        for (const [part, need] of needs)
          if (!met.has(part) && isBroken(part, need, before.get(part))) fine = false;
        spoil(moves, job, own);
      }
      for (const value of step.values) {
        const always = Object.entries(kind.settings[value]?.needs ?? {});
        const mine = own.includes(value) || rules?.['also-measures']?.includes(value);
        if (mine && always.some(([part, need]) => isBroken(part, need, before.get(part))))
          fine = false;
        const makers = Object.keys(kind.operations).filter((name) =>
          settingsOf(name).includes(value),
        );
        const counts =
          mine ||
          makers.length === 0 ||
          makers.some((name) =>
            [...needsOf(name, settingsOf(name)), ...always].every(
              ([part, need]) => !isBroken(part, need, before.get(part)),
            ),
          );
        if (!counts) continue;
        made.set(value, job);
        stale.delete(value);
        for (const each of kind.settings[value]?.replaces ?? []) {
          made.delete(each);
          stale.delete(each);
        }
      }
    }
    for (const [part, to] of Object.entries(rules?.leaves ?? {})) {
      const now = state.get(part);
      const [then = ''] = list(to);
      if (now && satisfies(part, now.is, [then])) continue;
      const { home = [], reads = {} } = kind.parts[part] ?? {};
      // What is taken away may come back in words that nobody understands, and marks say it themselves.
      const isHearsay = marked.has(part) || (Object.keys(reads).length > 0 && !home.includes(then));
      if (isHearsay) hear(part, then);
      else state.set(part, { is: then, by: 'work' });
    }
    if (job.name) done.add(job.name);
  }
  return fine && stale.size === 0 && allHome(false);
}
