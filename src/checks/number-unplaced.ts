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
  examples: [],
});
