import { hasReadings } from '../measured/index.ts';
import { citing } from '../sheet/index.ts';

import { defineCheck } from './define.ts';

/** A source that no figure comes from. */
export default defineCheck({
  id: 'source-unused',
  severity: 'warning',
  group: 'provenance',
  summary: 'A source is listed that no figure comes from.',
  explain:
    'The list claims a paper that the sheet does not use: a figure of it was forgotten, or was ' +
    'credited to another. Accept it for a paper that serves the text only.',
  own: true,
  messages: {
    unused: {
      message: 'no setting comes from the source `{source}`',
      fix: 'name it in the `from:` of the settings it gives, or take it out of `sources:`',
      suggest: [{ takeOut: 'entry' }],
    },
  },
  run(sheet, _context, report) {
    if (sheet.sources.size === 0) return;
    const used = new Set<string>();
    for (const { from, but } of citing(sheet)) {
      for (const each of from) used.add(each.id);
      for (const dissent of but) if (dissent.from !== null) used.add(dissent.from.id);
    }
    for (const source of sheet.sources.values()) {
      const { name } = source;
      // What was measured is held against the figures, whoever they come from.
      if (used.has(name.value) || hasReadings(source)) continue;
      report({
        message: 'unused',
        span: name.span,
        values: { source: name.value },
        subject: name.value,
      });
    }
  },
  examples: [
    {
      name: 'a bulletin that gives nothing',
      sheet: {
        front: 'sources:\n  m48: { title: Workshop Manual }\n  b17: { title: Bulletin 17 }',
      },
      expect: [
        {
          at: 'b17',
          message: 'no setting comes from the source `b17`',
          fix: 'name it in the `from:` of the settings it gives, or take it out of `sources:`',
        },
      ],
    },
    {
      name: 'units whose readings bear out what the manual says',
      sheet: {
        front:
          'sources:\n  m48: { title: Workshop Manual }\n  bench: { title: Two good units, kind: measured, units: 2, readings: { idle-mixture: [1.2 turns out, 1.3 turns out] } }',
        settings: 'idle-mixture: { value: 1-1/4 turns out, from: m48 p. 40 }',
      },
      expect: [],
    },
    {
      name: 'a manual that gives every figure',
      sheet: {
        front: 'sources:\n  m48: { title: Wexcombe Four Workshop Manual }',
        settings: 'idle-mixture: { value: 1-1/4 turns out, from: m48 p. 40 }',
      },
      expect: [],
    },
  ],
});
