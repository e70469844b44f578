import { citing } from '../sheet/index.ts';
import { defineCheck } from './define.ts';

/** A figure that nobody is named for. */
export default defineCheck({
  id: 'setting-unsourced',
  severity: 'warning',
  group: 'provenance',
  summary: 'A setting does not say where its figure comes from.',
  explain:
    'The same unit stands in five papers with five roundings and two typing errors. A figure ' +
    'without its source cannot be looked up again when somebody doubts it. Accept it where the ' +
    'source is lost, and say so.',
  messages: {
    setting: {
      message: '`{setting}` does not say where it comes from',
      fix: 'add `from: {source}` with the page, beside its value',
    },
    other: {
      message: 'another value of `{setting}` does not say where it comes from',
      fix: 'add `from:` with its source and page to the entry under `but:`',
    },
  },
  run(sheet, _context, report) {
    for (const { name, id, from, but, rows, station } of citing(sheet)) {
      const subject = id;
      const isBySource = rows.length > 0 && rows.every((row) => row.from.length > 0);
      if (from.length === 0 && station === null && !isBySource) {
        const source = [...sheet.sources.keys()][0] ?? 'source';
        report({
          message: 'setting',
          span: name.span,
          values: { setting: name.value, source },
          suggest: () => [...sheet.sources.keys()].map((as) => ({ say: 'from', as })),
          subject,
        });
      }
      for (const dissent of but) {
        if (dissent.from !== null) continue;
        report({
          message: 'other',
          span: dissent.value?.span ?? dissent.span,
          values: { setting: name.value },
          suggest: () => [...sheet.sources.keys()].map((as) => ({ say: 'from', as })),
          subject,
        });
      }
    }
  },
  examples: [
    {
      name: 'a bare figure',
      sheet: { settings: 'idle-mixture: { value: 1-1/4 turns out }' },
      expect: [
        {
          at: 'idle-mixture',
          message: '`idle-mixture` does not say where it comes from',
          fix: 'add `from: m48` with the page, beside its value',
        },
      ],
    },
    {
      name: 'another figure from nowhere',
      sheet: {
        settings:
          'unloader:\n  value: No. 29 drill\n  from: m48 p. 33\n  but:\n    - value: No. 30 drill\n      ruling: too small to clear a flooded engine',
      },
      expect: [
        {
          at: 'No. 30 drill',
          message: 'another value of `unloader` does not say where it comes from',
          fix: 'add `from:` with its source and page to the entry under `but:`',
        },
      ],
    },
    {
      name: 'every figure with its source',
      sheet: {
        settings:
          'float-level:\n  value: 13/64 in\n  at: free end of the float\n  gasket: removed\n  from: m48 p. 31',
      },
      expect: [],
    },
  ],
});
