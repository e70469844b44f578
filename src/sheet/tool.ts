import { LETTERS_PATTERN, namedTool } from '../quantity/index.ts';
import type { Reading } from '../quantity/model.ts';
import type { ReadSize } from './fields.ts';

/** What reads a factory gauge's own size is given. */
type ReadOptions = Parameters<ReadSize>[1];

/** `T-109`, `gauge No. T-109`, `tool J610-2`, each with its size behind it where that is stated. */
const FACTORY = new RegExp(
  "^(?:(?:factory |special |makers?['’]?s? )?(?:gauge|gage|tool|jig|setting gauge)(?: no\\.?| number)? ?)?" +
    `(?!(?:leaf|wire|pins?|rod|nos?|size|drill|${LETTERS_PATTERN}|dia)\\b)` +
    '([A-Za-z]{1,4}(?:[-. ]?\\d{1,6}){1,3}[A-Za-z]?)(?:,? \\(?(?:=|size )?(.+?)\\)?)?$',
  'i',
);

/** A rule, a caliper, an instrument: it reads off any size and proves none, whatever its own length. */
const READS_OFF =
  /\b(?:rules?|ruler|scale|calipers?|callipers?|vernier|micrometer|depth gauge|dial (?:gauge|indicator|test indicator)|protractor|tachometer|rev counter|vacuum gauge|pressure gauge|stop ?watch|straight-?edge|timing light|dwell meter|spring balance|balance|measuring glass|torque wrench)\b/i;

/**
 * Reads what stands under `gauge`. A maker's own gauge goes by a number that is no size: with its size
 * beside it that size counts, without one it is a name and proves nothing; so is an instrument.
 */
export function readTool(text: string, options: ReadOptions, readSize: ReadSize): Reading {
  const plain = text.trim();
  if (READS_OFF.test(plain)) return { ok: true, statement: namedTool(text) };
  const reading = readSize(text, options);
  const factory = FACTORY.exec(plain);
  if (reading.ok || !factory) return reading;
  const size = factory[2];
  if (size === undefined) return { ok: true, statement: namedTool(text) };
  const stated = readSize(size, options);
  return stated.ok ? { ok: true, statement: { ...stated.statement, text } } : stated;
}
