import type { Citation, Sheet, Source } from '../sheet/model.ts';
import type { DeskDocument } from './model.ts';

/** Every place where a sheet names a source, those of its bases included. */
export function citationsOf(sheet: Sheet): readonly Citation[] {
  return [...sheet.settings.values()].flatMap((setting) => [
    ...setting.from,
    ...(setting.follows ? [setting.follows] : []),
    ...[...setting.but, ...setting.statements].flatMap(({ from }) => from ?? []),
  ]);
}

/** Sources that other sheets of the project list and this one does not, each name once. */
export function otherSources({ sheet, project }: DeskDocument): readonly Source[] {
  const found = new Map<string, Source>();
  for (const other of project.others?.() ?? []) {
    for (const source of other.sheet.sources.values()) {
      const name = source.name.value;
      if (!source.shared && !sheet.sources.has(name) && !found.has(name)) found.set(name, source);
    }
  }
  return [...found.values()];
}
