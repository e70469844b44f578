import { plainWords } from '../text/index.ts';
import { defineCheck } from './define.ts';

/** Whoever compiled the sheet read its source the second time as well. */
export default defineCheck({
  id: 'read-by-same',
  severity: 'warning',
  group: 'provenance',
  summary: 'Whoever compiled the sheet also read one of its sources the second time.',
  explain:
    'One reads what one expects: whoever has typed a figure misreads it alike the second time. Have somebody ' +
    'else read the source. Accept it, for the source, where nobody else can get at it, and say so.',
  messages: {
    same: {
      message:
        '{by} compiled the sheet, and {file} says that {reader} read {source} the second time',
      fix: 'have somebody else read {source}, or correct the name that is wrong',
    },
  },
  run({ compiledBy }, { readings = null }, report) {
    if (compiledBy === null || readings === null) return;
    const name = plainWords(compiledBy.value);
    for (const { by, file, source, read } of readings.all) {
      if (by === null || read.length === 0 || plainWords(by) !== name) continue;
      report({
        message: 'same',
        span: compiledBy.span,
        values: { by: compiledBy.value, file, reader: by, source },
        subject: source,
      });
    }
  },
  examples: [
    {
      name: 'one name on the sheet and in a second reading',
      sheet: { front: 'compiled-by: A. Hale' },
      expect: [
        {
          at: 'A. Hale',
          message:
            'A. Hale compiled the sheet, and sheets/readings/orlo-f27.m48.yaml says that A. HALE read m48 the second time',
          fix: 'have somebody else read m48, or correct the name that is wrong',
        },
      ],
    },
    {
      name: 'another name',
      sheet: { front: 'compiled-by: R. Penhale' },
      expect: [],
    },
  ],
});
