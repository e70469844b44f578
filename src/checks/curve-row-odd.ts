import { rowOff } from '../relations/index.ts';
import { bandText, curvesOf, stationText } from '../sheet/index.ts';
import { defineCheck } from './define.ts';

/** A row that leaves the straight line of all others. */
export default defineCheck({
  id: 'curve-row-odd',
  severity: 'note',
  group: 'sizes',
  depth: 3,
  summary: 'One row of a table leaves the straight line that all others keep to.',
  explain:
    'Where a table of five rows or more is a straight line but for one row, that row may be a misprint. It may ' +
    'also be how the unit is made: compare it with the source.',
  messages: {
    off: {
      message: '{value} at {at} leaves the line of all other rows, which has {line} there',
      fix: 'compare the row with its source',
    },
  },
  run(sheet, _context, report) {
    for (const setting of curvesOf(sheet)) {
      const off = rowOff(setting);
      const value = off?.row.row.value;
      if (!off || !value) continue;
      report({
        message: 'off',
        span: value.span,
        values: {
          value: value.text,
          at: stationText(off.row.row),
          line: bandText({ low: off.line, high: off.line }, value, off.row.row),
        },
        subject: setting.id,
      });
    }
  },
  examples: [
    {
      name: 'a row above the line',
      sheet: {
        settings:
          'pump-curve:\n  table:\n    - { at: 1/8 in, value: 0.50 ± 0.05 cm3 }\n    - { at: 3/16 in, value: 0.76 ± 0.05 cm3 }\n    - { at: 1/4 in, value: 1.02 ± 0.05 cm3 }\n    - { at: 5/16 in, value: 1.45 ± 0.05 cm3 }\n    - { at: 3/8 in, value: 1.54 ± 0.05 cm3 }\n  from: m48 p. 35',
      },
      expect: [
        {
          at: '1.45 ± 0.05 cm3',
          message:
            '1.45 ± 0.05 cm3 at 5/16 in leaves the line of all other rows, which has 1.28 cm3 there',
          fix: 'compare the row with its source',
        },
      ],
    },
    {
      name: 'a row whose limit the line just reaches',
      sheet: {
        settings:
          'pump-curve:\n  table:\n    - { at: 1/8 in, value: 0.50 ± 0.05 cm3 }\n    - { at: 3/16 in, value: 0.76 ± 0.05 cm3 }\n    - { at: 1/4 in, value: 1.02 ± 0.05 cm3 }\n    - { at: 5/16 in, value: 1.33 ± 0.05 cm3 }\n    - { at: 3/8 in, value: 1.54 ± 0.05 cm3 }\n  from: m48 p. 35',
      },
      expect: [],
    },
  ],
});
