import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { builtInKinds } from '../../src/kinds/index.ts';
import { readStates } from '../../src/order/index.ts';

/*
 * A second simulation of the work, written apart from src/order/walk.ts and as plainly as it goes:
 * it cuts the Markdown by lines, takes the rules from the kind's YAML as they stand, and says only
 * whether the work can be carried out in the order it is written. Slow and without messages on
 * purpose. It shares with the product the vocabulary (which heading names which operation) and the
 * reading of words (`readStates`), and nothing of the walk.
 */

type States = Readonly<Record<string, string | readonly string[]>>;

interface RawPart {
  readonly label: string;
  readonly aliases?: readonly string[];
  readonly starts?: string;
  readonly home?: readonly string[];
  readonly 'if-feature'?: readonly string[];
  readonly conditions: Readonly<
    Record<
      string,
      {
        readonly aliases?: readonly string[];
        readonly 'counts-as'?: readonly string[];
        readonly needs?: States;
        readonly leaves?: States;
        readonly forbids?: States;
        readonly after?: readonly string[];
        readonly disturbs?: readonly string[];
        readonly 'starts-up'?: boolean;
      }
    >
  >;
}

interface RawOperation {
  readonly stage: string;
  readonly settings?: readonly string[];
  readonly after?: readonly string[];
  readonly needs?: States;
  readonly 'needs-said'?: Readonly<Record<string, string>>;
  readonly leaves?: States;
  readonly disturbs?: readonly string[];
}

export interface RawKind {
  readonly settings: Readonly<Record<string, unknown>>;
  readonly operations: Readonly<Record<string, RawOperation>>;
  readonly parts: Readonly<Record<string, RawPart>>;
}

export interface Change {
  readonly part: string;
  readonly to: string;
  readonly how: 'mark' | 'words';
  readonly verb: string | null;
}

export interface Step {
  readonly changes: readonly Change[];
  readonly values: readonly string[];
}

export interface Job {
  readonly name: string | null;
  readonly steps: readonly Step[];
}

const stages = ['strip', 'bench', 'before-start', 'running', 'road'];
const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();
const list = (any: string | readonly string[]): readonly string[] =>
  typeof any === 'string' ? [any] : any;

const rawKinds = new Map<string, RawKind>();

/** A kind's data as its file has it; read once. */
function rawKind(name: string): RawKind {
  const path = join(import.meta.dirname, '..', '..', 'src', 'kinds', `${name}.yaml`);
  const kind = rawKinds.get(name) ?? (parse(readFileSync(path, 'utf8')) as RawKind);
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
    for (const [setting, keys] of Object.entries(front.settings)) {
      const called = names?.settingNamed(setting)?.name ?? setting;
      if (!own.includes(called) || keys[key] === undefined) continue;
      const word = plain(String(keys[key]));
      const meant = Object.entries(kind.parts[part]?.conditions ?? {}).find(
        ([to, { aliases = [] }]) => [to, ...aliases].some((each) => plain(each) === word),
      );
      if (meant) return meant[0];
    }
    return null;
  };
  return jobsCanBeDone(jobsOf(text, kind, kindName), kind, features, said);
}

/** The condition that a setting of an operation names under a key; null where none does. */
type Said = (own: readonly string[], part: string, key: string) => string | null;

