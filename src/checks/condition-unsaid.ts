import type { Setting } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { kindOf } from './vocabulary.ts';

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
    },
  },
  run(sheet, context, report) {
    const kind = kindOf(sheet, context);
    if (kind === null) return;
    for (const setting of sheet.settings.values()) {
      if (setting.canonical === null) continue;
      const known = kind.settings.get(setting.canonical);
      for (const key of known?.mustSay ?? []) {
        if (says(setting, key, known?.saidBy.get(key) ?? [])) continue;
        report({
          message: 'unsaid',
          span: setting.name.span,
          values: { setting: setting.name.value, key },
          subject: setting.canonical,
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
      name: 'said in the words beside it',
      sheet: {
        settings:
          'float-level: { value: 13/64 in, at: "free end, gasket removed", from: m48 p. 31 }',
      },
      expect: [],
    },
  ],
});

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
