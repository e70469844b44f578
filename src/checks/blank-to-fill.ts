import type { Sheet } from '../sheet/model.ts';
import type { Span } from '../text/span.ts';
import { isBlank } from './blank.ts';
import { defineCheck } from './define.ts';

/** A place of the front matter that still waits for its figure or words. */
export default defineCheck({
  id: 'blank-to-fill',
  severity: 'error',
  group: 'reading',
  summary: 'A blank of a drafted sheet has not been filled in.',
  explain:
    'A draft holds `fill in` (or TBD, TODO, ???) wherever a figure or a few words belong that only ' +
    'a source can give. A card with blanks sends the restorer back to guessing, so it prints only ' +
    'as a proof. It cannot be accepted: write what the source prints, or take the setting out with ' +
    'the step that uses it.',
  messages: {
    size: {
      message: '`{key}` of `{subject}` is still to be filled in',
      fix: 'write it as the source prints it, with its unit',
    },
    words: {
      message: '`{key}` of `{subject}` is still to be filled in',
      fix: 'write it in place of `{blank}`',
    },
  },
  run(sheet, _context, report) {
    for (const { key, subject, text, span, isSize } of fields(sheet)) {
      if (!isBlank(text)) continue;
      report({
        message: isSize ? 'size' : 'words',
        span,
        values: { key, subject, ...(isSize ? {} : { blank: text.trim() }) },
        subject,
      });
    }
  },
  examples: [
    {
      name: 'a setting as `gaugeleaf draft` writes it',
      sheet: { settings: 'float-drop: { value: fill in, at: FILL IN, from: m48 }' },
      expect: [
        {
          at: 'fill in',
          message: '`value` of `float-drop` is still to be filled in',
          fix: 'write it as the source prints it, with its unit',
        },
        {
          at: 'FILL IN',
          message: '`at` of `float-drop` is still to be filled in',
          fix: 'write it in place of `FILL IN`',
        },
      ],
    },
    {
      name: 'filled in',
      sheet: { settings: 'float-drop: { value: 1-1/4 in, at: free end, from: m48 }' },
      expect: [],
    },
  ],
});

interface Field {
  readonly key: string;
  readonly subject: string;
  readonly text: string;
  readonly span: Span;
  readonly isSize: boolean;
}

function* fields(sheet: Sheet): Generator<Field> {
  const { unit } = sheet;
  for (const [key, value] of Object.entries({ maker: unit.maker, model: unit.model })) {
    if (value) yield { key, subject: 'unit', text: value.value, span: value.span, isSize: false };
  }
  for (const [name, { title }] of sheet.sources) {
    if (title === null) continue;
    yield { key: 'title', subject: name, text: title.value, span: title.span, isSize: false };
  }
  for (const setting of sheet.settings.values()) {
    const subject = setting.name.value;
    const sizes = { value: setting.value, gauge: setting.gauge, travel: setting.travel };
    for (const [key, size] of Object.entries(sizes)) {
      if (size) yield { key, subject, text: size.text, span: size.span, isSize: true };
    }
    for (const size of setting.also) {
      yield { key: 'also', subject, text: size.text, span: size.span, isSize: true };
    }
    for (const [place, size] of setting.places) {
      yield { key: place, subject, text: size.text, span: size.span, isSize: true };
    }
    const words = new Map(setting.said);
    if (setting.at !== null) words.set('at', setting.at);
    for (const [key, { value, span }] of words) {
      yield { key, subject, text: value, span, isSize: false };
    }
  }
}
