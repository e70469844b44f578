import { defineCheck } from './define.ts';
import { meant } from './likely-misprint.ts';
import { unreadSizes } from './stated-sizes.ts';

/** `No. 60`, `60`, `1.5`: a name or number that is a different size in every system. */
export default defineCheck({
  id: 'size-without-system',
  severity: 'error',
  group: 'sizes',
  summary: 'A size has a number or a name, and no unit or gauge system.',
  explain:
    'No. 60 is 0.0400 in on the drill gauge, 0.60 mm as a jet marked in hundredths of a millimeter ' +
    'and 0.060 in as one marked in thousandths. A guess would print one of them as if the source had ' +
    'said it. Find out which the source means and write that; of jets `jets:` under `unit:` says it once.',
  messages: {
    bare: { message: '{problem}', fix: '{fix}' },
  },
  run(sheet, context, report) {
    const isBare = (code: string): boolean => code === 'bare-number' || code === 'no-unit';
    for (const { size, setting, subject, problem } of unreadSizes(sheet, isBare)) {
      const { message, fix } = problem;
      report({
        message: 'bare',
        span: size.span,
        suggest: () => meant(size, setting, sheet, context, problem),
        values: { problem: message, fix: fix ?? 'add the unit' },
        subject,
      });
    }
  },
  examples: [
    {
      name: 'a number that is a drill, a jet or a flow',
      sheet: { settings: 'main-jet: { value: No. 60, from: m48 p. 28 }' },
      expect: [
        {
          at: 'No. 60',
          message:
            'No. 60 has no system: it could be No. 60 drill, 0.0400 in, a jet marked in hundredths of a millimeter, 0.60 mm, a jet marked in thousandths, 0.060 in or a flow number',
          fix: 'say under `unit:` how its maker numbers jets: `jets: hundredths of mm`, `thousandths of in`, `drill` or `flow`',
        },
      ],
    },
    {
      name: 'a decimal with no unit',
      sheet: { settings: 'float-drop: { value: 0.750, from: m48 p. 31 }' },
      expect: [
        {
          at: '0.750',
          message: '0.750 has no unit: it could be 0.750 in or 0.750 mm',
          fix: 'say which: `0.750 in`, for example',
        },
      ],
    },
    {
      name: 'a fraction with no unit',
      sheet: { settings: 'float-drop: { value: 3/4 in, also: [23/32], from: m48 p. 31 }' },
      expect: [
        {
          at: '23/32',
          message: '23/32 has no unit: it could be 23/32 in',
          fix: 'say which: `23/32 in`, for example',
        },
      ],
    },
    {
      name: 'each with its system',
      sheet: {
        settings:
          'main-jet: { value: No. 60 drill, also: [0.0400 in], from: m48 p. 28 }\nidle-tube: { value: 0.60 mm, from: m48 p. 28 }',
      },
      expect: [],
    },
  ],
});
