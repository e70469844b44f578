import type { EditionReadCount, SheetReadCount } from '../rereading/index.ts';
import { fewestDifferences } from '../rereading/index.ts';
import { jsonText, visible } from '../text/index.ts';
import type { Paint } from './paint.ts';
import { wrap } from './wrap.ts';

const heads = ['', 'figures', 'twice', 'measured', 'differ', 'settled', 'left'] as const;

/** How far the sheets of an edition are, as a table; and below it how many errors are probably left. */
export function readingsText({ sheets, whole }: EditionReadCount, ink: Paint): string {
  const rows = [
    ...sheets.map((row) => [visible(row.sheet), ...cells(row)]),
    ['all sheets', ...cells(whole)],
  ];
  const widths = heads.map((head, column) =>
    Math.max(head.length, ...rows.map((row) => (row[column] ?? '').length)),
  );
  const line = (row: readonly string[]) =>
    row
      .map((cell, column) =>
        column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0),
      )
      .join('  ')
      .trimEnd();
  const out = [ink.dim(line(heads)), ...rows.map(line), '', ...wrap(estimateWords(whole), 80)];
  return `${out.join('\n')}\n`;
}

/** The same counts as one JSON object, on one line. */
export function readingsJson(counts: EditionReadCount): string {
  return `${jsonText(counts)}\n`;
}

function cells(row: Omit<SheetReadCount, 'sheet' | 'title' | 'status'>): string[] {
  const { figures, twice, measured, differences, settled, estimate } = row;
  const left = estimate === null ? '' : `~${estimate.left.toFixed(1)}`;
  return [figures, twice, measured, differences, settled].map(String).concat(left);
}

/** Says the estimate as one, with its interval and what it rests on; or why there is none. */
function estimateWords({ settled, estimate }: EditionReadCount['whole']): string {
  if (estimate === null) {
    const many = settled === 1 ? '1 settled difference' : `${settled} settled differences`;
    return `Errors left: not estimated from ${many}; at least ${fewestDifferences} are needed.`;
  }
  const { left, low, high } = estimate;
  return (
    `Errors left in what was read twice: an estimate of ${left.toFixed(1)}, with 95 % between ` +
    `${low.toFixed(1)} and ${high.toFixed(1)} (two readers as two catches: Lincoln and Petersen, ` +
    `with Chapman's correction), from ${settled} settled differences. It takes the readers to err each for ` +
    'themselves; where a smudge misleads both, more are left.'
  );
}
