import type { Finding } from '../../src/checks/define.ts';
import { type FileReport, placeFindings } from '../../src/report/index.ts';
import { LineIndex } from '../../src/text/span.ts';

/** A file with one wrong size; the invented findings below point into it. */
export const text = [
  '---',
  'settings:',
  '  unloader:',
  '    value: No. 29 drill',
  '    also: [0.163 in]',
  '    note: 😀 about 2 turns',
  '---',
  '',
].join('\n');

export function at(words: string): { start: number; end: number } {
  const start = text.indexOf(words);
  if (start < 0) throw new Error(`the specimen has no ${words}`);
  return { start, end: start + words.length };
}

export function finding(more: Partial<Finding>): Finding {
  return {
    check: 'sizes-disagree',
    severity: 'error',
    file: 'sheets/orlo.md',
    span: at('0.163 in'),
    message: 'No. 29 drill is 0.1360 in, but `also` says 0.163 in (0.027 in more)',
    fix: '0.136 in, if two digits were swapped; otherwise correct the drill',
    compared: ['No. 29 drill', '0.163 in'],
    related: [{ span: at('No. 29 drill'), label: 'the value' }],
    edits: null,
    subject: 'unloader',
    accepted: null,
    ...more,
  };
}

export const findings: readonly Finding[] = [
  finding({}),
  finding({
    check: 'chopped',
    severity: 'warning',
    span: at('about 2 turns'),
    message: 'a message with 100% of the odd: characters, all of them',
    fix: null,
    compared: null,
    related: [],
    edits: [{ span: at('about 2 turns'), text: ':value[idle]' }],
  }),
  finding({
    check: 'loosely-rounded',
    severity: 'warning',
    span: at('No. 29 drill'),
    message: 'loose',
    related: [],
    accepted: 'the maker rounds so',
  }),
  finding({
    check: 'usual-range',
    severity: 'note',
    span: at('unloader'),
    message: 'high',
    fix: null,
    related: [],
  }),
];

export const reports: readonly FileReport[] = [
  { file: 'sheets/orlo.md', findings: placeFindings(findings, new LineIndex(text)) },
  { file: 'sheets/clean.md', findings: [] },
];