/** Whether jobs can be done one after the other, by the rules of a kind. */
export function jobsCanBeDone(
  jobs: readonly Job[],
  kind: RawKind,
  features: readonly string[] = [],
  said: Said = () => null,
): boolean {
  return inOrder(jobs, kind) && simulate(jobs, kind, features, said);
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

/** Everything that has to come before an operation, by way of others too. */
function allBefore(name: string, kind: RawKind): ReadonlySet<string> {
  const found = new Set<string>();
  const look = [name];
  for (let next = look.pop(); next !== undefined; next = look.pop()) {
    for (const each of kind.operations[next]?.after ?? []) {
      if (!found.has(each)) look.push(each);
      found.add(each);
    }
  }
  return found;
}

function inOrder(jobs: readonly Job[], kind: RawKind): boolean {
  const names = jobs.flatMap(({ name }) => name ?? []);
  return names.every((name, at) => {
    if (names.indexOf(name) < at) return true;
    const before = allBefore(name, kind);
    return names.every(
      (other, there) => there <= at || names.indexOf(other) < there || !before.has(other),
    );
  });
}

interface Now {
  readonly is: string;
  readonly by: 'start' | 'mark' | 'words' | 'work';
}

function simulate(
  jobs: readonly Job[],
  kind: RawKind,
  features: readonly string[],
  saidOf: Said,
): boolean {
  const there = (part: string): boolean => {
    const only = kind.parts[part]?.['if-feature'];
    return only === undefined || only.some((feature) => features.includes(feature));
  };
  const satisfies = (part: string, is: string, wanted: readonly string[]): boolean =>
    wanted.includes(is) ||
    (kind.parts[part]?.conditions[is]?.['counts-as'] ?? []).some((each) => wanted.includes(each));
  const marked = new Set(
    jobs.flatMap(({ steps }) =>
      steps.flatMap(({ changes }) => changes.filter((c) => c.how === 'mark').map((c) => c.part)),
    ),
  );
  const state = new Map<string, Now>();
  for (const [part, { starts }] of Object.entries(kind.parts))
    if (starts !== undefined && there(part)) state.set(part, { is: starts, by: 'start' });
  const made = new Map<string, Job>();
  const stale = new Set<string>();
  const done = new Set<string>();
  let stage = -1;
  let fine = true;
  let hasRun = false;

  const spoil = (settings: readonly string[], by: Job, own: readonly string[]): void => {
    for (const each of settings)
      if (made.has(each) && made.get(each) !== by && !own.includes(each)) stale.add(each);
  };
  const allHome = (): boolean =>
    Object.entries(kind.parts).every(([part, { home }]) => {
      const now = state.get(part);
      return (
        (home?.length ?? 0) === 0 ||
        now === undefined ||
        !there(part) ||
        satisfies(part, now.is, home ?? [])
      );
    });
  const require = (part: string, wanted: readonly string[], job: Job, upTo: Step): void => {
    if (!kind.parts[part] || !there(part)) return;
    const now = state.get(part);
    if (now && satisfies(part, now.is, wanted)) return;
    const isDoubtful = now?.by === 'words' || ((!now || now.by === 'start') && !marked.has(part));
    const soFar = job.steps.slice(0, job.steps.indexOf(upTo) + 1);
    const isSaid = soFar.some(({ changes }) =>
      changes.some((c) => c.part === part && satisfies(part, c.to, wanted)),
    );
    if (!(isDoubtful && isSaid)) fine = false;
  };

  for (const job of jobs) {
    const rules = job.name === null ? undefined : kind.operations[job.name];
    const own = rules
      ? (rules.settings ?? (job.name && kind.settings[job.name] ? [job.name] : []))
      : [];
    if (job.steps.length === 0 && (!rules || rules.stage === 'any')) continue;
    const rank = stages.indexOf(rules?.stage ?? '');
    const starts = (step: Step): boolean =>
      step.changes.some((c) => kind.parts[c.part]?.conditions[c.to]?.['starts-up']);
    if (rank > stage) {
      if (stage >= 0 && stale.size > 0 && (hasRun || !job.steps.some(starts))) fine = false;
      stage = rank;
    } else if (rank >= 0 && rank < stage) {
      const [starter, { starts: rest = '' }] = Object.entries(kind.parts).find(
        ([, { conditions }]) => Object.values(conditions).some((c) => c['starts-up']),
      ) ?? ['', { starts: '' }];
      const said = job.steps[0]?.changes.find((c) => c.part === starter)?.to;
      const now = state.get(starter);
      if ((said ?? (now && now.by !== 'start' ? now.is : '')) !== rest) fine = false;
    }
    const measuring =
      job.steps.find((step) => step.values.some((v) => own.includes(v))) ?? job.steps.at(-1);
    const needs = new Map<string, readonly string[]>(
      Object.entries(rules?.needs ?? {}).map(([part, wanted]) => [part, list(wanted)]),
    );
    for (const [part, key] of Object.entries(rules?.['needs-said'] ?? {})) {
      const meant = saidOf(own, part, key);
      if (meant !== null) needs.set(part, [meant]);
    }
    const isAnywhere =
      own.length > 0 && !job.steps.some((step) => step.values.some((v) => own.includes(v)));
    const met = new Set<string>();
    for (const step of job.steps) {
      for (const change of step.changes) {
        const rule = kind.parts[change.part]?.conditions[change.to];
        if (!rule) throw new Error(`${change.part} ${change.to}`);
        const now = state.get(change.part);
        const home = kind.parts[change.part]?.home ?? [];
        if (change.how === 'mark') {
          if (
            change.verb === 'put-back' &&
            home.includes(change.to) &&
            now &&
            now.by !== 'words' &&
            satisfies(change.part, now.is, [change.to])
          )
            fine = false;
          for (const [other, { is, by }] of state) {
            if (other === change.part || by === 'start' || by === 'words') continue;
            if (step.changes.some((c) => c.part === other)) continue;
            const shutOut = kind.parts[other]?.conditions[is]?.forbids?.[change.part];
            if (shutOut && satisfies(change.part, change.to, list(shutOut))) fine = false;
          }
        }
        state.set(change.part, { is: change.to, by: change.how });
        for (const [part, to] of Object.entries(rule.leaves ?? {})) {
          if (step.changes.some((c) => c.part === part && c.how === 'mark')) continue;
          const [then = ''] = list(to);
          const before = state.get(part)?.is ?? '';
          if (before === then ? change.how === 'words' : satisfies(part, before, [then])) continue;
          state.set(part, { is: then, by: change.how });
        }
        if (now?.is === change.to) continue;
        spoil(rule.disturbs ?? [], job, []);
        for (const [part, wanted] of Object.entries(rule.needs ?? {})) {
          const inStep = step.changes.findLast((c) => c.part === part);
          if (inStep && satisfies(part, inStep.to, list(wanted))) continue;
          require(part, list(wanted), job, step);
        }
        if (rule['starts-up']) {
          for (const name of rule.after ?? [])
            if (jobs.some((j) => j.name === name) && !done.has(name) && job.name !== name)
              fine = false;
          if ((stale.size > 0 && !hasRun) || !allHome()) fine = false;
          hasRun = true;
        }
      }
      if (rules) {
        for (const [part, wanted] of needs) {
          const now = state.get(part);
          if (isAnywhere && now && satisfies(part, now.is, wanted)) met.add(part);
        }
      }
      if (step === measuring && rules) {
        for (const [part, wanted] of needs) if (!met.has(part)) require(part, wanted, job, step);
        spoil(rules.disturbs ?? [], job, own);
      }
      for (const value of step.values) {
        made.set(value, job);
        stale.delete(value);
      }
    }
    for (const [part, to] of Object.entries(rules?.leaves ?? {})) {
      const now = state.get(part);
      if (!now || !satisfies(part, now.is, list(to)))
        state.set(part, { is: list(to)[0] ?? '', by: 'work' });
    }
    if (job.name) done.add(job.name);
  }
  return fine && stale.size === 0 && allHome();
}
