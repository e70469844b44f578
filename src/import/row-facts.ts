import type { Kind } from '../kinds/model.ts';
import { nearestName } from '../text/index.ts';
import { dayIn, typedBefore } from './calendar.ts';
import { cellName } from './cell-address.ts';
import { featureSaid, featureWords, yesOrNo } from './feature-words.ts';
import type { ListGrid } from './list-grid.ts';
import type { Cell, TableRow } from './list-model.ts';
import type { ListedUnit, NamedPaper } from './listed-unit.ts';
import type { Field, Mapping } from './mapping.ts';
import { cellText, readCell, saysNothing } from './read-cell.ts';
import type { Slip } from './slip.ts';
import type { SizeTools } from './written-size.ts';

/** Reads what a row says of its unit besides settings. Slips go into the list that is handed in. */
export class RowFacts {
  readonly #grid: ListGrid;
  readonly #mapping: Mapping;
  readonly #kind: Kind;
  readonly #tools: SizeTools;
  readonly #slips: Slip[];

  constructor(grid: ListGrid, mapping: Mapping, kind: Kind, tools: SizeTools, slips: Slip[]) {
    this.#grid = grid;
    this.#mapping = mapping;
    this.#kind = kind;
    this.#tools = tools;
    this.#slips = slips;
  }

  /** The cell of a field; null where no column is it, or the row says nothing there. */
  cell(row: TableRow, field: Field): Cell | null {
    const column = this.column(field);
    const cell = column === null ? null : this.#grid.cell(row, column);
    return saysNothing(cell) ? null : cell;
  }

  /** The column of a field, 1-based; null where none is it. */
  column(field: Field): number | null {
    const found = this.#mapping.columns.find(({ to }) => to.to === 'field' && to.field === field);
    return found?.column ?? null;
  }

  text(row: TableRow, field: Field): string | null {
    const cell = this.cell(row, field);
    return cell === null ? null : cellText(cell);
  }

  maker(row: TableRow): string | null {
    return this.text(row, 'maker') ?? this.#mapping.maker;
  }

  paper(row: TableRow): NamedPaper | null {
    const title = this.text(row, 'source');
    if (title === null) return null;
    return { title, year: this.text(row, 'source-year'), page: this.text(row, 'page') };
  }

  /** The unit that a row names, without its settings. */
  unit(row: TableRow, maker: string, model: Cell): ListedUnit {
    for (const field of ['model', 'part-numbers'] as const) this.#dayListed(row, field);
    const numbers = this.text(row, 'part-numbers') ?? '';
    const marque = this.text(row, 'marque');
    return {
      rows: [row.row],
      cell: { row: model.row, column: model.column },
      maker,
      model: cellText(model),
      title: this.text(row, 'title'),
      partNumbers: numbers.split(/\s*[,;]\s*/).filter((number) => number !== ''),
      features: this.#features(row, model),
      fits:
        marque === null
          ? null
          : { marque, model: this.text(row, 'fits-model'), years: this.text(row, 'years') },
      facts: this.#facts(row),
      note: this.text(row, 'note'),
      settings: new Map(),
    };
  }

  #features(row: TableRow, model: Cell): readonly string[] {
    const chosen = new Set(this.#mapping.features);
    let first: Cell | null = null;
    for (const { column, head, to } of this.#mapping.columns) {
      if (to.to !== 'field' || to.field !== 'features') continue;
      const cell = this.#grid.cell(row, column);
      if (cell === null || saysNothing(cell)) continue;
      first ??= cell;
      for (const word of featureWords(cellText(cell))) {
        const feature = featureSaid(word, head, this.#kind);
        if (feature !== null) {
          chosen.add(feature.name);
          continue;
        }
        const near = nearestName(word, this.#kind.features.keys());
        const message = `a ${this.#kind.name} has no feature called \`${word}\``;
        this.#list(cell, 'feature', message, near === null ? [] : [near], 'left out');
      }
    }
    for (const { column, to } of this.#mapping.columns) {
      if (to.to !== 'feature') continue;
      const said = this.#grid.cell(row, column);
      if (said === null || saysNothing(said)) continue;
      const answer = yesOrNo(cellText(said));
      if (answer === 'yes') chosen.add(to.feature);
      else if (answer === null) {
        const message = `neither yes nor no stands under ${to.feature}`;
        this.#list(said, 'feature', message, [], 'left out');
      }
    }
    this.#featuresTogether(chosen, first ?? model);
    return [...this.#kind.features.keys()].filter((name) => chosen.has(name));
  }

  /** Features of which one is needed, or which cannot stand together. */
  #featuresTogether(chosen: ReadonlySet<string>, at: Cell): void {
    for (const set of this.#kind.oneOf) {
      if (set.some((name) => chosen.has(name))) continue;
      this.#list(
        at,
        'feature',
        'none of the features that one is needed of is said',
        set,
        'left out',
      );
    }
    for (const name of chosen) {
      const other = this.#kind.features.get(name)?.excludes.find((each) => chosen.has(each));
      if (other === undefined || other < name) continue;
      const message = `a ${this.#kind.name} cannot be ${name} and ${other} at once`;
      this.#list(at, 'feature', message, [name, other], 'kept');
    }
  }

  #facts(row: TableRow): ReadonlyMap<string, string> {
    const facts = new Map<string, string>();
    for (const { column, to, unit } of this.#mapping.columns) {
      if (to.to !== 'unit') continue;
      const cell = this.#grid.cell(row, column);
      if (cell === null || saysNothing(cell)) continue;
      const dimensions = this.#kind.dimensionsOfUnit.get(to.key);
      if (dimensions === undefined) facts.set(to.key, cellText(cell));
      else {
        const place = { name: to.key, label: to.key, dimensions, usual: [] };
        const read = readCell(cell, place, unit, this.#tools);
        if (read.is === 'size') facts.set(to.key, read.written);
        else if (read.is === 'slip') {
          this.#list(cell, read.code, read.message, read.could, 'left out');
        }
      }
    }
    return facts;
  }

  /** A model or part number that the spreadsheet made a day of. */
  #dayListed(row: TableRow, field: Field): void {
    const cell = this.cell(row, field);
    if (cell?.type !== 'date') return;
    const day = dayIn(cellText(cell));
    const typed = day === null ? [] : typedBefore(day).map((text) => text.replace('/', '-'));
    const message =
      'a day of the calendar stands where a name belongs; the spreadsheet made it of what was typed';
    this.#list(cell, 'date', message, typed, 'kept');
  }

  #list(
    { row, column, text }: Cell,
    code: Slip['code'],
    message: string,
    could: readonly string[],
    outcome: string,
  ): void {
    const at = cellName(row, column);
    this.#slips.push({ code, at, row, column, shown: text, message, could, outcome });
  }
}
