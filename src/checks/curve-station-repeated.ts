import { stationsTwice } from '../relations/index.ts';
import { curvesOf, stationText } from '../sheet/index.ts';
import { defineCheck } from './define.ts';

/** Two rows of a table at one station. */
export default defineCheck({
  id: 'curve-station-repeated',
  severity: 'error',
  group: 'sizes',
  depth: 2,
  summary: 'A table has two rows at one station.',
  explain:
    'Whoever reads the table takes one of the two, and nobody knows which. Mostly a station was typed again ' +
    'in place of the next one. It cannot be accepted, only mended.',
  messages: {
    twice: {
      message: '{at} says {value}, and another row at {first} says {other}',
      fix: 'look in the source which station belongs to the row, or take the row out that is there twice',
    },
  },
  run(sheet, _context, report) {
    for (const setting of curvesOf(sheet)) {
      for (const { row, first } of stationsTwice(setting)) {
        const { station, value } = row.row;
        if (!station) continue;
        const values = {
          at: station.text,
          value: value?.text ?? '',
          first: stationText(first.row),
          other: first.row.value?.text ?? '',
        };
        report({
          message: 'twice',
          span: station.span,
          values,
          compared: [values.first, values.at],
          suggest: () => [{ at: row.row.span, takeOut: 'entry' }],
          related: first.row.station
            ? [{ span: first.row.station.span, label: 'the other row' }]
            : [],
          subject: setting.id,
        });
      }
    }
  },
  examples: [
    {
      name: 'a station typed again',
      sheet: {
        settings:
          'pump-curve:\n  table:\n    - { at: 1/8 in, value: 0.5 cm3 }\n    - { at: 0.125 in, value: 0.8 cm3 }\n  from: m48 p. 35',
      },
      expect: [
        {
          at: '0.125 in',
          message: '0.125 in says 0.8 cm3, and another row at 1/8 in says 0.5 cm3',
          fix: 'look in the source which station belongs to the row, or take the row out that is there twice',
        },
      ],
    },
    {
      name: 'stations a hair apart',
      sheet: {
        settings:
          'pump-curve:\n  table:\n    - { at: 1/8 in, value: 0.5 cm3 }\n    - { at: 0.126 in, value: 0.51 cm3 }\n  from: m48 p. 35',
      },
      expect: [],
    },
  ],
});
