import { defineCheck } from './define.ts';
import { nearest, plainName } from './vocabulary.ts';

/** An acceptance of a finding that does not exist. */
export default defineCheck({
  id: 'acceptance-unknown',
  severity: 'error',
  group: 'acceptance',
  summary: 'The sheet accepts a finding that there is no such name for.',
  explain:
    'The reason would be printed as a note about nothing, and the finding it was meant for still ' +
    'stops the press. It cannot be accepted.',
  last: true,
  messages: {
    near: {
      message: 'there is no finding `{name}`',
      fix: 'write `finding: {near}`',
      suggest: [{ write: '{near}' }],
    },
    unknown: {
      message: 'there is no finding `{name}`',
      fix: 'write the name that `gaugeleaf check` prints beside the severity',
      suggest: [{ takeOut: 'entry' }],
    },
  },
  run(sheet, _context, report, { ids: own, across }) {
    const ids = [...own, ...across];
    for (const { finding, at } of sheet.accept) {
      if (ids.includes(plainName(finding.value))) continue;
      const near = nearest(finding.value, ids);
      const { span, value: name } = finding;
      const subject = at?.value ?? null;
      if (near === null) report({ message: 'unknown', span, values: { name }, subject });
      else report({ message: 'near', span, values: { name, near }, subject });
    }
  },
  examples: [
    {
      name: 'a misspelt finding',
      sheet: { front: 'accept: [{ finding: setting-unusde, reason: Only for reference }]' },
      expect: [
        {
          at: 'setting-unusde',
          message: 'there is no finding `setting-unusde`',
          fix: 'write `finding: setting-unused`',
        },
      ],
    },
    {
      name: 'a finding nobody makes',
      sheet: { front: 'accept: [{ finding: too-oily, reason: It always was }]' },
      expect: [
        {
          at: 'too-oily',
          message: 'there is no finding `too-oily`',
          fix: 'write the name that `gaugeleaf check` prints beside the severity',
        },
      ],
    },
    {
      name: 'a finding that is made',
      sheet: {
        settings: 'float-drop: { value: 1-1/4 in, from: m48 p. 31 }',
        front: 'accept: [{ finding: setting-unused, at: float-drop, reason: Only for reference }]',
      },
      expect: [],
    },
  ],
});
