import { defineCheck } from './define.ts';

/** An acceptance without its reason. */
export default defineCheck({
  id: 'acceptance-unreasoned',
  severity: 'error',
  group: 'acceptance',
  summary: 'The sheet accepts a finding and does not say why.',
  explain:
    "The reason is printed as an editor's note, so that the reader can judge it. Without one " +
    'nothing is accepted, and the finding stands.',
  last: true,
  messages: {
    unreasoned: {
      message: '`{name}` is accepted without a reason, so it is not accepted',
      fix: 'add `reason: ...` to the entry, in a sentence that can be printed',
      suggest: [{ say: 'reason', as: null }],
    },
  },
  run(sheet, _context, report) {
    for (const { finding, at, reason } of sheet.accept) {
      if (reason !== null && reason.value.trim() !== '') continue;
      report({
        message: 'unreasoned',
        span: finding.span,
        values: { name: finding.value },
        subject: at?.value ?? null,
      });
    }
  },
  examples: [
    {
      name: 'no reason',
      sheet: { front: 'accept: [{ finding: setting-unused, at: float-drop }]' },
      expect: [
        {
          at: 'setting-unused',
          message: '`setting-unused` is accepted without a reason, so it is not accepted',
          fix: 'add `reason: ...` to the entry, in a sentence that can be printed',
        },
      ],
    },
    {
      name: 'a reason',
      sheet: {
        settings: 'float-drop: { value: 1-1/4 in, from: m48 p. 31 }',
        front: 'accept: [{ finding: setting-unused, at: float-drop, reason: Only for reference }]',
      },
      expect: [],
    },
  ],
});
