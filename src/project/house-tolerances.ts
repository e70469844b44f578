import { gaugeBook } from '../gauges/index.ts';
import type { Kind } from '../kinds/model.ts';
import { type HouseTolerances, readHouseTolerance, readSheet } from '../sheet/index.ts';
import { lookup, nearestName, type YamlRead } from '../text/index.ts';
import type { Fault } from './file-faults.ts';
import type { Project } from './project.ts';
import { openSheet } from './sheet-file.ts';

/** What `house-tolerances:` of an edition says, as far as it has the form; null where it says nothing. */
export function houseTolerancesIn(value: unknown): HouseTolerances | null {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return null;
  const kinds: Record<string, Record<string, string>> = {};
  for (const [kind, settings] of Object.entries(value)) {
    if (typeof settings !== 'object' || settings === null || Array.isArray(settings)) continue;
    const texts = Object.entries(settings as object).filter(
      (entry): entry is [string, string] => typeof entry[1] === 'string',
    );
    kinds[kind] = Object.fromEntries(texts);
  }
  return kinds;
}

/** What is wrong with the house's tolerances: names that mean nothing, and what is no tolerance. */
export function houseFaults(
  all: HouseTolerances | null,
  yaml: YamlRead,
  kinds: ReadonlyMap<string, Kind>,
): Fault[] {
  const faults: Fault[] = [];
  const place = (path: readonly string[], which: 'key' | 'value') =>
    lookup(yaml.root, ['house-tolerances', ...path], which) ?? { start: 0, end: 0 };
  for (const [name, settings] of Object.entries(all ?? {})) {
    const kind = kinds.get(name);
    if (kind === undefined) {
      const near = nearestName(name, [...kinds.keys()]);
      faults.push({
        check: 'house-tolerance-unknown',
        span: place([name], 'key'),
        message: `there is no kind of unit \`${name}\`, so its tolerances come to bear on nothing`,
        fix: near === null ? `name a kind: ${[...kinds.keys()].join(', ')}` : `write \`${near}:\``,
      });
      continue;
    }
    for (const [setting, text] of Object.entries(settings)) {
      const known = kind.settingNamed(setting);
      if (known === null) {
        const near = nearestName(setting, [...kind.settings.keys()]);
        faults.push({
          check: 'house-tolerance-unknown',
          span: place([name, setting], 'key'),
          message: `the kind ${name} has no setting \`${setting}\`, so its tolerance comes to bear on nothing`,
          fix: near === null ? `gaugeleaf kind ${name} lists all` : `write \`${near}:\``,
        });
        continue;
      }
      const read = readHouseTolerance(text, known, gaugeBook());
      if ('plus' in read) continue;
      faults.push({
        check: 'house-tolerance-wrong',
        span: place([name, setting], 'value'),
        ...read,
      });
    }
  }
  return faults;
}

/**
 * The tolerances that no setting of any sheet takes: all state limits of their own, or none states the setting.
 * Sheets are read until all tolerances are found in use.
 */
export function idleTolerances(all: HouseTolerances, yaml: YamlRead, project: Project): Fault[] {
  const idle = new Map<string, readonly [kind: string, setting: string]>();
  for (const [name, settings] of Object.entries(all)) {
    const kind = project.kinds.get(name);
    for (const [setting, text] of Object.entries(settings)) {
      const known = kind?.settingNamed(setting);
      if (known && 'plus' in readHouseTolerance(text, known, gaugeBook()))
        idle.set(`${name} ${known.name}`, [name, setting]);
    }
  }
  for (const path of project.sheets()) {
    if (idle.size === 0) break;
    const read = openSheet(project, path);
    if (!read.ok) continue;
    const { text, file, context } = read.opened;
    const sheet = readSheet(text, file, context);
    for (const { house, id } of sheet.settings.values()) {
      if (house !== null && sheet.kind) idle.delete(`${sheet.kind.name} ${id}`);
    }
  }
  return [...idle.values()].map(([kind, setting]) => ({
    check: 'house-tolerance-unused',
    span: lookup(yaml.root, ['house-tolerances', kind, setting], 'key') ?? { start: 0, end: 0 },
    message: `no sheet takes the house's tolerance of \`${setting}\`: none states it without limits of its own`,
    fix: 'take the line out, or leave it for sheets to come',
  }));
}
