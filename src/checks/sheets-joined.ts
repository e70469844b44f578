import { defineCheck } from './define.ts';

/** Two sheets in one file. */
export default defineCheck({
  id: 'sheets-joined',
  severity: 'error',
  group: 'reading',
  summary: 'One file holds two sheets.',
  explain:
    'A sheet is a file: its name is the sheet. Of a second one below the first, no setting is read and ' +
    'no step is proved, and its front matter would print as text. It cannot be accepted: cut the file in two.',
  unread: true,
  own: true,
  messages: {
    second: { message: '{problem}', fix: '{cure}' },
  },
  run(sheet, _context, report) {
    for (const { kind, span, message, fix } of sheet.problems) {
      if (kind !== 'joined') continue;
      report({ message: 'second', span, values: { problem: message, cure: fix ?? '' } });
    }
  },
  examples: [
    {
      name: 'a second sheet below the first',
      sheet: {
        body: '## Float level\n\n1. Pass the gauge: :value[float-level].\n\n---\ngaugeleaf: 1\nsheet: orlo-f28\nsettings:\n  float-level: { value: 13/64 in }\n---\n\n## Float level\n\n1. Set 13/64 in.\n',
      },
      expect: [
        {
          at: '---',
          message: 'a second sheet starts here in the same file',
          fix: 'put it into a file of its own: from here on nothing is read',
        },
      ],
    },
    {
      name: 'without the line before it',
      sheet: { body: '## Float level\n\n1. Pass the gauge.\ngaugeleaf: 1\nsheet: orlo-f28\n' },
      expect: [
        {
          at: 'gaugeleaf',
          message: 'a second sheet starts here in the same file',
          fix: 'put it into a file of its own: from here on nothing is read',
        },
      ],
    },
    {
      name: 'a rule between two parts, and the front matter of another sheet as an example in code',
      sheet: {
        body: '## Notes\n\nOne part.\n\n---\n\nAnother: `gaugeleaf: 1` begins a sheet.\n\n```yaml\ngaugeleaf: 1\nsheet: orlo-f28\n```\n',
      },
      expect: [],
    },
  ],
});
