import type { KindData, NeedsData, OperationData } from './data.ts';
import type { KindFault } from './faults.ts';
import { listOf } from './parts.ts';
import { marksOf, type Reached, reachedStates } from './reached.ts';
import { partTrial, readingFaults } from './trial-words.ts';

type Path = readonly (string | number)[];

/**
 * What of a kind can never come to bear: rules that no work can break or keep, needs that nothing can meet,
 * parts that nothing moves, conditions that no step can reach, readings that nothing uses, settings that
 * no operation makes. For data that `kindFaults` has passed; in the order of the file's sections. Empty
 * where everything in it is of use.
 */
export function kindTrial(data: KindData): readonly KindFault[] {
  const faults: KindFault[] = [];
  const add = (path: Path, message: string, fix: string, onKey = true): void => {
    faults.push({ path, onKey, message, fix });
  };
  const reached = reachedStates(data);
  const makers = makersOf(data);

  for (const name of Object.keys(data.settings))
    if (!makers.has(name))
      add(
        ['settings', name],
        `no operation makes \`${name}\``,
        `name it under \`settings:\` of an operation, or add an operation \`${name}\``,
      );
  for (const [name, { needs }] of Object.entries(data.settings))
    needFaults(data, needs, ['settings', name, 'needs'], reached, add);

  for (const [name, operation] of Object.entries(data.operations))
    operationFaults(data, name, operation, { reached, makers, add });

  const met = new Set(Object.values(data.operations).flatMap(({ hazards = [] }) => hazards));
  for (const name of Object.keys(data.hazards ?? {}))
    if (!met.has(name))
      add(
        ['hazards', name],
        `no operation meets the hazard \`${name}\``,
        'name it under `hazards:` of the operations whose steps meet it, or take it out',
      );

  partTrial(data, reached, add);

  for (const [state, { needs, disturbs = {} }] of Object.entries(data.states ?? {})) {
    needFaults(data, needs, ['states', state, 'needs'], reached, add);
    for (const setting of Object.keys(disturbs))
      if (!makers.has(setting))
        add(
          ['states', state, 'disturbs', setting],
          `\`${state}\` moves \`${setting}\`, and no operation makes it again`,
          'add an operation that makes it, or take the rule out',
        );
  }
  readingFaults(data, add);
  return faults;
}

/** Takes a fault down: its place, what is wrong, its cure, and whether it points at the key. */
export type Add = (path: Path, message: string, fix: string, onKey?: boolean) => void;

/** The operations that make each setting, or measure it too. */
function makersOf(data: KindData): ReadonlyMap<string, readonly string[]> {
  const makers = new Map<string, string[]>();
  for (const [name, operation] of Object.entries(data.operations))
    for (const setting of [...madeBy(data, name, operation), ...(operation['also-measures'] ?? [])])
      makers.set(setting, [...(makers.get(setting) ?? []), name]);
  return makers;
}

function madeBy(data: KindData, name: string, { settings }: OperationData): readonly string[] {
  return settings ?? (Object.hasOwn(data.settings, name) ? [name] : []);
}

