import { levelName } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import { columnLetters } from './cell-address.ts';
import { againstValues } from './guess-by-values.ts';
import { guessHead, type HeadGuess, rowFieldOf } from './head-words.ts';
import type { List, Table, TableRow } from './list-model.ts';
import { type ColumnMapping, isShared, type Mapping, type Target, targetText } from './mapping.ts';
import { unitHabit } from './unit-habit.ts';
import type { SizeTools } from './written-size.ts';

/** What the command line settles before anything is guessed; null where it says nothing. */
export interface Told {
  readonly kind: string | null;
  readonly maker: string | null;
  readonly features: readonly string[];
}

/** A column's guess as it goes into the mapping. */
export interface ColumnGuess extends ColumnMapping {
  readonly confidence: HeadGuess['confidence'];
  /** Half a sentence: why it was taken for that, or what is missing. */
  readonly because: string;
}

export interface MappingGuess {
  readonly mapping: Mapping;
  readonly columns: readonly ColumnGuess[];
  /** What the editor has to settle before the list can be read; whole sentences. */
  readonly open: readonly string[];
}

/** Heads stand in one of so many rows that hold something. */
const HEADS_AMONG = 12;

interface Candidate {
  readonly table: Table;
  readonly row: TableRow;
  readonly kind: Kind;
  readonly layout: Mapping['layout'];
  readonly guesses: ReadonlyMap<number, HeadGuess>;
  readonly score: number;
}

/**
 * Proposes how a list is read, from its heads and its values. Null where no row looks like heads of
 * any kind of unit.
 */
export function guessMapping(
  list: List,
  kinds: ReadonlyMap<string, Kind>,
  told: Told,
  tools: SizeTools,
): MappingGuess | null {
  let best: Candidate | null = null;
  for (const table of list.tables.filter((each) => !each.hidden)) {
    for (const row of table.rows.slice(0, HEADS_AMONG)) {
      for (const kind of kinds.values()) {
        if (told.kind !== null && kind.name !== told.kind) continue;
        for (const found of [unitHeads(table, row, kind, tools), settingHeads(table, row, kind)]) {
          if (found !== null && found.score > (best?.score ?? 0)) best = found;
        }
      }
    }
  }
  return best === null ? null : settled(best, list, told, tools);
}

function unitHeads(table: Table, row: TableRow, kind: Kind, tools: SizeTools): Candidate | null {
  const guesses = new Map<number, HeadGuess>();
  let score = 0;
  for (const [column, cell] of row.cells) {
    if (cell.type !== 'text' || table.hiddenColumns.has(column)) continue;
    const guess = guessHead(cell.text, kind, tools);
    guesses.set(column, guess);
    const weight = guess.confidence === 'sure' ? 2 : guess.confidence === 'likely' ? 1 : 0;
    // What only this kind knows tells more than a head that every list has.
    score += weight * (guess.to.to === 'field' ? 1 : 2);
  }
  return score < 4 ? null : { table, row, kind, layout: 'row-is-unit', guesses, score };
}

/** Heads `Setting` and `Value`, and names of settings below the one. */
function settingHeads(table: Table, row: TableRow, kind: Kind): Candidate | null {
  const guesses = new Map<number, HeadGuess>();
  let settingColumn: number | null = null;
  let hasValue = false;
  const because = 'the head says it';
  for (const [column, cell] of row.cells) {
    if (cell.type !== 'text') continue;
    const field = rowFieldOf(cell.text);
    if (field === 'setting') settingColumn = column;
    if (field === 'value') hasValue = true;
    if (field !== null) {
      guesses.set(column, { to: { to: 'row', field }, unit: null, confidence: 'sure', because });
    }
  }
  if (settingColumn === null || !hasValue) return null;
  const at = settingColumn;
  const below = table.rows.filter((each) => each.row > row.row).slice(0, 200);
  const known = below.filter((each) => kind.settingNamed(each.cells.get(at)?.text ?? '') !== null);
  if (known.length === 0 || known.length * 2 < below.length) return null;
  const keys = new Set([...kind.settings.values()].flatMap((setting) => setting.mustSay));
  for (const [column, cell] of row.cells) {
    if (guesses.has(column) || cell.type !== 'text') continue;
    const key = levelName(cell.text);
    const said: Target = { to: 'row-said', key };
    const guess: HeadGuess = keys.has(key)
      ? { to: said, unit: null, confidence: 'sure', because }
      : guessHead(cell.text, kind, noTools);
    guesses.set(column, isForRows(guess.to) ? guess : unknown);
  }
  return { table, row, kind, layout: 'row-is-setting', guesses, score: 1000 + known.length };
}

