import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The rows of a reference table, column name to cell; the files lie here as they were received. */
export function referenceRows(file: string): Record<string, string>[] {
  const text = readFileSync(join(import.meta.dirname, 'reference', file), 'utf8');
  const [head = '', ...lines] = text.trimEnd().split('\n');
  const names = head.split('\t');
  return lines.map((line) =>
    Object.fromEntries(line.split('\t').map((cell, i) => [names[i] ?? '', cell])),
  );
}
