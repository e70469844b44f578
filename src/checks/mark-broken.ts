import { brokenMarks } from './broken-marks.ts';
import { defineCheck } from './define.ts';

/** `value[float-level]` and the like: meant for a mark, and printed as it was typed. */
export default defineCheck({
  id: 'mark-broken',
  severity: 'error',
  group: 'reading',
  summary: 'A mark is written so that it is not read as one.',
  explain:
    'A blank, a colon or a bracket in the wrong place turns a mark into plain words: the step prints ' +
    'without its number, and nothing proves its state. So does a mark in code, or in the front matter, ' +
    'where none is read. It cannot be accepted: write it as the finding says, with a backslash before ' +
    'the colon where it is to be printed as it stands.',
  messages: {
    written: {
      message: '`{written}` is not read as a mark',
      fix: 'write `{meant}`',
      suggest: [{ write: '{meant}' }],
    },
    code: {
      message: '`{written}` stands where no mark is read, in code or HTML',
      fix: 'write `{meant}` as plain text, without quotes of code, tags or a deep indent',
    },
    front: {
      message: '`{written}` stands in the front matter, where no mark is read',
      fix: 'write the words themselves, and put `{meant}` into a step',
    },
  },
  run(sheet, _context, report) {
    for (const { span, written, meant, place } of brokenMarks(sheet)) {
      const mendable = place === null && isFree(sheet.text, span.start, span.end);
      report({
        message: place ?? 'written',
        span,
        values: { written, meant },
        suggest: () => {
          const ticks = /`+$/.exec(sheet.text.slice(0, span.start))?.[0].length ?? 0;
          const isCode = sheet.text.slice(span.end).startsWith('`'.repeat(ticks)) && ticks > 0;
          const at = { start: span.start - ticks, end: span.end + ticks };
          return place === 'code' && isCode ? [{ write: meant, at }] : [];
        },
        ...(mendable ? { edits: [{ span, text: meant }] } : {}),
      });
    }
  },
  examples: [
    {
      name: 'without its colon, and with a blank behind it',
      sheet: {
        body: '## Float level\n\n1. Pass the gauge value[float-level].\n2. Lift the gasket. : state[gasket off]\n',
      },
      expect: [
        {
          at: 'value[float-level]',
          message: '`value[float-level]` is not read as a mark',
          fix: 'write `:value[float-level]`',
          fixed: '1. Pass the gauge :value[float-level].',
        },
        {
          at: ': state[gasket off]',
          message: '`: state[gasket off]` is not read as a mark',
          fix: 'write `:state[gasket off]`',
          fixed: '2. Lift the gasket. :state[gasket off]',
        },
      ],
    },
    {
      name: 'in code',
      sheet: { body: '## Float level\n\n1. Pass the gauge: `:value[float-level]`.\n' },
      expect: [
        {
          at: ':value[float-level]',
          message: '`:value[float-level]` stands where no mark is read, in code or HTML',
          fix: 'write `:value[float-level]` as plain text, without quotes of code, tags or a deep indent',
        },
      ],
    },
    {
      name: 'in the front matter',
      sheet: {
        settings:
          "float-drop: { value: 1-1/4 in, at: 'lower than :value[float-level]', from: m48 p. 31 }",
      },
      expect: [
        {
          at: ':value[float-level]',
          message: '`:value[float-level]` stands in the front matter, where no mark is read',
          fix: 'write the words themselves, and put `:value[float-level]` into a step',
        },
      ],
    },
    {
      name: 'marks as they ought to be, words that look like one, and one that is to be printed',
      sheet: {
        body: '## Float level\n\n1. Pass the gauge: :value[float-level]. :state[gasket off]\n2. Write the value (in inches) on the card, and \\:value[float-level] as it is.\n3. Note the state (clean or not) of the valve [needle].\n',
      },
      expect: [],
    },
  ],
});

/** Whether a mark put there would be read as one. */
function isFree(text: string, start: number, end: number): boolean {
  return !/[\p{L}\p{N}:\\[]/u.test(text.charAt(start - 1)) && !/[[{]/.test(text.charAt(end));
}
