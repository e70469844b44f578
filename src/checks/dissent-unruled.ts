import { defineCheck } from './define.ts';
import { isRuled, laterOverruled } from './later-overruled.ts';

/** Two sources differ and the editor has not said why one is right. */
export default defineCheck({
  id: 'dissent-unruled',
  severity: 'warning',
  group: 'provenance',
  summary:
    'Another source gives another figure, and the sheet does not say why it is not followed.',
  explain:
    'Two papers that differ leave the restorer to choose. The editor has seen both and decides; ' +
    'the ruling is printed under the figure. Accept it while the question is open.',
  messages: {
    unruled: {
      message:
        '{source} gives `{other}` for `{setting}`, against `{value}`, and no ruling says why',
      fix: 'add `ruling: ...` to the entry under `but:`, with the reason in a sentence',
    },
    statement: {
      message: '{source} states `{other}` for `{setting}`, {own} `{value}`, and no ruling says why',
      fix: 'name the one that is right under `follows:`, and add `ruling: ...` with the reason in a sentence',
    },
  },
  run(sheet, _context, report) {
    for (const setting of sheet.settings.values()) {
      const { name, canonical, value, but, from } = setting;
      const listed = new Set(setting.statements.map((statement) => statement.value));
      for (const dissent of but) {
        if (isRuled(dissent) || laterOverruled(sheet, setting, dissent) !== null) continue;
        const source = dissent.from?.source.value;
        const other = dissent.value?.text ?? '';
        const own = from[0]?.source.value;
        report({
          message: listed.has(dissent.value) ? 'statement' : 'unruled',
          span: dissent.value?.span ?? dissent.span,
          values: {
            source: source === undefined ? 'another source' : `\`${source}\``,
            other,
            setting: name.value,
            value: value?.text ?? '',
            own: own === undefined ? 'against' : `\`${own}\``,
          },
          ...(value === null
            ? {}
            : {
                compared: [value.text, other],
                related: [{ span: value.span, label: 'the value' }],
              }),
          subject: canonical ?? name.value,
        });
      }
    }
  },
  examples: [
    {
      name: 'two drills and no word',
      sheet: {
        settings:
          'unloader:\n  value: No. 29 drill\n  from: m48 p. 33\n  but:\n    - { value: No. 30 drill, from: b17 }',
      },
      expect: [
        {
          at: 'No. 30 drill',
          message:
            '`b17` gives `No. 30 drill` for `unloader`, against `No. 29 drill`, and no ruling says why',
          fix: 'add `ruling: ...` to the entry under `but:`, with the reason in a sentence',
        },
      ],
    },
    {
      name: 'two drills, and the ruling',
      sheet: {
        settings:
          'unloader:\n  value: No. 29 drill\n  from: m48 p. 33\n  but:\n    - { value: No. 30 drill, from: b17, ruling: later bulletin covers the 1AX only }',
      },
      expect: [],
    },
    {
      name: 'every statement is listed, and two that differ stand without a word',
      sheet: {
        front:
          'sources:\n  m48: { title: Workshop Manual, kind: manual, year: 1948 }\n  kit: { title: Kit leaflet, kind: leaflet, year: 1951 }\n  bench: { title: Units measured, kind: measured, units: 3 }',
        settings:
          'unloader:\n  statements:\n    - { value: No. 29 drill, from: m48 p. 33 }\n    - { value: 0.136 in, from: bench }\n    - { value: No. 30 drill, from: kit p. 2 }',
      },
      expect: [
        {
          at: 'No. 30 drill',
          message:
            '`kit` states `No. 30 drill` for `unloader`, `m48` `No. 29 drill`, and no ruling says why',
          fix: 'name the one that is right under `follows:`, and add `ruling: ...` with the reason in a sentence',
        },
      ],
    },
    {
      name: 'one reason for all that differ',
      sheet: {
        front:
          'sources:\n  m48: { title: Workshop Manual, kind: manual, year: 1948 }\n  kit: { title: Kit leaflet, kind: leaflet, year: 1951 }',
        settings:
          'unloader:\n  statements:\n    - { value: No. 30 drill, from: kit p. 2 }\n    - { value: No. 29 drill, from: m48 p. 33 }\n  follows: m48\n  ruling: the leaflet has two digits changed about',
      },
      expect: [],
    },
  ],
});
