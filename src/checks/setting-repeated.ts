import type { Setting } from '../sheet/model.ts';
import { defineCheck } from './define.ts';

/** One setting under two names: `float-level` and `Float Level`, or a name and its alias. */
export default defineCheck({
  id: 'setting-repeated',
  severity: 'error',
  group: 'reading',
  depth: 0,
  summary: 'One setting is given twice under different names.',
  explain:
    'Names are the same in any case and spacing, and a kind has other names for many of its settings. ' +
    'A setting that is given twice prints two figures for one thing, and the steps and the proofs take ' +
    'the first alone. It cannot be accepted: put both under one name.',
  messages: {
    repeated: {
      message: '`{second}` is the setting `{first}` once more',
      fix: 'put what is said here under `{first}:`, and the figure of another source under `but:`',
      suggest: [{ takeOut: 'entry' }],
    },
  },
  run(sheet, _context, report) {
    const given = new Map<string, Setting>();
    for (const setting of sheet.settings.values()) {
      const first = given.get(setting.id);
      if (first === undefined) {
        given.set(setting.id, setting);
        continue;
      }
      report({
        message: 'repeated',
        span: setting.name.span,
        values: { first: first.name.value, second: setting.name.value },
        related: [{ span: first.name.span, label: 'the first' }],
        suspects: [setting.name.span, first.name.span],
        subject: setting.id,
      });
    }
  },
  examples: [
    {
      name: 'a name in words beside the plain one',
      sheet: { settings: 'Float Level: { value: 7/32 in, from: m48 p. 31 }' },
      expect: [
        {
          at: 'Float Level',
          message: '`Float Level` is the setting `float-level` once more',
          fix: 'put what is said here under `float-level:`, and the figure of another source under `but:`',
        },
      ],
    },
    {
      name: 'a name and its alias',
      sheet: {
        settings:
          'unloader: { value: No. 29 drill, from: m48 p. 33 }\nChoke Unloader: { value: No. 30 drill, from: m48 p. 34 }',
      },
      expect: [
        {
          at: 'Choke Unloader',
          message: '`Choke Unloader` is the setting `unloader` once more',
          fix: 'put what is said here under `unloader:`, and the figure of another source under `but:`',
        },
      ],
    },
    {
      name: 'a figure for another state of the engine, under a longer name of its own',
      sheet: {
        settings:
          'idle-speed: { value: 500 rpm, from: m48 p. 35 }\nidle-speed-in-drive: { value: 450 rpm, from: m48 p. 35 }',
      },
      expect: [],
    },
    {
      name: 'a name in words alone',
      sheet: { settings: 'Choke Unloader: { value: No. 29 drill, from: m48 p. 33 }' },
      expect: [],
    },
  ],
});
