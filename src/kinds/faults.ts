import { readUsual, usualOfUnitIn } from './build.ts';
import { commonNames } from './builds-on.ts';
import type { KindData } from './data.ts';
import { drawingFaults } from './drawing-faults.ts';
import { levelName } from './name-book.ts';
import { partFaults } from './part-faults.ts';
import { referenceFaults, unknownName } from './references.ts';
import { type FormulaNames, relationFaults } from './relation-faults.ts';
import { stateFaults } from './state-faults.ts';

/** Something a kind's data says that its schema cannot see to be wrong. */
export interface KindFault {
  /** Keys and 0-based list indexes from the root. */
  readonly path: readonly (string | number)[];
  readonly onKey: boolean;
  readonly message: string;
  readonly fix: string | null;
}

type Path = readonly (string | number)[];

/** Common kinds that a kind builds on and that there are none of. */
export function commonFaults(data: KindData): KindFault[] {
  const known = commonNames();
  return (data['builds-on'] ?? []).flatMap((name, i) =>
    known.includes(name)
      ? []
      : [
          {
            path: ['builds-on', i],
            onKey: false,
            message: `the program has no common kind \`${name}\``,
            fix: `write ${known.map((each) => `\`${each}\``).join(' or ')}, or take it out`,
          },
        ],
  );
}

/**
 * What is wrong among the names of a kind: a name that nothing bears, an alias that means two
 * things, operations that wait for one another, a usual range that is no range. `formulas` are the
 * relations that the program knows; null leaves their names unproved. Names first, then the rest in
 * the order of the file's sections; empty where all is well.
 */
export function kindFaults(data: KindData, formulas: FormulaNames | null = null): KindFault[] {
  const faults: KindFault[] = [];
  const add = (path: Path, message: string, fix: string | null = null, onKey = false): void => {
    faults.push({ path, onKey, message, fix });
  };
  const settings = Object.keys(data.settings);

  faults.push(...referenceFaults(data));
  faults.push(...relationFaults(data, formulas));

  for (const [name, setting] of Object.entries(data.settings)) {
    const path = ['settings', name];
    const words = setting.conditions ?? [];
    if (words.length > 0 && !setting.dimensions.includes('condition'))
      add(
        [...path, 'conditions'],
        `\`${name}\` lists conditions, but \`condition\` is not among its dimensions`,
        'add `condition` to `dimensions`',
        true,
      );
    for (const dimension of Object.keys(setting.usual ?? {})) {
      if (setting.dimensions.some((each) => each === dimension)) continue;
      const message = `\`${name}\` has a usual ${dimension}, but it may not be stated as one`;
      add([...path, 'usual', dimension], message, `add \`${dimension}\` to \`dimensions\``, true);
    }
    for (const key of Object.keys(setting['said-by'] ?? {})) {
      if (setting['must-say']?.includes(key)) continue;
      const message = `\`${name}\` has words for \`${key}\`, which it need not say`;
      add([...path, 'said-by', key], message, `add \`${key}\` to \`must-say\``, true);
    }
    if (setting.thread !== undefined && data.unit?.[setting.thread]?.[0] !== 'thread')
      add(
        [...path, 'thread'],
        `\`${setting.thread}\` is no thread of the unit`,
        `add \`${setting.thread}: [thread]\` under \`unit:\``,
      );
    if (setting.bore !== undefined && !data.unit?.[setting.bore]?.some((is) => is === 'length'))
      add(
        [...path, 'bore'],
        `\`${setting.bore}\` is no length of the unit`,
        `add \`${setting.bore}: [length]\` under \`unit:\``,
      );
    if (setting.bore !== undefined && setting.measured !== 'in-bore')
      add(
        [...path, 'bore'],
        `\`${name}\` has a bore, but is not measured in it`,
        'add `measured: in-bore`',
        true,
      );
    const { ranges, faults: unread } = readUsual(setting);
    for (const fault of unread)
      add(
        [...path, 'usual', fault.dimension, fault.end],
        fault.message,
        'write a size with a unit',
      );
    for (const range of ranges) {
      const low = range.low.nominal?.base;
      const high = range.high.nominal?.base;
      if (low && high && low.compare(high) <= 0) continue;
      const message = `${range.low.text} to ${range.high.text} is no range`;
      add([...path, 'usual', range.dimension], message, 'write the lowest first, then the highest');
    }
  }

  for (const [name, usual] of usualOfUnitIn(data)) {
    const path = ['usual-of-unit', name];
    const { ranges, faults: unread } = readUsual({ usual });
    for (const fault of unread)
      add([...path, fault.end], fault.message, 'write a size with a unit');
    for (const { low, high } of ranges) {
      if (low.nominal && high.nominal && low.nominal.base.compare(high.nominal.base) <= 0) continue;
      add(
        path,
        `${low.text} to ${high.text} is no range`,
        'write the lowest first, then the highest',
      );
    }
  }

  for (const [name, operation] of Object.entries(data.operations)) {
    const path = ['operations', name];
    const own = data.settings[name];
    for (const key of ['label', 'explain'] as const) {
      if (operation[key] !== undefined || own) continue;
      const message = `\`${name}\` has no \`${key}\`, and there is no setting of that name to take it from`;
      add(path, message, `add \`${key}:\``, true);
    }
    const made = operation.settings ?? (own ? [name] : []);
    operation.steps?.forEach((step, i) => {
      for (const [, slot = ''] of step.matchAll(/\{([^}]*)\}/g)) {
        const at = [...path, 'steps', i];
        if (slot === 'setting' && made.length !== 1)
          add(
            at,
            `\`{setting}\` stands for one setting, and \`${name}\` makes ${made.length}`,
            'name the setting in the braces',
          );
        else if (slot !== 'setting' && !settings.includes(slot)) {
          const { message, fix } = unknownName('setting', slot, settings);
          add(at, message, fix);
        }
      }
    });
  }

  faults.push(
    ...drawingFaults(data),
    ...partFaults(data),
    ...stateFaults(data),
    ...circles(data),
    ...clashes(data),
  );
  return faults;
}

