import { defineCheck } from './define.ts';

/** An acceptance of an error. */
export default defineCheck({
  id: 'acceptance-barred',
  severity: 'error',
  group: 'acceptance',
  summary: 'The sheet accepts an error, and errors can only be mended.',
  explain:
    'An error is wrong or impossible, not doubtful: no reason makes two figures agree. Mend what ' +
    'it says and take the acceptance out.',
  last: true,
  messages: {
    barred: {
      message: '`{name}` is an error here and cannot be accepted',
      fix: 'mend it, then take this entry out of `accept:`',
      suggest: [{ takeOut: 'entry' }],
    },
  },
  run(sheet, _context, report, { findings, covers }) {
    if (sheet.accept.length === 0) return;
    const errors = findings.filter((finding) => finding.severity === 'error');
    for (const acceptance of sheet.accept) {
      const met = errors.filter((finding) => covers(acceptance, finding));
      if (met.length === 0) continue;
      report({
        message: 'barred',
        span: acceptance.finding.span,
        values: { name: acceptance.finding.value },
        related: met.map(({ span }) => ({ span, label: 'the error' })),
        subject: acceptance.at?.value ?? null,
      });
    }
  },
  examples: [
    {
      name: 'a source that nobody listed, accepted',
      sheet: {
        settings: 'idle-mixture: { value: 1-1/4 turns out, from: leaflet }',
        front:
          'accept: [{ finding: source-unknown, at: idle-mixture, reason: The leaflet is well known }]',
      },
      expect: [
        {
          at: 'source-unknown',
          message: '`source-unknown` is an error here and cannot be accepted',
          fix: 'mend it, then take this entry out of `accept:`',
        },
      ],
    },
    {
      name: 'a warning accepted',
      sheet: {
        settings: 'float-drop: { value: 1-1/4 in, from: m48 p. 31 }',
        front: 'accept: [{ finding: setting-unused, at: float-drop, reason: Only for reference }]',
      },
      expect: [],
    },
  ],
});
