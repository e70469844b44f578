import { defineCheck } from './define.ts';
import { plainName } from './vocabulary.ts';

/** An acceptance of something that is no longer found. */
export default defineCheck({
  id: 'acceptance-unused',
  severity: 'warning',
  group: 'acceptance',
  summary: 'The sheet accepts a finding that is not made.',
  explain:
    'The reason is printed beside a figure that is no longer doubtful, and the next doubt at that ' +
    'place would pass unseen. Take it out once the point is mended; it cannot itself be accepted.',
  last: true,
  own: true,
  messages: {
    somewhere: {
      message: '`{name}` is accepted at `{at}`, but nothing of the kind is found there',
      fix: 'take this entry out of `accept:`, or name what it is about: {subjects}',
      suggest: [{ takeOut: 'entry' }],
    },
    gone: {
      message: '`{name}` is accepted, but it is not found on this sheet',
      fix: 'take this entry out of `accept:`',
      suggest: [{ takeOut: 'entry' }],
    },
  },
  run(sheet, _context, report, { findings, ids, covers }) {
    for (const acceptance of sheet.accept) {
      const { finding, at, reason } = acceptance;
      // Without a reason it accepts nothing and has a finding of its own.
      if (reason === null || reason.value.trim() === '') continue;
      const id = plainName(finding.value);
      if (!ids.includes(id) || findings.some((found) => covers(acceptance, found))) continue;
      const { span, value: name } = finding;
      const subjects = new Set<string>();
      for (const found of findings) {
        if (found.check === id && found.subject !== null) subjects.add(`\`${found.subject}\``);
      }
      if (at === null || subjects.size === 0) {
        report({ message: 'gone', span, values: { name }, subject: at?.value ?? null });
      } else {
        const values = { name, at: at.value, subjects: [...subjects].join(', ') };
        report({ message: 'somewhere', span, values, subject: at.value });
      }
    }
  },
  examples: [
    {
      name: 'a point that was mended since',
      sheet: {
        front: 'accept: [{ finding: setting-unused, at: float-level, reason: For reference }]',
      },
      expect: [
        {
          at: 'setting-unused',
          message: '`setting-unused` is accepted, but it is not found on this sheet',
          fix: 'take this entry out of `accept:`',
        },
      ],
    },
    {
      name: 'the wrong setting',
      sheet: {
        settings: 'float-drop: { value: 1-1/4 in, from: m48 p. 31 }',
        front: 'accept: [{ finding: setting-unused, at: float-level, reason: For reference }]',
      },
      expect: [
        {
          at: 'setting-unused',
          message:
            '`setting-unused` is accepted at `float-level`, but nothing of the kind is found there',
          fix: 'take this entry out of `accept:`, or name what it is about: `float-drop`',
        },
      ],
    },
    {
      name: 'the right setting',
      sheet: {
        settings: 'float-drop: { value: 1-1/4 in, from: m48 p. 31 }',
        front: 'accept: [{ finding: setting-unused, at: float-drop, reason: For reference }]',
      },
      expect: [],
    },
  ],
});
