import { comparedRows, concordanceOf } from '../../concordance/index.ts';
import type { Said, Standing } from '../../concordance/model.ts';
import type { Sheet } from '../../sheet/model.ts';
import type { SheetFace, SourceLine } from '../matter/index.ts';
import type { Margins, PaperSize } from '../orders/index.ts';

/** What the template `concordance.hbs` is given. */
export interface ConcordanceModel {
  readonly language: string;
  readonly face: SheetFace;
  readonly paper: PaperSize;
  readonly margins: Margins;
  readonly sources: readonly SourceLine[];
  readonly tables: readonly ConcordanceTable[];
}

/** One statement as the table prints it. */
interface StatementLine {
  /** The sign in front of it, which tells how it stands without color. */
  readonly sign: string;
  readonly standing: Standing;
  /** As its source wrote it; null where the sheet only says that it is the same figure. */
  readonly written: string | null;
  /** Page and difference in one line; null for neither. */
  readonly under: string | null;
}

/** What is said of a statement below its row: why it is not followed, or a note. */
interface StatementRemark {
  readonly mark: string;
  readonly words: string;
}

/** A table of settings by sources: as many sources as the paper has room for. */
export interface ConcordanceTable {
  /** How many columns it has, that of the settings among them. */
  readonly span: number;
  readonly columns: readonly { readonly mark: string; readonly title: string }[];
  readonly rows: readonly {
    readonly label: string;
    readonly cells: readonly (readonly StatementLine[])[];
    readonly differs: boolean;
    readonly remarks: readonly StatementRemark[];
  }[];
}

/** The signs of a concordance in print. */
const statementSigns: Readonly<Record<Standing, string>> = {
  figure: '●',
  agrees: '=',
  differs: '≠',
  unread: '?',
};

/**
 * The concordance of a sheet for print: the settings that several sources speak to, a column a
 * source under its letter. More sources than `most` make a second table; empty where there is nothing
 * to compare.
 */
export function concordanceTables(
  sheet: Sheet,
  sources: readonly SourceLine[],
  most: number,
): readonly ConcordanceTable[] {
  const concordance = concordanceOf(sheet);
  const rows = comparedRows(concordance);
  // A source that speaks to none of these rows needs no column.
  const columns = concordance.sources
    .map((source, index) => ({ source, index }))
    .filter(({ index }) => rows.some(({ cells }) => (cells[index] ?? []).length > 0));
  const tables: ConcordanceTable[] = [];
  for (let from = 0; from < columns.length; from += most) {
    const here = columns.slice(from, from + most).map(({ source, index }) => ({
      index,
      mark: sources.find(({ name }) => name === source.name)?.mark ?? source.name ?? '–',
      title: source.title ?? source.name ?? 'no source is named',
    }));
    const said = (cells: readonly (readonly Said[])[]) =>
      here.map(({ index }) => cells[index] ?? []);
    tables.push({
      span: here.length + 1,
      columns: here.map(({ mark, title }) => ({ mark, title })),
      rows: rows
        .filter(({ cells }) => said(cells).some((cell) => cell.length > 0))
        .map(({ label, cells, differs }) => ({
          label,
          differs,
          cells: said(cells).map((cell) => cell.map(statementLine)),
          remarks: said(cells).flatMap((cell, at) =>
            cell.flatMap((one) => remarksOf(one, here[at]?.mark ?? '')),
          ),
        })),
    });
  }
  return tables;
}

function statementLine({ standing, written, page, difference }: Said): StatementLine {
  const under = [page, difference].filter((word) => word !== null).join(', ');
  return { sign: statementSigns[standing], standing, written, under: under === '' ? null : under };
}

function remarksOf({ ruling, note }: Said, mark: string): StatementRemark[] {
  return [ruling, note].flatMap((words) => (words === null ? [] : [{ mark, words }]));
}

/** A unit's tables in the booklet, below its number and title. */
export interface UnitConcordance {
  readonly number: number;
  readonly anchor: string;
  readonly title: string;
  readonly tables: readonly ConcordanceTable[];
}

/**
 * The concordances of a booklet: the settings on which sources differ, of the units that have such. Rulings
 * are left out of them, for they stand in the chapters.
 */
export function unitConcordances(
  sheets: readonly { readonly sheet: Sheet }[],
  chapters: readonly {
    readonly number: number;
    readonly anchor: string;
    readonly face: { readonly title: string };
    readonly sources: readonly SourceLine[];
  }[],
  most: number,
): readonly UnitConcordance[] {
  return chapters.flatMap(({ number, anchor, face, sources }, index) => {
    const entry = sheets[index];
    if (entry === undefined) return [];
    const tables = concordanceTables(entry.sheet, sources, most)
      .map((table) => ({
        ...table,
        rows: table.rows.filter(({ differs }) => differs).map((row) => ({ ...row, remarks: [] })),
      }))
      .filter(({ rows }) => rows.length > 0);
    return tables.length === 0 ? [] : [{ number, anchor, title: face.title, tables }];
  });
}

/** How many sources stand side by side on a paper; more make a second table. */
export function sourcesAcross(paper: { readonly small: boolean }): number {
  return paper.small ? 4 : 5;
}
