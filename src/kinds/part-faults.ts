import { nearestName } from '../text/nearest-name.ts';
import type { KindData, StatesData } from './data.ts';
import type { KindFault } from './faults.ts';
import { changes } from './lexicon.ts';

type Path = readonly (string | number)[];

/**
 * What is wrong among the parts of a kind and wherever its data names one: a part, a condition, a
 * verb group, a feature, an operation or a setting that is not there, a start twice. In the order of
 * the file's sections.
 */
export function partFaults(data: KindData): KindFault[] {
  const faults: KindFault[] = [];
  const parts = data.parts ?? {};
  const conditionsOf = (part: string): readonly string[] =>
    Object.keys(parts[part]?.conditions ?? {});

  const add = (
    path: Path,
    message: string,
    name: string,
    names: readonly string[],
    onKey = false,
  ) => {
    const near = nearestName(name, names);
    const fix = near
      ? `did you mean \`${near}\`?`
      : names.length > 0
        ? `write one of them: ${names.map((each) => `\`${each}\``).join(', ')}`
        : 'take it out';
    faults.push({ path, onKey, message, fix });
  };
  const part = (name: string, path: Path): boolean => {
    if (Object.hasOwn(parts, name)) return true;
    add(path, `this kind has no part \`${name}\``, name, Object.keys(parts), true);
    return false;
  };
  const condition = (of: string, name: string, path: Path): void => {
    const names = conditionsOf(of);
    if (!names.includes(name)) add(path, `\`${of}\` has no condition \`${name}\``, name, names);
  };
  const states = (found: StatesData | undefined, path: Path): void => {
    for (const [name, any] of Object.entries(found ?? {})) {
      if (!part(name, [...path, name])) continue;
      if (typeof any === 'string') condition(name, any, [...path, name]);
      else
        any.forEach((each, i) => {
          condition(name, each, [...path, name, i]);
        });
    }
  };
  const listed = (
    what: string,
    found: readonly string[] | undefined,
    names: readonly string[],
    path: Path,
  ): void =>
    found?.forEach((name, i) => {
      if (!names.includes(name))
        add([...path, i], `this kind has no ${what} \`${name}\``, name, names);
    });

  for (const [name, operation] of Object.entries(data.operations)) {
    const path = ['operations', name];
    states(operation.needs, [...path, 'needs']);
    states(operation.leaves, [...path, 'leaves']);
    for (const said of Object.keys(operation['needs-said'] ?? {}))
      part(said, [...path, 'needs-said', said]);
    listed('setting', operation.disturbs, Object.keys(data.settings), [...path, 'disturbs']);
  }

  let started: string | null = null;
  for (const [name, own] of Object.entries(parts)) {
    const path = ['parts', name];
    if (own.starts !== undefined) condition(name, own.starts, [...path, 'starts']);
    own.home?.forEach((each, i) => {
      condition(name, each, [...path, 'home', i]);
    });
    listed('feature', own['if-feature'], Object.keys(data.features ?? {}), [...path, 'if-feature']);
    for (const [verb, leads] of Object.entries(own.reads ?? {})) {
      const verbs = [...Object.keys(data.verbs ?? {}), ...Object.keys(changes.verbs)];
      if (!verbs.includes(verb))
        add([...path, 'reads', verb], `this kind has no verbs \`${verb}\``, verb, verbs, true);
      condition(name, leads, [...path, 'reads', verb]);
    }
    for (const [each, said] of Object.entries(own.conditions)) {
      const at = [...path, 'conditions', each];
      said['counts-as']?.forEach((other, i) => {
        condition(name, other, [...at, 'counts-as', i]);
      });
      states(said.needs, [...at, 'needs']);
      states(said.leaves, [...at, 'leaves']);
      states(said.forbids, [...at, 'forbids']);
      listed('operation', said.after, Object.keys(data.operations), [...at, 'after']);
      listed('setting', said.disturbs, Object.keys(data.settings), [...at, 'disturbs']);
      if (said['starts-up'] !== true) continue;
      if (started !== null)
        faults.push({
          path: [...at, 'starts-up'],
          onKey: false,
          message: `both \`${started}\` and \`${name} ${each}\` start the unit`,
          fix: 'leave `starts-up` to one of them',
        });
      started ??= `${name} ${each}`;
    }
  }

  for (const state of Object.keys(data.phrases ?? {})) {
    const [name = '', leads = ''] = state.split(' ');
    if (part(name, ['phrases', state])) condition(name, leads, ['phrases', state]);
  }
  return faults;
}