/** Heads of a list of settings state no unit, so nothing is read. */
const noTools: SizeTools = { gauges: { find: () => null, all: () => [] }, swg: null };

const unknown: HeadGuess = {
  to: { to: 'nothing' },
  unit: null,
  confidence: 'none',
  because: 'no name is near',
};

function isForRows({ to }: Target): boolean {
  return to === 'field' || to === 'row-said' || to === 'unit' || to === 'feature';
}

function settled(best: Candidate, list: List, told: Told, tools: SizeTools): MappingGuess {
  const { table, row, kind, layout, guesses } = best;
  const place = { table, heads: row.row, kind };
  const taken = new Map<string, string>();
  const columns: ColumnGuess[] = [];
  const valueUnits = new Map<string, string | null>();
  for (const [column, guess] of [...withKeys(guesses, row, kind)].sort(([a], [b]) => a - b)) {
    const head = row.cells.get(column)?.text ?? '';
    let { to, unit, confidence, because } =
      layout === 'row-is-unit' ? againstValues(guess, column, place, tools) : guess;
    if (to.to === 'value' && valueUnits.has(to.setting) && valueUnits.get(to.setting) !== unit) {
      to = { to: 'also', setting: to.setting };
      because = 'the same setting in another unit';
    }
    const name = targetText(to);
    const other = taken.get(name);
    if (other !== undefined && !isShared(to)) {
      because = `column ${other} is ${name} already`;
      columns.push({
        column,
        head,
        to: { to: 'nothing' },
        unit: null,
        confidence: 'none',
        because,
      });
      continue;
    }
    taken.set(name, columnLetters(column));
    if (to.to === 'value') valueUnits.set(to.setting, unit);
    if (to.to === 'value' || to.to === 'also') {
      const habit = unitHabit(table, row.row, column, kind, to.setting, unit, tools);
      if (unit === null && habit !== null) {
        because = `${because}; ${habit}`;
        confidence = 'likely';
      }
    }
    columns.push({ column, head, to, unit, confidence, because });
  }
  const first = list.tables.find((each) => !each.hidden);
  const mapping: Mapping = {
    table: table.name === '' || (first === table && list.tables.length === 1) ? null : table.name,
    heads: row.row,
    first: null,
    last: null,
    layout,
    kind: kind.name,
    maker: told.maker,
    features: told.features,
    source: { title: null, kind: null, year: null },
    merged: 'list',
    hidden: 'skip',
    says: new Map(),
    columns,
  };
  return { mapping, columns, open: openPoints(mapping, kind) };
}

/** A head that is only a key (`Gasket`) belongs to the one mapped setting that must say it. */
function withKeys(
  guesses: ReadonlyMap<number, HeadGuess>,
  row: TableRow,
  kind: Kind,
): ReadonlyMap<number, HeadGuess> {
  const mapped = [...guesses.values()].flatMap(({ to }) => (to.to === 'value' ? [to.setting] : []));
  return new Map(
    [...guesses].map(([column, guess]) => {
      if (guess.confidence === 'sure') return [column, guess];
      const key = levelName(row.cells.get(column)?.text ?? '').replace(/^measured-/, '');
      const owners = mapped.filter((name) => kind.settings.get(name)?.mustSay.includes(key));
      const [setting, ...more] = owners;
      if (setting === undefined || more.length > 0) return [column, guess];
      const because = `of the settings here only ${setting} has to say it`;
      const to: Target = { to: 'said', setting, key };
      return [column, { to, unit: null, confidence: 'likely', because }];
    }),
  );
}

/** What keeps a list from being read at all. */
export function openPoints(mapping: Mapping, kind: Kind): readonly string[] {
  const open: string[] = [];
  const has = (wanted: (to: Target) => boolean) => mapping.columns.some(({ to }) => wanted(to));
  const isField = (name: string) => (to: Target) => to.to === 'field' && to.field === name;
  if (!has(isField('model'))) open.push('No column is the model: give one `to: model`.');
  if (mapping.maker === null && !has(isField('maker'))) {
    open.push('Nothing says who made the units: give a column `to: maker`, or write `maker:`.');
  }
  const isFeature = (to: Target) => to.to === 'feature' || isField('features')(to);
  if (!has(isFeature)) {
    for (const set of kind.oneOf) {
      if (set.some((name) => mapping.features.includes(name))) continue;
      open.push(
        `Nothing says which of these the units are: ${set.join(', ')}. Write it under \`features:\`.`,
      );
    }
  }
  if (mapping.layout === 'row-is-unit' && !has((to) => to.to === 'value')) {
    open.push(`No column is a setting of a ${kind.name}.`);
  }
  return open;
}
