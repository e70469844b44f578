import { defineCheck } from './define.ts';
import { proseNumbers } from './prose-numbers.ts';

/** A size in the prose that no setting of the sheet is. */
export default defineCheck({
  id: 'number-unplaced',
  severity: 'note',
  group: 'prose',
  summary: 'A size in the text is no setting of the sheet.',
  explain:
    'A number in a step has no source, no limits and no check. If it is a setting, it belongs in the ' +
    'front matter, where it is proved; if it is the size of a tool, name the tool.',
  messages: {
    unplaced: {
      message: '{text} is no setting of this sheet',
      fix: 'give it under `settings:` with its source and write `:value[...]` here, or name the tool it is the size of',
    },
  },
  run(sheet, context, report) {
    for (const { span, statement, standing } of proseNumbers(sheet, context)) {
      if (standing === 'stray')
        report({ message: 'unplaced', span, values: { text: statement.text } });
    }
  },
  examples: [
    {
      name: 'a torque that no setting gives',
      sheet: { body: '## Float level\n\n1. Tighten the cover screws to 12 in-lb.\n' },
      expect: [
        {
          at: '12 in-lb',
          message: '12 in-lb is no setting of this sheet',
          fix: 'give it under `settings:` with its source and write `:value[...]` here, or name the tool it is the size of',
        },
      ],
    },
    {
      name: 'a size of something that is no setting',
      sheet: { body: '## Notes\n\nThe body has a 1.25 in bore.\n' },
      expect: [
        {
          at: '1.25 in',
          message: '1.25 in is no setting of this sheet',
          fix: 'give it under `settings:` with its source and write `:value[...]` here, or name the tool it is the size of',
        },
      ],
    },
    {
      name: 'tools, dates, times and numbers of parts',
      sheet: {
        body: '## Float level\n\n1. Use a 7/16 in wrench, part F27-104 of 1948, and wait 10 minutes.\n2. Read page 12, section 3.2, and set :value[float-level].\n\n## Notes\n\nBodies cast with 27M are of 1949; it was 68 °F in the shop at 9:30.\n',
      },
      expect: [],
    },
  ],
});
