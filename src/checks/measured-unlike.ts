import { samplesOf } from '../measured/index.ts';
import { bench } from './bench-example.ts';
import { defineCheck } from './define.ts';

/** A reading that cannot be added up with the others of its setting. */
export default defineCheck({
  id: 'measured-unlike',
  severity: 'error',
  group: 'provenance',
  summary: 'A reading of measured units cannot be added up with the others.',
  explain:
    'A reading is one figure: limits, `about` and words have no place in a mean. And it is told of the ' +
    'same thing as the others of its list: degrees of the crank do not add up with degrees of another ' +
    'shaft, nor turns from one datum with turns from another. It is left out of the sums until it is mended.',
  messages: {
    vague: {
      message: '{text} is no single figure, so it is in no mean',
      fix: 'write the one figure that was read, or take it out',
    },
    other: {
      message: '{text} is counted otherwise than {first}, so the two have no mean',
      fix: 'write all readings of `{setting}` as counted the same way',
    },
  },
  run(sheet, _context, report) {
    for (const { unlike, setting, name } of samplesOf(sheet)) {
      for (const { size, why, first, dimension } of unlike) {
        // A size of another dimension than its setting has is told as that.
        const wanted = setting?.known?.dimensions ?? [];
        if (why === 'other' && wanted.length > 0 && !wanted.includes(dimension)) continue;
        report({
          message: why,
          span: size.span,
          values: { text: size.text, first: first ?? '', setting: name },
          subject: setting?.id ?? name,
        });
      }
    }
  },
  examples: [
    {
      name: 'what was read from one end to the other',
      sheet: { front: bench(2, 'pump-stroke: [0.437 in, 0.436 to 0.438 in]') },
      expect: [
        {
          at: '0.436 to 0.438 in',
          message: '0.436 to 0.438 in is no single figure, so it is in no mean',
          fix: 'write the one figure that was read, or take it out',
        },
      ],
    },
    {
      name: 'degrees of two shafts',
      sheet: { front: bench(2, 'float-level: [12° crank, 6° cam]') },
      expect: [
        {
          at: '6° cam',
          message: '6° cam is counted otherwise than 12° crank, so the two have no mean',
          fix: 'write all readings of `float-level` as counted the same way',
        },
      ],
    },
    {
      name: 'a reading with how far it is trusted, and one in another unit',
      sheet: { front: bench(2, 'pump-stroke: [0.437 ± 0.001 in, 11.1 mm]') },
      expect: [],
    },
  ],
});
