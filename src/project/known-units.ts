import { resolve } from 'node:path';
import type { ListedUnit } from '../import/index.ts';
import { levelName } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import { readSheet } from '../sheet/index.ts';
import type { Sheet } from '../sheet/model.ts';
import type { Project } from './project.ts';
import { readOwnText } from './read-text.ts';

/** A sheet of the project, as reports show its file. */
export interface KnownSheet {
  readonly sheet: Sheet;
  readonly file: string;
}

/** The units that a project has sheets of already, whatever their files are called. */
export class KnownUnits {
  readonly #byName = new Map<string, (KnownSheet & { readonly path: string })[]>();

  constructor(project: Project, kind: Kind) {
    const { gauges, wireGauge } = project.context(project.root);
    for (const path of project.sheets()) {
      const file = project.show(path);
      const read = readOwnText(project.root, path, file);
      if (!read.ok) continue;
      const sheet = readSheet(read.text, file, { kinds: project.kinds, gauges, wireGauge });
      const { maker, model } = sheet.unit;
      if (sheet.kind?.name !== kind.name || maker === null || model === null) continue;
      const key = nameKey(maker.value, model.value);
      this.#byName.set(key, [...(this.#byName.get(key) ?? []), { sheet, file, path }]);
    }
  }

  /**
   * The sheet of a listed unit: of the same maker and model and, where both say any, with a part
   * number in common; the one at `path` first. Null where there is none.
   */
  sheetOf(unit: ListedUnit, path: string): KnownSheet | null {
    const same = (this.#byName.get(nameKey(unit.maker, unit.model)) ?? []).filter(({ sheet }) => {
      const numbers = sheet.unit.partNumbers.map((number) => levelName(String(number.value)));
      const own = unit.partNumbers.map(levelName);
      return (
        numbers.length === 0 || own.length === 0 || own.some((number) => numbers.includes(number))
      );
    });
    return same.find((each) => each.path === resolve(path)) ?? same[0] ?? null;
  }
}

function nameKey(maker: string, model: string): string {
  return `${levelName(maker)} ${levelName(model)}`;
}
