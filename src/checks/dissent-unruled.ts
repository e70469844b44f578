import { defineCheck } from './define.ts';

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
  },
  run(sheet, _context, report) {
    for (const { name, canonical, value, but } of sheet.settings.values()) {
      for (const dissent of but) {
        if (dissent.ruling !== null && dissent.ruling.value.trim() !== '') continue;
        const source = dissent.from?.source.value;
        const other = dissent.value?.text ?? '';
        report({
          message: 'unruled',
          span: dissent.value?.span ?? dissent.span,
          values: {
            source: source === undefined ? 'another source' : `\`${source}\``,
            other,
            setting: name.value,
            value: value?.text ?? '',
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
  ],
});