function operationFaults(
  data: KindData,
  name: string,
  operation: OperationData,
  {
    reached,
    makers,
    add,
  }: {
    readonly reached: Reached;
    readonly makers: ReadonlyMap<string, readonly string[]>;
    readonly add: Add;
  },
): void {
  const path = ['operations', name];
  const made = madeBy(data, name, operation);
  const { usual = {} } = operation;
  const rules = ['after', 'needs', 'disturbs', 'leaves', 'usual'] as const;
  if (operation.stage === 'any') {
    for (const key of rules)
      if (operation[key] !== undefined)
        add(
          [...path, key],
          `\`${name}\` stands anywhere and is no work, so its \`${key}\` is never looked at`,
          'give it the stage that its work belongs to, or take the rule out',
        );
    return;
  }
  for (const [under, { after = {}, disturbs = {} }] of [
    [path, operation],
    [[...path, 'usual'], usual],
  ] as const) {
    for (const earlier of Object.keys(after)) {
      const other = data.operations[earlier];
      if (other && isNoWork(data, earlier, other))
        add(
          [...under, 'after', earlier],
          `\`${name}\` comes after \`${earlier}\`, which makes, moves and needs nothing`,
          `say what \`${earlier}\` makes or leaves, or take the rule out`,
        );
    }
    for (const setting of Object.keys(disturbs)) {
      const at = [...under, 'disturbs', setting];
      if (made.includes(setting))
        add(
          at,
          `\`${name}\` moves \`${setting}\`, which it makes itself`,
          'take the rule out: what is made last holds',
        );
      else if (!makers.has(setting))
        add(
          at,
          `\`${name}\` moves \`${setting}\`, and no operation makes it again`,
          'add an operation that makes it, or take the rule out',
        );
    }
  }
  const stated = new Set(made.flatMap((setting) => data.settings[setting]?.dimensions ?? []));
  for (const [needs, at] of [
    [operation.needs, [...path, 'needs']],
    [usual.needs, [...path, 'usual', 'needs']],
  ] as const) {
    needFaults(data, needs, at, reached, add);
    for (const [part, need] of Object.entries(needs ?? {}))
      need['unless-stated']?.forEach((dimension, i) => {
        if (stated.has(dimension)) return;
        add(
          [...at, part, 'unless-stated', i],
          `nothing that \`${name}\` makes may be stated as ${dimension}`,
          `add it to \`dimensions\` of the setting, or take it out`,
          false,
        );
      });
  }
}

/** Work that changes and asks for nothing that could be told: no order with it can be wrong. */
function isNoWork(data: KindData, name: string, operation: OperationData): boolean {
  const { needs, leaves, disturbs, usual, steps = [] } = operation;
  const rules = [needs, leaves, disturbs, usual?.needs, usual?.disturbs];
  return (
    madeBy(data, name, operation).length === 0 &&
    (operation['also-measures'] ?? []).length === 0 &&
    rules.every((each) => Object.keys(each ?? {}).length === 0) &&
    marksOf(steps).length === 0 &&
    // What its steps say in words may still move something.
    steps.length === 0
  );
}

/** Needs that nothing meets or nothing breaks, and states named in them that nothing reaches. */
function needFaults(
  data: KindData,
  needs: NeedsData | undefined,
  path: Path,
  { can, moved }: Reached,
  add: Add,
): void {
  for (const [part, need] of Object.entries(needs ?? {})) {
    const at = [...path, part];
    const { conditions = {}, starts } = data.parts?.[part] ?? {};
    const meets = (condition: string): boolean => {
      const counts = [condition, ...(conditions[condition]?.['counts-as'] ?? [])];
      const wanted = listOf(need.is);
      const barred = listOf(need.not);
      return (
        (wanted.length === 0 || counts.some((each) => wanted.includes(each))) &&
        !counts.some((each) => barred.includes(each))
      );
    };
    const all = Object.keys(conditions);
    if (!all.some((each) => meets(each) && can.has(`${part} ${each}`)))
      add(
        at,
        `no words of a step are read as bringing the \`${part}\` into what is needed here`,
        'add the verbs or the step that does, or take the need out',
      );
    else if (
      starts !== undefined &&
      meets(starts) &&
      !all.some((each) => !meets(each) && moved.has(`${part} ${each}`))
    )
      add(
        at,
        `nothing can break this need: the \`${part}\` starts so, and nothing brings it out of that`,
        'add what moves it, or take the need out',
      );
    for (const key of ['while', 'unless'] as const)
      for (const [other, any] of Object.entries(need[key] ?? {}))
        if (!listOf(any).some((each) => can.has(`${other} ${each}`)))
          add(
            [...at, key, other],
            key === 'while'
              ? `this need never holds: nothing brings the \`${other}\` into that state`
              : `nothing lifts this need: no step brings the \`${other}\` into that state`,
            'correct the state, or add what brings it about',
          );
  }
}
