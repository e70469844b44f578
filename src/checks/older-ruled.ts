import { defineCheck } from './define.ts';
import { isRuled, laterOverruled } from './later-overruled.ts';

/** A later paper of the same kind is set aside, and nobody says why. */
export default defineCheck({
  id: 'older-ruled',
  severity: 'warning',
  group: 'provenance',
  summary:
    'The figure of an older paper stands over that of a later one of its kind, and no ruling says why.',
  explain:
    'A later bulletin is mostly printed because the earlier one was wrong, or the part had changed. ' +
    'To stay with the older figure may be right, for units of its years; the reader has to be told ' +
    'why. Accept it while the question is open.',
  messages: {
    older: {
      message:
        '`{value}` for `{setting}` is from `{older}` of {olderYear}, though `{later}` of {laterYear} ' +
        'gives `{other}`, and no ruling says why',
      fix: 'follow `{later}`, or add `ruling: ...` to its statement, with the reason in a sentence',
      suggest: [{ say: 'ruling', as: null }],
    },
  },
  run(sheet, _context, report) {
    for (const setting of sheet.figures) {
      const { name, id, value, but } = setting;
      for (const dissent of but) {
        if (value === null || dissent.value === null || isRuled(dissent)) continue;
        const found = laterOverruled(sheet, setting, dissent);
        if (found === null) continue;
        report({
          message: 'older',
          span: dissent.value.span,
          values: {
            value: value.text,
            setting: name.value,
            older: found.older.source.name.value,
            olderYear: found.older.year,
            later: found.later.source.name.value,
            laterYear: found.later.year,
            other: dissent.value.text,
          },
          compared: [value.text, dissent.value.text],
          related: [{ span: value.span, label: 'the value' }],
          subject: id,
        });
      }
    }
  },
  examples: [
    {
      name: 'a bulletin that a later one corrects',
      sheet: {
        front:
          'sources:\n  b9: { title: Bulletin 9, kind: bulletin, year: 1948 }\n  b17: { title: Bulletin 17, kind: bulletin, year: 1949 }',
        settings:
          'idle-mixture:\n  value: 1-1/4 turns out\n  from: b9\n  but:\n    - { value: 1 turn out, from: b17 }',
      },
      expect: [
        {
          at: '1 turn out',
          message:
            '`1-1/4 turns out` for `idle-mixture` is from `b9` of 1948, though `b17` of 1949 gives `1 turn out`, and no ruling says why',
          fix: 'follow `b17`, or add `ruling: ...` to its statement, with the reason in a sentence',
        },
      ],
    },
    {
      name: 'the older of two statements is followed',
      sheet: {
        front:
          'sources:\n  b9: { title: Bulletin 9, kind: bulletin, year: 1947-48 }\n  b17: { title: Bulletin 17, kind: bulletin, year: about 1949 }',
        settings:
          'idle-mixture:\n  statements:\n    - { value: 1 turn out, from: b17 p. 2 }\n    - { value: 1-1/4 turns out, from: b9 p. 1 }\n  follows: b9',
      },
      expect: [
        {
          at: '1 turn out',
          message:
            '`1-1/4 turns out` for `idle-mixture` is from `b9` of 1947-48, though `b17` of about 1949 gives `1 turn out`, and no ruling says why',
          fix: 'follow `b17`, or add `ruling: ...` to its statement, with the reason in a sentence',
        },
      ],
    },
    {
      name: 'the reason is said',
      sheet: {
        front:
          'sources:\n  b9: { title: Bulletin 9, kind: bulletin, year: 1948 }\n  b17: { title: Bulletin 17, kind: bulletin, year: 1949 }',
        settings:
          'idle-mixture:\n  value: 1-1/4 turns out\n  from: b9\n  but:\n    - { value: 1 turn out, from: b17, ruling: for the finer needle of 1949 }',
      },
      expect: [],
    },
    {
      name: 'two of one year, and a leaflet against a manual, which is no later edition of it',
      sheet: {
        front:
          'sources:\n  b9: { title: Bulletin 9, kind: bulletin, year: 1948 }\n  b10: { title: Bulletin 10, kind: bulletin, year: 1948 }\n  m48: { title: Workshop Manual, kind: manual, year: 1948 }\n  kit: { title: Kit leaflet, kind: leaflet, year: 1964 }',
        settings:
          'idle-mixture:\n  value: 1-1/4 turns out\n  from: b9\n  but:\n    - { value: 1 turn out, from: b10 }\npump-stroke:\n  value: 7/16 in\n  link: middle hole\n  from: m48 p. 34\n  but: [{ value: 3/8 in, from: kit }]',
      },
      expect: [],
    },
  ],
});
