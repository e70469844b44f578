import { orderProof } from '../checks/order-proof.ts';
import { type TraceRow, type TraceStage, traceOf } from '../order/index.ts';
import type { PartState, StateChange } from '../order/model.ts';
import { examineFile } from '../project/examine-file.ts';
import type { Target } from '../project/targets.ts';
import { visible } from '../report/index.ts';
import { regionIn } from '../sheet/index.ts';
import type { Sheet } from '../sheet/model.ts';
import { type Io, say } from './io.ts';
import type { ExitStatus } from './run.ts';

const legend = `A state with a question mark was read from words, which stand in quotes; without one it is
marked, or follows by itself. Only what a step alters is shown, and the whole state where a
stage of the work begins.
`;

/** The state of the unit after every step of some sheets, a table each. 2 where one cannot be read. */
export function trace(targets: readonly Target[], io: Io): ExitStatus {
  let refused = false;
  const tables: string[] = [];
  for (const { project, path } of targets) {
    const examined = examineFile(project, path);
    if (!examined.ok) {
      refused = true;
      say(io, `gaugeleaf: ${examined.refused.message}`);
      continue;
    }
    const proof = orderProof(examined.sheet);
    if (proof === null) {
      refused = true;
      say(io, `gaugeleaf: ${examined.sheet.file} is of no kind of unit that is known`);
      continue;
    }
    tables.push(traceTable(examined.sheet, traceOf(proof.walk, proof.kind)));
  }
  if (tables.length > 0) io.stdout.write(`${legend}\n${tables.join('\n')}`);
  return refused ? 2 : 0;
}

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
