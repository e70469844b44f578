import { applyEdits } from '../../report/index.ts';
import { keepEdits } from '../../rereading/index.ts';
import type { Comparison, Settled } from '../../rereading/model.ts';
import { writeWhole } from '../write-whole.ts';
import type { ReadingFile } from './reading-file.ts';

/** Writes into a reading's file what was compared and settled; nothing where it says so already. */
export function keepReading(
  { path, text }: ReadingFile,
  compared: Comparison,
  settled: readonly Settled[],
): void {
  const kept = applyEdits(text, keepEdits(text, compared, settled));
  if (kept !== text) writeWhole(path, kept, { within: path, was: text });
}
