import type { Setting, Sheet } from './model.ts';

/** The settings of a sheet with the rows of a table in its place: whatever states a figure, in order. */
export function figuresIn(settings: ReadonlyMap<string, Setting>): readonly Setting[] {
  const all = [...settings.values()];
  return all.some(({ rows }) => rows.length > 0)
    ? all.flatMap((setting) => (setting.rows.length > 0 ? setting.rows : [setting]))
    : all;
}

/**
 * What cites sources, each citation once: the settings, and the rows of tables with what they cite
 * themselves. A row has the sources of its table in its `from` where it says none.
 */
export function* citing({ settings }: Pick<Sheet, 'settings'>): Generator<Setting> {
  for (const setting of settings.values()) {
    yield setting;
    for (const row of setting.rows) {
      if (row.from !== setting.from) yield row;
      else if (row.but.length > 0) yield { ...row, from: [] };
    }
  }
}

/** The settings of a sheet that are tables, in order; none for nearly every sheet. */
export function curvesOf({ settings }: Pick<Sheet, 'settings'>): readonly Setting[] {
  return [...settings.values()].filter(({ rows }) => rows.length > 0);
}
