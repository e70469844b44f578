import { defineCheck } from './define.ts';
import { meant, probably } from './likely-misprint.ts';
import { unreadSizes } from './stated-sizes.ts';

/** A drill, wire or leaf that no maker's index has. */
export default defineCheck({
  id: 'gauge-nonexistent',
  severity: 'error',
  group: 'sizes',
  depth: 0,
  summary: 'A drill or wire is named that does not exist.',
  explain:
    'Nobody can set by it, so the name or the number is a misprint. The nearest that exist are named; ' +
    'which of them is right only the source can say.',
  messages: {
    nonexistent: { message: '{problem}', fix: '{fix}' },
  },
  run(sheet, context, report) {
    for (const { size, setting, subject, problem } of unreadSizes(
      sheet,
      (code) => code === 'no-such-gauge',
    )) {
      const { message, fix } = problem;
      report({
        message: 'nonexistent',
        span: size.span,
        suggest: () => meant(size, setting, sheet, context, problem),
        values: {
          problem: message,
          fix: probably(size, setting, sheet, context) + (fix ?? 'look in the source again'),
        },
        subject,
      });
    }
  },
  examples: [
    {
      name: 'a number past the end of the index',
      sheet: { settings: 'unloader: { value: No. 129 drill, from: m48 p. 33 }' },
      expect: [
        {
          at: 'No. 129 drill',
          message:
            'there is no drill No. 129; number drills run from 1 to 97 (near it: No. 29 drill, No. 19 drill, No. 12 drill)',
          fix: 'look in the source again: No. 29 drill or No. 19 drill or No. 12 drill?',
        },
      ],
    },
    {
      name: 'a fraction that no drill has',
      sheet: {
        settings:
          'float-level: { value: 13/64 in, gauge: 13/62 drill, at: free end, gasket: removed, from: m48 p. 31 }',
      },
      expect: [
        {
          at: '13/62 drill',
          message:
            'there is no 13/62 drill; the nearest are No. 4 drill (0.2090 in) and No. 3 drill (0.2130 in)',
          fix: '13/64 drill, if the denominator is wrong; otherwise write No. 4 drill or No. 3 drill, as the source has it',
        },
      ],
    },
    {
      name: 'a wire that no gauge has',
      sheet: { settings: 'fast-idle-gap: { value: 0.028 in, gauge: 77 AWG, from: m48 p. 34 }' },
      expect: [
        {
          at: '77 AWG',
          message: 'there is no AWG 77; AWG runs from 6/0 to 50 (near it: 7 AWG)',
          fix: 'look in the source again: 7 AWG?',
        },
      ],
    },
    {
      name: 'the last number that there is',
      sheet: {
        settings:
          'idle-tube: { value: No. 97 drill, from: m48 p. 28 }\nunloader: { value: drill Z, gauge: 25 mm drill, from: m48 p. 33 }',
      },
      expect: [],
    },
  ],
});
