import type { Sheet } from '../sheet/model.ts';
import type { Placed, Span } from '../text/index.ts';
import { fillersIn, isBlank } from './blank.ts';
import { defineCheck } from './define.ts';

/** A place of the sheet that still waits for its figure or words. */
export default defineCheck({
  id: 'blank-to-fill',
  severity: 'error',
  group: 'reading',
  summary: 'A blank of a drafted sheet has not been filled in.',
  explain:
    'A draft holds `fill in` (or TBD, TODO, ???, x.xx in) wherever a figure or a few words belong that ' +
    'only a source can give, and says in the work what goes where. A card with blanks sends the restorer back to guessing, so it prints only ' +
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
    text: {
      message: '`{written}` still waits for the words or the figure that belong there',
      fix: 'write them in its place, or take it out',
    },
  },
  run(sheet, _context, report) {
    for (const { text, span, block } of sheet.prose) {
      for (const { start, end } of fillersIn(text)) {
        // Between two marks a stretch of prose may be a few dots; a paragraph of them is a blank.
        const whole = span.start === block.start && span.end === block.end;
        const written = text.slice(start, end);
        if (!whole && !/[\p{L}?]/u.test(written)) continue;
        report({
          message: 'text',
          span: { start: span.start + start, end: span.start + end },
          values: { written },
        });
      }
    }
    for (const { key, subject, text, span, isSize } of fields(sheet)) {
      if (!isBlank(text) && (isSize || fillersIn(text).length === 0)) continue;
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
      name: 'words that a draft leaves to its editor, and a figure',
      sheet: {
        body: '# Orlo F27\n\nHow to tell it from its near relations goes here.\n\n## Float level\n\n1. Set it to ??? with the gauge.\n2. TODO\n',
      },
      expect: [
        {
          at: 'How to tell it from its near relations goes here',
          message:
            '`How to tell it from its near relations goes here` still waits for the words or the figure that belong there',
          fix: 'write them in its place, or take it out',
        },
        {
          at: '???',
          message: '`???` still waits for the words or the figure that belong there',
          fix: 'write them in its place, or take it out',
        },
        {
          at: 'TODO',
          message: '`TODO` still waits for the words or the figure that belong there',
          fix: 'write them in its place, or take it out',
        },
      ],
    },
    {
      name: 'a paper that nobody has named, and a page to come',
      sheet: {
        front:
          'sources:\n  m48: { title: Title goes here, kind: manual, year: 1948 }\n  b17: { title: Bulletin 17, kind: bulletin, publisher: TBD }',
      },
      expect: [
        {
          at: 'Title goes here',
          message: '`title` of `m48` is still to be filled in',
          fix: 'write it in place of `Title goes here`',
        },
        {
          at: 'TBD',
          message: '`publisher` of `b17` is still to be filled in',
          fix: 'write it in place of `TBD`',
        },
      ],
    },
    {
      name: 'words that look like blanks and are none',
      sheet: {
        body: '## Float level\n\nThe small spring goes here, coil down.\n\n1. Fill in the card: :value[float-level].\n',
      },
      expect: [],
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
  const { unit, title, sources } = sheet;
  const words = (key: string, subject: string, { value, span }: Placed<string>): Field => {
    return { key, subject, text: value, span, isSize: false };
  };
  if (title) yield words('title', 'the sheet', title);
  for (const [key, value] of Object.entries({ maker: unit.maker, model: unit.model })) {
    if (value) yield words(key, 'unit', value);
  }
  for (const number of unit.partNumbers) yield words('part-numbers', 'unit', number);
  for (const [key, value] of [...unit.threads, ...unit.other]) yield words(key, 'unit', value);
  for (const [key, { text, span }] of unit.sizes)
    yield { key, subject: 'unit', text, span, isSize: true };
  for (const { marque, model, years, span } of sheet.fits) {
    for (const [key, text] of Object.entries({ marque, model, years })) {
      if (text !== null) yield { key, subject: 'fits', text, span, isSize: false };
    }
  }
  for (const [name, { described, shared }] of sources) {
    if (shared) continue;
    for (const [key, value] of described) yield words(key, name, value);
  }
  for (const { finding, reason } of sheet.accept) {
    if (reason !== null) yield words('reason', finding.value, reason);
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
    const said = new Map(setting.said);
    const { at, note, ruling, placesDiffer } = setting;
    for (const [key, text] of Object.entries({ at, note, ruling, 'places-differ': placesDiffer }))
      if (text !== null) said.set(key, text);
    for (const [key, text] of said) yield words(key, subject, text);
    for (const { value, ruling: why } of setting.but) {
      if (value) yield { key: 'but', subject, text: value.text, span: value.span, isSize: true };
      if (why) yield words('ruling', subject, why);
    }
    for (const { page, span } of setting.from) {
      const number = page?.replace(/^(?:pp?|pages?|§)\.? */i, '') ?? '';
      if (number !== '') yield { key: 'from', subject, text: number, span, isSize: false };
    }
  }
}
