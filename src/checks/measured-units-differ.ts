import { hasReadings, listsOf } from '../measured/index.ts';
import { bench } from './bench-example.ts';
import { defineCheck } from './define.ts';

/** A source that says how many units were measured, and has another number of readings. */
export default defineCheck({
  id: 'measured-units-differ',
  severity: 'error',
  group: 'provenance',
  summary: 'A source has more or fewer readings of a setting than units.',
  explain:
    'Each unit gives one reading of a setting. A reading that was left out or written twice makes mean ' +
    'and spread of another set of units than the sheet speaks of. A bench record in which a setting was ' +
    'left blank gives none, so fewer are right where records count among the readings.',
  messages: {
    units: {
      message: '`{source}` is {units}, and each of its lists has {count}',
      fix: 'write `units: {number}`, or find the reading that is missing or too many',
      suggest: [{ write: '{number}' }],
    },
    list: {
      message: '{count} of `{setting}`, and `{source}` is {units}',
      fix: 'find the reading that is missing or too many, or correct `units:`',
    },
  },
  run(sheet, _context, report) {
    for (const source of sheet.sources.values()) {
      if (source.units === null || !hasReadings(source)) continue;
      const { value } = source.units;
      const lists = listsOf(source);
      const hasRecords = source.records.length > 0;
      const wrong = lists.filter(({ sizes }) =>
        hasRecords ? sizes.length > value : sizes.length !== value,
      );
      const [first] = wrong;
      if (first === undefined) continue;
      const count = first.sizes.length;
      const values = { source: source.name.value, units: unitWords(value) };
      if (wrong.length === lists.length && wrong.every(({ sizes }) => sizes.length === count)) {
        report({
          message: 'units',
          span: source.units.span,
          values: { ...values, count: readingWords(count), number: String(count) },
          subject: source.name.value,
        });
        continue;
      }
      for (const { name, sizes } of wrong) {
        const listed = source.readings.find((each) => each.name.value === name);
        report({
          message: 'list',
          span: (listed ?? source).name.span,
          values: { ...values, setting: name, count: readingWords(sizes.length) },
          related: [{ span: source.units.span, label: 'the units' }],
          subject: source.name.value,
          alsoCalled: [name],
        });
      }
    }
  },
  examples: [
    {
      name: 'three units, and two readings in each list',
      sheet: {
        front: bench(
          3,
          'pump-stroke: [0.437 in, 0.438 in]',
          'idle-mixture: [1.2 turns out, 1.3 turns out]',
        ),
      },
      expect: [
        {
          at: '3',
          message: '`bench` is 3 units, and each of its lists has 2 readings',
          fix: 'write `units: 2`, or find the reading that is missing or too many',
        },
      ],
    },
    {
      name: 'a reading left out of one list',
      sheet: {
        front: bench(2, 'pump-stroke: [0.437 in, 0.438 in]', 'idle-mixture: [1.25 turns out]'),
      },
      expect: [
        {
          at: 'idle-mixture',
          message: '1 reading of `idle-mixture`, and `bench` is 2 units',
          fix: 'find the reading that is missing or too many, or correct `units:`',
        },
      ],
    },
    {
      name: 'as many readings as units, and units that nobody counted',
      sheet: {
        front: `${bench(2, 'pump-stroke: [0.437 in, 0.438 in]')}
  more: { title: More units, kind: measured, readings: { idle-mixture: [1.25 turns out] } }`,
      },
      expect: [],
    },
  ],
});

function unitWords(count: number): string {
  return count === 1 ? '1 unit' : `${count} units`;
}

function readingWords(count: number): string {
  return count === 1 ? '1 reading' : `${count} readings`;
}
