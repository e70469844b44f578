import { settingNamed } from '../sheet/index.ts';
import { isBrokenMark } from './broken-marks.ts';
import { defineCheck } from './define.ts';
import { nearest } from './vocabulary.ts';

const inText = ['value', 'state'] as const;
const messages = ['danger', 'warning', 'caution', 'notice'] as const;

/** `:name[...]` or `:::name` with a name that means nothing on a sheet. */
export default defineCheck({
  id: 'directive-unknown',
  severity: 'error',
  group: 'reading',
  summary: 'A mark in the text has a name that means nothing on a sheet.',
  explain:
    'In the text a sheet knows `:value[setting]` and `:state[part condition]`; set off by three ' +
    'colons it knows the safety messages. Anything else is printed as it was typed: a step ' +
    'without its number, a warning without its frame. It cannot be accepted.',
  messages: {
    near: {
      message: '`{written}` means nothing on a sheet',
      fix: 'write `{near}`',
      suggest: [{ write: '{near}' }],
    },
    text: {
      message: '`{written}` means nothing on a sheet',
      fix: 'write `:value[setting]` or `:state[part condition]`, or put a backslash before the colon to print it as it stands',
      suggest: [{ before: '\\', behind: '' }],
    },
    block: {
      message: '`{written}` means nothing on a sheet',
      fix: 'write `:::danger`, `:::warning`, `:::caution` or `:::notice`, or take the colons out',
      suggest: [{ takeOut: 'words' }],
    },
  },
  run(sheet, _context, report) {
    for (const { kind, name, span } of sheet.directives) {
      if (kind !== 'text' && isBrokenMark(span, sheet)) continue;
      const names: readonly string[] = kind === 'text' ? inText : messages;
      const start = span.start + colonsAt(sheet.text, span.start);
      const end = start + name.length;
      const written = sheet.text.slice(span.start, end);
      const place = { start: span.start, end };
      const near = names.find((known) => known === name.toLowerCase()) ?? nearest(name, names);
      if (near === null) {
        const message = kind === 'text' ? 'text' : 'block';
        report({ message, span: place, values: { written } });
        continue;
      }
      const meant = kind === 'text' ? `:${near}` : `:::${near}`;
      // Certain only here: no other mark takes the name of a setting.
      const label = kind === 'text' && near === 'value' ? labelOf(sheet.text, end, span.end) : null;
      const sure = label !== null && settingNamed(label, sheet) !== null;
      report({
        message: 'near',
        span: place,
        values: { written, near: meant },
        ...(sure ? { edits: [{ span: { start, end }, text: near }] } : {}),
      });
    }
  },
  examples: [
    {
      name: 'a misspelt mark around the name of a setting: certain, so mended',
      sheet: { body: '## Float level\n\n1. Pass the gauge: :vaule[float-level].\n' },
      expect: [
        {
          at: ':vaule',
          message: '`:vaule` means nothing on a sheet',
          fix: 'write `:value`',
          fixed: '1. Pass the gauge: :value[float-level].',
        },
      ],
    },
    {
      name: 'a misspelt mark around something else',
      sheet: { body: '## Float level\n\n1. Lift the gasket. :stat[gasket off]\n' },
      expect: [{ at: ':stat', message: '`:stat` means nothing on a sheet', fix: 'write `:state`' }],
    },
    {
      name: 'a mark that sheets do not have',
      sheet: { body: '## Float level\n\n1. Use the :tool[feeler gauge].\n' },
      expect: [
        {
          at: ':tool',
          message: '`:tool` means nothing on a sheet',
          fix: 'write `:value[setting]` or `:state[part condition]`, or put a backslash before the colon to print it as it stands',
        },
      ],
    },
    {
      name: 'a box that sheets do not have',
      sheet: { body: ':::tip\nWarm the nut first.\n:::\n' },
      expect: [
        {
          at: ':::tip',
          message: '`:::tip` means nothing on a sheet',
          fix: 'write `:::danger`, `:::warning`, `:::caution` or `:::notice`, or take the colons out',
        },
      ],
    },
    {
      name: 'plain words with a colon in them, and the marks that sheets have',
      sheet: {
        body: '## Float level\n\n1. At 10:am mix 2:B with :value[float-level]. :state[gasket off]\n',
      },
      expect: [],
    },
  ],
});

/** What stands in the brackets that start at `start`; null where none do, or more follows them. */
function labelOf(text: string, start: number, end: number): string | null {
  return /^\[([^\][]*)\]$/.exec(text.slice(start, end))?.[1] ?? null;
}

function colonsAt(text: string, start: number): number {
  let count = 0;
  while (text[start + count] === ':') count++;
  return count;
}
