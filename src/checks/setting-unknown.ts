import { defineCheck } from './define.ts';
import { nearest, ofTheKind, oneUnit, wordsOf } from './vocabulary.ts';

/** A setting that the kind does not know. */
export default defineCheck({
  id: 'setting-unknown',
  severity: 'error',
  group: 'reading',
  depth: 0,
  summary: 'The kind of unit has no such setting.',
  explain:
    'A setting under a name that the kind does not know is not held against anything: neither its ' +
    'dimension nor its usual range nor what must be said beside it. A setting that the kind really ' +
    'lacks may be accepted; a misspelling may not.',
  messages: {
    near: {
      message: '{kind} has no setting `{setting}`',
      fix: 'write `{near}:`',
      suggest: [{ rename: '{near}' }],
    },
    unknown: {
      message: '{kind} has no setting `{setting}`, so its figure is held against nothing',
      fix: 'use a name of the kind {names}, add it to the data file of the kind, or accept it with a reason',
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    if (kind === null) return;
    for (const { name, known } of sheet.settings.values()) {
      if (known !== null) continue;
      const near = nearest(name.value, wordsOf(kind.settings));
      const values = { kind: oneUnit(kind), setting: name.value };
      const { span } = name;
      const subject = name.value;
      if (near !== null) {
        // The marks that name it rightly find nothing, and the setting itself is called for by none.
        const marks = sheet.values.flatMap((use) =>
          use.setting === null && kind.settingNamed(use.name)?.name === near ? [use.span] : [],
        );
        const suspects = [span, ...marks];
        report({ message: 'near', span, values: { ...values, near }, subject, suspects });
      } else {
        const named = { ...values, names: ofTheKind(name.value, kind.settings.values(), kind) };
        report({ message: 'unknown', span, values: named, subject, severity: 'warning' });
      }
    }
  },
  examples: [
    {
      name: 'two letters swapped',
      sheet: { settings: 'unlaoder: { value: No. 29 drill, from: m48 p. 33 }' },
      expect: [
        {
          at: 'unlaoder',
          message: 'a carburetor has no setting `unlaoder`',
          fix: 'write `unloader:`',
        },
      ],
    },
    {
      name: "a setting of the club's own",
      sheet: { settings: 'heater-flap: { value: 1/4 in, from: m48 p. 40 }' },
      expect: [
        {
          at: 'heater-flap',
          severity: 'warning',
          message:
            'a carburetor has no setting `heater-flap`, so its figure is held against nothing',
          fix: 'use a name of the kind (`gaugeleaf kind carburetor` lists all), add it to the data file of the kind, or accept it with a reason',
        },
      ],
    },
    {
      name: 'another name for it that the kind knows',
      sheet: { settings: 'vacuum-break: { value: 3/16 in, from: m48 p. 32 }' },
      expect: [],
    },
  ],
});
