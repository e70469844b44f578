import { parse } from 'csv-parse/sync';
import { decodeList } from './decode-list.ts';
import { type List, ListFault, listBounds } from './list-model.ts';
import { TableBuilder } from './table-builder.ts';

const delimiters = [',', ';', '\t'] as const;
const names = { ',': 'commas', ';': 'semicolons', '\t': 'tabs' } as const;

/**
 * Reads a CSV file (RFC 4180, with the delimiters and quoting that spreadsheets write). Rows count
 * as a spreadsheet counts them that opens the file. Fails with `ListFault`.
 */
export function readCsv(bytes: Uint8Array): List {
  const { text, settled } = decodeList(bytes);
  if (text.includes('\0')) {
    throw new ListFault('the file holds zero bytes, so it is no table of text');
  }
  const delimiter = delimiterOf(text);
  const table = new TableBuilder({ cells: 0 });
  for (const [index, record] of records(text, delimiter).entries()) {
    const row = index + 1;
    for (const [at, written] of record.entries()) {
      const column = at + 1;
      table.add({ row, column, text: written, raw: written, type: 'text', formula: false });
    }
  }
  const told = settled === null ? [] : [settled];
  if (delimiter !== ',') told.push(`its cells are parted by ${names[delimiter]}`);
  return { format: 'csv', tables: [table.build('', false)], settled: told };
}

function records(text: string, delimiter: string): string[][] {
  try {
    return parse(text, {
      delimiter,
      relax_column_count: true,
      // `1-7/16"` in an unquoted cell is a size in inches.
      relax_quotes: true,
      skip_empty_lines: false,
      max_record_size: 1024 * 1024,
      to: listBounds.row + 1,
    });
  } catch (error) {
    const { code, lines } = error as { code?: string; lines?: number };
    const where = lines === undefined ? '' : ` near line ${lines}`;
    throw new ListFault(
      code === 'CSV_QUOTE_NOT_CLOSED'
        ? `a quotation mark is opened${where} and never closed`
        : `the file cannot be read as a table${where}`,
      'open it in a spreadsheet program, look there, and save it again',
    );
  }
}

/**
 * The delimiter by which the first rows fall into the most alike cells. One that parts nothing
 * cannot win over one that does; a comma where none parts anything.
 */
function delimiterOf(text: string): ',' | ';' | '\t' {
  let best: { delimiter: ',' | ';' | '\t'; score: number } = { delimiter: ',', score: 0 };
  for (const delimiter of delimiters) {
    const counts = widths(text, delimiter);
    const common = mostCommon(counts);
    const alike = counts.filter((count) => count === common).length / Math.max(1, counts.length);
    const score = common < 2 ? 0 : alike * Math.min(common, 20);
    if (score > best.score) best = { delimiter, score };
  }
  return best.delimiter;
}

/** Cells of each of the first twenty lines that hold something, quoted stretches counted as one. */
function widths(text: string, delimiter: string): number[] {
  const counts: number[] = [];
  let count = 1;
  let quoted = false;
  let empty = true;
  const end = Math.min(text.length, 64 * 1024);
  for (let i = 0; i < end && counts.length < 20; i += 1) {
    const sign = text[i];
    if (quoted) {
      if (sign === '"') quoted = false;
      continue;
    }
    // A mark inside a cell is an inch sign; only one at a cell's start quotes it.
    if (sign === '"' && /^[,;\t\n\r]?$/.test(text[i - 1] ?? '')) quoted = true;
    else if (sign === delimiter) count += 1;
    else if (sign === '\n' || sign === '\r') {
      if (!empty) counts.push(count);
      count = 1;
      empty = true;
      continue;
    }
    if (sign !== ' ' && sign !== delimiter) empty = false;
  }
  if (!empty) counts.push(count);
  return counts;
}

function mostCommon(counts: readonly number[]): number {
  const tally = new Map<number, number>();
  for (const count of counts) tally.set(count, (tally.get(count) ?? 0) + 1);
  let best = 0;
  for (const [count, times] of tally) {
    const most = tally.get(best) ?? 0;
    if (times > most || (times === most && count > best)) best = count;
  }
  return best;
}
