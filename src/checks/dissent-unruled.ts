import { agree } from '../quantity/index.ts';
import type { GaugeBook, Misprint } from '../quantity/model.ts';
import type { PlacedSize } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { isRuled, laterOverruled } from './later-overruled.ts';

/** Two sources differ and the editor has not said why one is right. */
export default defineCheck({
  id: 'dissent-unruled',
  severity: 'warning',
  group: 'provenance',
  depth: 3,
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
      suggest: [{ say: 'ruling', as: null }],
    },
    slip: {
      message:
        '{source} states `{other}`{difference} for `{setting}`, {own} `{value}`, and no ruling says why',
      fix: '{suggestion}, if {because}; otherwise name the one that is right under `follows:`, and add `ruling: ...`',
      suggest: [{ write: '{suggestion}' }, { say: 'ruling', as: null }],
    },
    statement: {
      message:
        '{source} states `{other}`{difference} for `{setting}`, {own} `{value}`, and no ruling says why',
      fix: 'name the one that is right under `follows:`, and add `ruling: ...` with the reason in a sentence',
      suggest: [{ say: 'ruling', as: null }],
    },
  },
  run(sheet, { gauges }, report) {
    for (const setting of sheet.figures) {
      const { name, id, value, but, from } = setting;
      const listed = new Set(setting.statements.map((statement) => statement.value));
      for (const dissent of but) {
        if (isRuled(dissent) || laterOverruled(sheet, setting, dissent) !== null) continue;
        const source = dissent.from?.id;
        const other = dissent.value?.text ?? '';
        const own = from[0]?.id;
        const apart = listed.has(dissent.value) ? apartBy(value, dissent.value, gauges) : null;
        report({
          message: apart === null ? 'unruled' : apart.misprint ? 'slip' : 'statement',
          span: dissent.value?.span ?? dissent.span,
          values: {
            source: source === undefined ? 'another source' : `\`${source}\``,
            other,
            setting: name.value,
            value: value?.text ?? '',
            own: own === undefined ? 'against' : `\`${own}\``,
            difference: apart?.difference ? ` (${apart.difference})` : '',
            suggestion: apart?.misprint?.suggestion ?? '',
            because: apart?.misprint?.because ?? '',
          },
          ...(value === null
            ? {}
            : {
                compared: [value.text, other],
                related: [{ span: value.span, label: 'the value' }],
              }),
          subject: id,
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
          'unloader:\n  statements:\n    - { value: No. 29 drill, from: m48 p. 33 }\n    - { value: 0.136 in, from: bench }\n    - { value: No. 40 drill, from: kit p. 2 }',
      },
      expect: [
        {
          at: 'No. 40 drill',
          message:
            '`kit` states `No. 40 drill` (0.038 in less) for `unloader`, `m48` `No. 29 drill`, and no ruling says why',
          fix: 'name the one that is right under `follows:`, and add `ruling: ...` with the reason in a sentence',
        },
      ],
    },
    {
      name: 'a statement that a slip would explain',
      sheet: {
        front:
          'sources:\n  m48: { title: Workshop Manual, kind: manual, year: 1948 }\n  kit: { title: Kit leaflet, kind: leaflet, year: 1951 }',
        settings:
          'unloader:\n  statements:\n    - { value: No. 29 drill, from: m48 p. 33 }\n    - { value: 0.163 in, from: kit p. 2 }',
      },
      expect: [
        {
          at: '0.163 in',
          message:
            '`kit` states `0.163 in` (0.027 in more) for `unloader`, `m48` `No. 29 drill`, and no ruling says why',
          fix: '0.136 in, if two digits were swapped; otherwise name the one that is right under `follows:`, and add `ruling: ...`',
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

/** By how much a statement differs from the figure, and the slip that would explain it. */
function apartBy(
  value: PlacedSize | null,
  other: PlacedSize | null,
  gauges: GaugeBook,
): { readonly difference: string | null; readonly misprint: Misprint | null } {
  const none = { difference: null, misprint: null };
  if (!value?.reading.ok || !other?.reading.ok) return none;
  const found = agree(value.reading.statement, other.reading.statement, { gauges });
  return found.verdict === 'disagrees' || found.verdict === 'within-tolerance' ? found : none;
}
