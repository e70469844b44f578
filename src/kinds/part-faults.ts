import { nearestName } from '../text/index.ts';
import type { KindData, NeedsData, StatesData } from './data.ts';
import type { KindFault } from './faults.ts';
import { changes } from './lexicon.ts';
import { listOf } from './parts.ts';

type Path = readonly (string | number)[];

/**
 * What is wrong among the parts of a kind and wherever its data names one: a part, a condition or a verb
 * group that is not there, a start twice. In the order of the file's sections.
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
  const needs = (found: NeedsData | undefined, path: Path): void => {
    for (const [name, need] of Object.entries(found ?? {})) {
      if (!part(name, [...path, name])) continue;
      for (const key of ['is', 'not', 'from'] as const)
        listOf(need[key]).forEach((each, i) => {
          const at = typeof need[key] === 'string' ? [key] : [key, i];
          condition(name, each, [...path, name, ...at]);
        });
      states(need.unless, [...path, name, 'unless']);
      states(need.while, [...path, name, 'while']);
    }
  };
  for (const [name, setting] of Object.entries(data.settings)) {
    const path = ['settings', name];
    needs(setting.needs, [...path, 'needs']);
    needs(setting['counted-from'], [...path, 'counted-from']);
    if (setting['says-state'] !== undefined) part(setting['says-state'], [...path, 'says-state']);
  }

  for (const [name, operation] of Object.entries(data.operations)) {
    const path = ['operations', name];
    states(operation.leaves, [...path, 'leaves']);
    for (const said of Object.keys(operation['needs-said'] ?? {}))
      part(said, [...path, 'needs-said', said]);
    for (const [rules, at] of [
      [operation, path],
      [operation.usual ?? {}, [...path, 'usual']],
    ] as const) {
      needs(rules.needs, [...at, 'needs']);
    }
  }

  for (const [name, own] of Object.entries(parts)) {
    const path = ['parts', name];
    if (own.starts !== undefined) condition(name, own.starts, [...path, 'starts']);
    own.home?.forEach((each, i) => {
      condition(name, each, [...path, 'home', i]);
    });
    for (const [verb, leads] of Object.entries(own.reads ?? {})) {
      const verbs = [...Object.keys(data.verbs ?? {}), ...Object.keys(changes.verbs)];
      if (!verbs.includes(verb))
        add([...path, 'reads', verb], `this kind has no verbs \`${verb}\``, verb, verbs, true);
      condition(name, leads, [...path, 'reads', verb]);
    }
    for (const [each, said] of Object.entries(own.conditions)) {
      said['counts-as']?.forEach((other, i) => {
        condition(name, other, [...path, 'conditions', each, 'counts-as', i]);
      });
    }
  }

  let started: string | null = null;
  for (const [state, said] of Object.entries(data.states ?? {})) {
    const at = ['states', state];
    const [name = '', each = ''] = state.split(' ');
    if (part(name, at)) condition(name, each, at);
    needs(said.needs, [...at, 'needs']);
    needs(said.follows, [...at, 'follows']);
    needs(said.bars, [...at, 'bars']);
    listOf(said['comes-from']?.is).forEach((from) => {
      condition(name, from, [...at, 'comes-from', 'is']);
    });
    if (said['starts-up'] !== true) continue;
    if (started !== null)
      faults.push({
        path: [...at, 'starts-up'],
        onKey: false,
        message: `both \`${started}\` and \`${state}\` start the unit`,
        fix: 'leave `starts-up` to one of them',
      });
    started ??= state;
  }

  for (const state of Object.keys(data.phrases ?? {})) {
    const [name = '', leads = ''] = state.split(' ');
    if (part(name, ['phrases', state])) condition(name, leads, ['phrases', state]);
  }
  return faults;
}
