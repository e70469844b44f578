import { comparedRows } from '../../concordance/index.ts';
import type {
  Concordance,
  ConcordanceRow,
  ConcordanceSource,
  Said,
  Standing,
} from '../../concordance/model.ts';
import { visible } from '../../text/index.ts';
import { wrap } from '../wrap.ts';

/** The signs in front of a statement; they are told apart without color. */
const signs: Readonly<Record<Standing, string>> = {
  figure: '*',
  agrees: '=',
  differs: '≠',
  unread: '?',
};

/** What the signs mean, in one line for the foot of the table. */
const signsInWords = '* the figure of the sheet  = the same size  ≠ differs  ? cannot be read';

const gap = 2;
const narrowest = 13;

/**
 * One sheet's concordance as a table of `width` columns: a line a setting, a column a source, and
 * below a line why a source that differs is not followed. Sources that do not fit side by side follow
 * in a table of their own. `rows` are those of the concordance, or some of them.
 */
export function concordanceText(
  { sheet, title, sources }: Concordance,
  rows: readonly ConcordanceRow[],
  width: number,
): string {
  const lines = hung(`${title} (${sheet})`, '', '  ', width);
  const nameWidth = Math.max(...sources.map((source) => nameOf(source).length), 0);
  for (const source of sources) {
    const said = [source.title, source.facts === '' ? null : source.facts];
    const words = said.filter((word) => word !== null).join(', ') || 'no source is named';
    lines.push(
      ...hung(words, `  ${nameOf(source).padEnd(nameWidth)}  `, ' '.repeat(nameWidth + 4), width),
    );
  }
  const labels = rows.map(({ label }) => visible(label).length);
  const first = Math.min(Math.max(8, ...labels), Math.floor(width / 4.5));
  const most = Math.max(1, Math.floor((width - first) / (narrowest + gap)));
  for (let from = 0; from < sources.length; from += most) {
    const band = sources.slice(from, from + most);
    const told = rows.filter(
      ({ cells }) => from === 0 || cells.slice(from, from + most).some((cell) => cell.length > 0),
    );
    if (told.length > 0) lines.push('', ...table(band, told, from, first, width));
  }
  return `${lines.join('\n')}\n`;
}

function table(
  sources: readonly ConcordanceSource[],
  rows: readonly ConcordanceRow[],
  from: number,
  first: number,
  width: number,
): string[] {
  const each = Math.floor((width - first) / sources.length) - gap;
  const line = (cells: readonly string[]): string =>
    cells
      .map((cell, index) => cell.padEnd(index === 0 ? first : each))
      .join(' '.repeat(gap))
      .trimEnd();
  const names = sources.map((source) => nameOf(source).slice(0, each));
  const rule = [first, ...sources.map(() => each)].map((length) => '-'.repeat(length));
  const out = [line(['', ...names]), line(rule)];
  for (const { label, cells } of rows) {
    const here = cells.slice(from, from + sources.length);
    const columns = [
      wrap(visible(label), first),
      ...here.map((cell) => cell.flatMap((said) => cellLines(said, each))),
    ];
    const height = Math.max(...columns.map((column) => column.length));
    for (let at = 0; at < height; at++) out.push(line(columns.map((column) => column[at] ?? '')));
    here.forEach((cell, index) => {
      for (const { ruling, note } of cell) {
        const name = names[index] ?? '';
        if (ruling !== null) out.push(...hung(ruling, `    ${name}: `, '      ', width));
        if (note !== null) out.push(...hung(note, `    ${name}, note: `, '      ', width));
      }
    });
  }
  return out;
}

/** `≠ No. 30 drill`, its page and its difference below it. */
function cellLines({ written, page, standing, difference }: Said, width: number): string[] {
  const below = [page, difference].filter((word) => word !== null).join(', ');
  const text = written ?? 'the same';
  return [
    ...hung(text, `${signs[standing]} `, '  ', width),
    ...(below === '' ? [] : hung(below, '  ', '  ', width)),
  ];
}

function nameOf({ name }: ConcordanceSource): string {
  return name === null ? '(unnamed)' : visible(name);
}

/** A sentence behind a lead, its further lines set in. */
function hung(text: string, lead: string, inset: string, width: number): string[] {
  const room = Math.max(8, width - Math.max(lead.length, inset.length));
  return wrap(visible(text), room).map((part, i) => `${i === 0 ? lead : inset}${part}`.trimEnd());
}

export interface ConcordancesOptions {
  /** The rows are those that sources differ on, and no others. */
  readonly differing: boolean;
  /** Also rows that one source alone speaks to. */
  readonly all: boolean;
  readonly width: number;
  /** Whether they are of all sheets of a project. */
  readonly whole: boolean;
}

/** Tables of several sheets below one another, with the signs explained; a sentence where there is nothing. */
export function concordancesText(
  concordances: readonly Concordance[],
  { all, differing, width, whole }: ConcordancesOptions,
): string {
  const blocks = concordances.flatMap((concordance) => {
    const rows = all || differing ? concordance.rows : comparedRows(concordance);
    return rows.length === 0 ? [] : [concordanceText(concordance, rows, width)];
  });
  if (blocks.length === 0) {
    const where = whole ? 'of these sheets' : 'of the sheet';
    const what = differing ? 'differ on a setting' : 'speak to one setting together';
    return `No two sources ${where} ${what}.\n`;
  }
  return `${blocks.join('\n')}\n${signsInWords}\n`;
}
