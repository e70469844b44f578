import {
  type Assessed,
  type AssessedEntry,
  type AssessedSize,
  limitsText,
  percentWords,
  readingText,
  reasonFor,
  ruleWords,
  tallyWords,
  trustWords,
  type VerdictWord,
  verdictWord,
} from '../conformance/index.ts';
import type { AcceptanceRule } from '../conformance/model.ts';
import { settingLabel, tasksOf } from '../sheet/index.ts';
import { visible } from '../text/index.ts';
import type { JudgedRecord } from './judged-record.ts';
import type { Paint } from './paint.ts';
import { wrap } from './wrap.ts';

/** Signs that tell the verdicts apart without color. */
const signs: Readonly<Record<VerdictWord | 'no reading', string>> = {
  conforms: '✓',
  'does not conform': '✗',
  unproven: '?',
  'no limits': '–',
  'no reading': ' ',
};

/** Widths of the columns number, setting, wanted, as found and as left, blanks between them included. */
const columns = [4, 19, 21, 16, 16] as const;
const indent = ' '.repeat(4);

/** A judged record as a table for a terminal of 80 columns, each reading with its reason. */
export function recordText(judged: JudgedRecord, ink: Paint): string {
  const { record, sheet, assessed, tally } = judged;
  const title = sheet.title?.value ?? record.sheet.value;
  const serial = record.serial === null ? '' : `, no. ${record.serial.value}`;
  const said = [
    record.by,
    record.date,
    record.place,
    record.altitude,
    record.barometer,
    record.temperature,
  ];
  const facts = said.flatMap((each) => each?.value ?? []);
  const out = [
    ink.bold(visible(`${title}${serial}`)),
    ...(facts.length > 0 ? wrap(visible(facts.join(', ')), 80) : []),
    ...wrap(`${ruleWords(assessed.rule)}.`, 80),
    '',
    ink.dim(`${indent}${row(['', 'Setting', 'Wanted', 'As found', 'As left']).join('')}`),
  ];
  const { settings } = tasksOf(sheet);
  for (const entry of assessed.entries) {
    const number = settings.find(({ setting }) => setting === entry.setting)?.number ?? '';
    out.push(...entryLines(entry, number, assessed.rule, ink));
  }
  out.push('', ...wrap(tallyWords(tally, assessed.rule), 80));
  if (assessed.missing.length > 0) {
    const names = assessed.missing.map((setting) => setting.name.value).join(', ');
    out.push(...wrap(visible(`Not in the record: ${names}.`), 80));
  }
  return `${out.join('\n')}\n`;
}

function entryLines(
  { setting, place, wanted, found, left, gauge }: AssessedEntry,
  number: string,
  rule: AcceptanceRule,
  ink: Paint,
): string[] {
  const word = left === null ? 'no reading' : verdictWord(left);
  const label = settingLabel(setting) + (place === null ? '' : `, ${place}`);
  const lines = row([number, label, wanted.text, readingText(found), readingText(left)]);
  const tint = tintOf(word, ink);
  const out = lines.map((line, index) =>
    `  ${index === 0 ? tint(signs[word]) : ' '} ${line}`.trimEnd(),
  );
  const tell = (name: string, text: string, color = (words: string) => words) => {
    const room = 80 - indent.length - 10;
    // A figure is not parted from its unit at the end of a line.
    const held = visible(text).replace(/(\d) (?=[\p{L}°%])/gu, '$1\u00a0');
    wrap(held, room).forEach((line, index) => {
      const words = line.replaceAll('\u00a0', ' ');
      out.push(`${indent}${ink.dim((index === 0 ? name : '').padEnd(10))}${color(words)}`);
    });
  };
  if (found === null && left === null) return out;
  if (wanted.limitsFrom !== null) tell('limits', `from ${wanted.limitsFrom}`);
  if (wanted.carried !== null) tell('carried', wanted.carried);
  if (found !== null && found !== left) tell('as found', sentence(found, wanted.text));
  if (left === null) tell('as left', 'no reading');
  else tell(found === left ? 'both' : 'as left', sentence(left, wanted.text), tint);
  const shown = left ?? found;
  const trust = shown?.form === 'size' ? withWords(shown, rule) : gauge;
  if (trust !== null) tell('with', trust);
  return out;
}

function tintOf(word: VerdictWord | 'no reading', ink: Paint): (text: string) => string {
  if (word === 'conforms') return ink.green;
  if (word === 'does not conform') return ink.red;
  return word === 'unproven' ? ink.yellow : ink.dim;
}

/** `caliper, ± 0.002 in (common practice, no source): accepts 0.1895 in to 0.21675 in`. */
function withWords(assessed: AssessedSize, rule: AcceptanceRule): string | null {
  const trust = trustWords(assessed);
  const { judgment, unit } = assessed;
  const accepted =
    judgment === null || judgment.hopeless || rule === 'simple'
      ? null
      : limitsText(judgment.accepted, unit);
  return trust === null || accepted === null ? trust : `${trust}: accepts ${accepted}`;
}

/** `unproven: 0.003 in inside the upper limit 1.143 mm, within the gauge's 0.006 mm; 84.1 % likely inside`. */
function sentence(assessed: Assessed, wanted: string): string {
  const word = verdictWord(assessed);
  const reason = reasonFor(assessed, wanted);
  if (word === 'no limits') return reason;
  const chance = assessed.form === 'size' ? percentWords(assessed.probability) : null;
  return `${word}: ${reason}${chance === null ? '' : `; ${chance} likely to be inside`}`;
}

/** The cells of a row side by side, broken within their columns; one line at least. */
function row(cells: readonly string[]): string[] {
  const broken = cells.map((cell, index) => wrap(visible(cell), (columns[index] ?? 16) - 1));
  const height = Math.max(...broken.map((lines) => lines.length));
  return Array.from({ length: height }, (_, line) =>
    broken
      .map((lines, index) => (lines[line] ?? '').padEnd(columns[index] ?? 0))
      .join('')
      .trimEnd(),
  );
}
