import type { TraceRow, TraceStage } from '../order/index.ts';
import type { PartState, StateChange } from '../order/model.ts';
import { regionIn } from '../sheet/index.ts';
import type { Sheet } from '../sheet/model.ts';
import { visible } from '../text/index.ts';

/** What stands above tables of traces, to read them by. */
export const traceLegend = `A state with a question mark was read from words, which stand in quotes; without one it is
marked, or follows by itself. Only what a step alters is shown, and the whole state where a
stage of the work begins.
`;

/** A sheet's trace as a table of aligned columns, ending in a line feed. */
export function traceTable(sheet: Sheet, rows: readonly (TraceRow | TraceStage)[]): string {
  const cells = rows.map((row) => (row.kind === 'stage' ? null : cellsOf(sheet, row)));
  const heads = ['line', 'step', 'what it says', 'what is different after it'] as const;
  const widths = heads.map((head, column) =>
    Math.max(head.length, ...cells.map((each) => each?.[column]?.length ?? 0)),
  );
  const line = (texts: readonly string[]): string =>
    `  ${texts
      .map((text, column) =>
        column === 0 ? text.padStart(widths[0] ?? 0) : text.padEnd(widths[column] ?? 0),
      )
      .join('  ')
      .trimEnd()}`;
  const lines = [visible(sheet.file), line(heads)];
  rows.forEach((row, index) => {
    if (row.kind === 'stage') lines.push(`  -- ${row.stage}: ${states(row.state)}`);
    else lines.push(line(cells[index] ?? []));
  });
  return `${lines.join('\n')}\n`;
}

function cellsOf(sheet: Sheet, row: TraceRow): readonly string[] {
  return [
    lineOf(sheet, row.offset),
    visible(`${row.operation}${row.number === null ? '' : ` ${row.number}`}`),
    row.changes.map((change) => saidBy(change, sheet)).join('; '),
    states(row.after),
  ];
}

/** The line of a step; of one that the sheet takes from its base, with that file's name. */
function lineOf(sheet: Sheet, offset: number): string {
  const { file, line } = regionIn(sheet, { start: offset, end: offset });
  return file === sheet.file ? String(line) : visible(`${file}:${line}`);
}

function saidBy({ term, by, span }: StateChange, sheet: Sheet): string {
  const state = `${term.part} ${term.condition}`;
  if (by !== 'reading') return state;
  const words = sheet.text.slice(span.start, span.end).replace(/\s+/g, ' ');
  return visible(`${state}? “${words}”`);
}

function states(found: readonly (readonly [string, PartState])[]): string {
  return found
    .map(([part, { condition, by }]) => `${part} ${condition}${by === 'reading' ? '?' : ''}`)
    .join(', ');
}
