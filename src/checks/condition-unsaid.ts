import type { KindSetting } from '../kinds/model.ts';
import { NOT_STATED, principal } from '../quantity/index.ts';
import type { Statement } from '../quantity/model.ts';
import type { Setting } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { readOf } from './stated-sizes.ts';

/** A setting without what must be said beside it: where, with the gasket on or off, in which hole. */
export default defineCheck({
  id: 'condition-unsaid',
  severity: 'warning',
  group: 'reading',
  summary: 'A setting does not say what it must: where it is measured, in what state.',
  explain:
    'A float level measured with the gasket on is out by the thickness of the gasket, and one ' +
    'measured at the center is not one measured at the free end. Accept it where the unit has no ' +
    'choice, and say so.',
  messages: {
    unsaid: {
      message: '`{setting}` does not say `{key}`',
      fix: 'add `{key}: ...` beside its value; {key} is one of the things the figure depends on',
      suggest: [{ say: '{key}', as: null }],
    },
    way: {
      message: '{text} does not say which way it is counted',
      fix: 'write {ways}, as the source has it',
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    if (kind === null) return;
    for (const setting of sheet.settings.values()) {
      const { known } = setting;
      if (known === null) continue;
      // Of what is not stated there is nothing that depends on where and how.
      if (readOf(setting.value)?.condition === NOT_STATED) continue;
      for (const key of known?.mustSay ?? []) {
        if (says(setting, key, known?.saidBy.get(key) ?? [])) continue;
        report({
          message: 'unsaid',
          span: setting.name.span,
          values: { setting: setting.name.value, key },
          subject: setting.id,
        });
      }
      if (known === undefined) continue;
      for (const size of [setting.value, ...setting.places.values()]) {
        const statement = readOf(size);
        const ways = statement === null ? [] : waysUnsaid(statement, known);
        if (size === null || statement === null || ways.length === 0) continue;
        report({
          message: 'way',
          span: size.span,
          values: {
            text: statement.text,
            ways: ways.map((way) => `\`${statement.text} ${way}\``).join(' or '),
          },
          suggest: () => ways.map((way) => ({ write: `${statement.text} ${way}` })),
          subject: setting.id,
          // One way is usual and is meant; of two nobody knows which.
          ...(ways.length === 1 ? { severity: 'note' as const } : {}),
        });
      }
    }
  },
  examples: [
    {
      name: 'gasket on or off?',
      sheet: {
        settings: 'float-level: { value: 13/64 in, at: free end of the float, from: m48 p. 31 }',
      },
      expect: [
        {
          at: 'float-level',
          message: '`float-level` does not say `gasket`',
          fix: 'add `gasket: ...` beside its value; gasket is one of the things the figure depends on',
        },
      ],
    },
    {
      name: 'where, and without the gasket',
      sheet: {
        settings:
          'float-level:\n  value: 13/64 in\n  at: free end of the float\n  gasket: removed\n  from: m48 p. 31',
      },
      expect: [],
    },
    {
      name: 'two notches, rich or lean',
      sheet: { settings: 'choke-cover-index: { value: 2 notches, from: m48 p. 36 }' },
      expect: [
        {
          at: '2 notches',
          message: '2 notches does not say which way it is counted',
          fix: 'write `2 notches lean` or `2 notches rich`, as the source has it',
        },
      ],
    },
    {
      name: 'turns with one usual way',
      sheet: { settings: 'idle-mixture: { value: 1-1/4 turns, from: m48 p. 40 }' },
      expect: [
        {
          at: '1-1/4 turns',
          severity: 'note',
          message: '1-1/4 turns does not say which way it is counted',
          fix: 'write `1-1/4 turns out`, as the source has it',
        },
      ],
    },
    {
      name: 'at the index, which has no way',
      sheet: { settings: 'choke-cover-index: { value: index, from: m48 p. 36 }' },
      expect: [],
    },
    {
      name: 'said in the words beside it',
      sheet: {
        settings:
          'float-level: { value: 13/64 in, at: "free end, gasket removed", from: m48 p. 31 }',
      },
      expect: [],
    },
  ],
});

/**
 * The ways that a count could be meant where it says none: both of a range that goes either way from
 * its datum, or the usual one. Empty where a way or another datum is said, or nothing is counted.
 */
function waysUnsaid(statement: Statement, known: KindSetting): readonly string[] {
  const { dimension, sense, datum, low, high } = statement;
  if (sense !== null || (dimension !== 'turns' && dimension !== 'notches')) return [];
  if (dimension === 'notches' && datum !== null) return [];
  const counted = [principal(statement)?.base, low?.base, high?.base];
  if (!counted.some((base) => base !== undefined && base.n !== 0n)) return [];
  const range = known.usual.find((usual) => usual.dimension === dimension);
  const [one, two] = [range?.low.sense, range?.high.sense];
  if (one && two && one !== two) return [one, two];
  return known.sense !== null && dimension === 'turns' ? [known.sense] : [];
}

/** Whether the key stands beside the value, or it or another word for it in something that does. */
function says(setting: Setting, key: string, words: readonly string[]): boolean {
  if (key === 'at') return setting.at !== null;
  const word = new RegExp(`\\b(?:${[key, ...words].map(escaped).join('|')})`, 'i');
  for (const [name, { value }] of setting.said) {
    if (word.test(name) || word.test(value)) return true;
  }
  return word.test(setting.at?.value ?? '') || word.test(setting.note?.value ?? '');
}

function escaped(word: string): string {
  return word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
