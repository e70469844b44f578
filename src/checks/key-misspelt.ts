import { settingKeys, unitKeys } from '../generated/sheet-keys.ts';
import { boundKeys } from '../kinds/index.ts';
import type { Placed } from '../text/index.ts';
import { defineCheck } from './define.ts';
import { keySpanBefore } from './key-span.ts';
import { nearest } from './vocabulary.ts';

/** `guage: 13/64 drill`: a key that nobody knows and that is one slip from one that does a job. */
export default defineCheck({
  id: 'key-misspelt',
  severity: 'warning',
  group: 'reading',
  summary: 'A key beside a setting or under `unit:` is one slip away from a known one.',
  explain:
    'Keys of your own are allowed: they print beside the setting as they are. A misspelt `gauge` or ' +
    '`also` is printed as well, but no longer checked. Accept it where the word really is meant.',
  messages: {
    near: {
      message: '`{key}` is no key that Gaugeleaf knows, and so is printed and not checked',
      fix: 'write `{near}`, if that is meant',
      suggest: [{ write: '{near}' }],
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    const look = (
      key: string,
      value: Placed<string>,
      known: readonly string[],
      subject: string,
    ): void => {
      if (known.includes(key)) return;
      const near = nearest(key, known);
      if (near === null) return;
      const at = keySpanBefore(sheet.text, key, value.span);
      report({ message: 'near', span: at, values: { key, near }, subject });
    };
    for (const setting of sheet.settings.values()) {
      if (setting.said.size === 0) continue;
      const known = [
        ...settingKeys,
        ...(setting.known?.mustSay ?? []),
        ...boundKeys(kind, setting.id),
      ];
      for (const [key, value] of setting.said) look(key, value, known, setting.id);
    }
    const ofUnit = [
      ...unitKeys,
      ...(kind?.dimensionsOfUnit.keys() ?? []),
      ...(kind?.threadsOfUnit ?? []),
    ];
    for (const [key, value] of sheet.unit.other) look(key, value, ofUnit, key);
  },
  examples: [
    {
      name: 'a gauge with two letters swapped',
      sheet: {
        settings:
          'float-level: { value: 13/64 in, guage: 13/64 drill, at: free end, gasket: removed, from: m48 }',
      },
      expect: [
        {
          at: 'guage',
          message: '`guage` is no key that Gaugeleaf knows, and so is printed and not checked',
          fix: 'write `gauge`, if that is meant',
        },
      ],
    },
    {
      name: 'a key that a formula reads, though it looks like another',
      sheet: {
        settings: 'main-jet: { value: 1.2 mm, volume: 250 cm3, time: 91 s, from: m48 }',
      },
      expect: [],
    },
    {
      name: 'a key of the editor’s own',
      sheet: {
        settings:
          'float-level: { value: 13/64 in, tool: old scriber, at: free end, gasket: removed, from: m48 }',
      },
      expect: [],
    },
  ],
});

/** Where the key of a value stands: the last time it is written before the value. */
