import { defineCheck } from './define.ts';

/** A picture without alternative text. */
export default defineCheck({
  id: 'picture-untold',
  severity: 'warning',
  group: 'reading',
  summary: 'A picture has no words that say what it shows.',
  explain:
    'The words in the brackets are read aloud to who cannot see the picture, and stand under it ' +
    'where the copy is poor. Accept it for an ornament that shows nothing of the work.',
  messages: {
    untold: {
      message: 'the picture `{url}` has no words that say what it shows',
      fix: 'write them in its brackets: `![what it shows]({url})`',
      suggest: [{ write: '![fill in]({url})' }],
    },
  },
  run(sheet, _context, report) {
    for (const { url, alt, span } of sheet.pictures) {
      if (alt.trim() === '') report({ message: 'untold', span, values: { url }, subject: url });
    }
  },
  examples: [
    {
      name: 'empty brackets',
      sheet: { body: '![](pictures/bowl.png)\n' },
      expect: [
        {
          at: '![](pictures/bowl.png)',
          message: 'the picture `pictures/bowl.png` has no words that say what it shows',
          fix: 'write them in its brackets: `![what it shows](pictures/bowl.png)`',
        },
      ],
    },
    {
      name: 'told',
      sheet: { body: '![The bowl from below](pictures/bowl.png)\n' },
      expect: [],
    },
  ],
});