/** Operations that have to come before themselves; each circle is told once. */
function circles(data: KindData): KindFault[] {
  const faults: KindFault[] = [];
  const done = new Set<string>();
  const visit = (name: string, trail: readonly string[]): void => {
    const start = trail.indexOf(name);
    if (start >= 0) {
      const circle = [...trail.slice(start), name].map((step) => `\`${step}\``);
      const message = `these operations wait for one another: ${circle.join(' after ')}`;
      const path = ['operations', trail.at(-1) ?? name, 'after'];
      faults.push({ path, onKey: true, message, fix: 'take one of the `after` entries out' });
      return;
    }
    if (done.has(name)) return;
    const { after = {}, usual = {} } = data.operations[name] ?? {};
    for (const earlier of [...Object.keys(after), ...Object.keys(usual.after ?? {})])
      visit(earlier, [...trail, name]);
    done.add(name);
  };
  for (const name of Object.keys(data.operations)) visit(name, []);
  return faults;
}

/** Aliases that mean two things in one section. */
function clashes(data: KindData): KindFault[] {
  const faults: KindFault[] = [];
  const sections: Readonly<
    Record<string, Readonly<Record<string, { readonly aliases?: readonly string[] }>>>
  > = {
    features: data.features ?? {},
    settings: data.settings,
    operations: data.operations,
    hazards: data.hazards ?? {},
  };
  const told = new Set<string>();
  for (const [section, entries] of Object.entries(sections)) {
    const owners = new Map(Object.keys(entries).map((name) => [levelName(name), name]));
    for (const [name, entry] of Object.entries(entries)) {
      const inherited = section === 'operations' ? data.settings[name]?.aliases : undefined;
      (entry.aliases ?? inherited ?? []).forEach((alias, i) => {
        const owner = owners.get(levelName(alias));
        owners.set(levelName(alias), owner ?? name);
        if (owner === undefined || owner === name) return;
        const own = entry.aliases !== undefined;
        // An operation that takes its setting's aliases takes the clash too: once is enough.
        if (!own && told.has(levelName(alias))) return;
        if (section === 'settings') told.add(levelName(alias));
        faults.push({
          path: own ? [section, name, 'aliases', i] : [section, name],
          onKey: !own,
          message: `\`${alias}\` means both \`${owner}\` and \`${name}\``,
          fix: 'leave it to one of them',
        });
      });
    }
  }
  return faults;
}
