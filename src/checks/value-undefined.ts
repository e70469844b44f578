import { isBrokenMark } from './broken-marks.ts';
import { defineCheck } from './define.ts';
import { nearest, plainName, settingNames } from './vocabulary.ts';

/** `:value[name]` where the sheet has no such setting. */
export default defineCheck({
  id: 'value-undefined',
  severity: 'error',
  group: 'reading',
  depth: 8,
  summary: 'The work calls for a setting that the front matter does not give.',
  explain:
    'The step would print with a hole where its number belongs. It cannot be accepted: give the ' +
    'setting, or correct its name.',
  messages: {
    near: {
      message: 'no setting `{name}` is given',
      fix: 'write `:value[{near}]`',
      suggest: [{ write: ':value[{near}]' }],
    },
    absent: {
      message: 'no setting `{name}` is given',
      fix: 'add `{plain}: { value: ..., from: ... }` under `settings:`',
    },
    empty: {
      message: '`:value` names no setting',
      fix: 'write the name of a setting in brackets: `:value[{example}]`',
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    for (const { name, setting, span, operation: inside } of sheet.values) {
      if (isBrokenMark(span, sheet)) continue;
      if (name.trim() === '') {
        const example = [...settingNames(sheet), ...(kind?.settings.keys() ?? [])][0] ?? 'name';
        const operation = sheet.operations.find(({ index }) => index === inside);
        const own = operation?.known?.settings ?? [];
        const names = settingNames(sheet).filter((each) => own.length === 0 || own.includes(each));
        report({
          message: 'empty',
          span,
          values: { example },
          suggest: () => [...names].slice(0, 5).map((each) => ({ write: `:value[${each}]` })),
        });
        continue;
      }
      if (setting !== null) continue;
      // A name that the kind knows is no misspelling of another: the setting is missing.
      const known = kind?.settingNamed(name) ?? null;
      const near = known === null ? nearest(name, settingNames(sheet)) : null;
      const subject = known?.name ?? name;
      if (near !== null) report({ message: 'near', span, values: { name, near }, subject });
      else {
        const plain = known?.name ?? plainName(name);
        report({
          message: 'absent',
          span,
          values: { name, plain },
          subject,
          suggest: () => (known === null ? [] : [{ setting: known.name }]),
        });
      }
    }
  },
  examples: [
    {
      name: 'two letters swapped',
      sheet: { body: '## Float level\n\n1. Pass the gauge: :value[flaot-level].\n' },
      expect: [
        {
          at: ':value[flaot-level]',
          message: 'no setting `flaot-level` is given',
          fix: 'write `:value[float-level]`',
        },
      ],
    },
    {
      name: 'a setting that was never written down',
      sheet: { body: '## Float level\n\n1. Set the drop: :value[float-drop].\n' },
      expect: [
        {
          at: ':value[float-drop]',
          message: 'no setting `float-drop` is given',
          fix: 'add `float-drop: { value: ..., from: ... }` under `settings:`',
        },
      ],
    },
    {
      name: 'no name at all',
      sheet: { body: '## Float level\n\n1. Set the float: :value[].\n' },
      expect: [
        {
          at: ':value[]',
          message: '`:value` names no setting',
          fix: 'write the name of a setting in brackets: `:value[float-level]`',
        },
      ],
    },
    {
      name: 'settings called by their names, whatever the case',
      sheet: { body: '## Float level\n\n1. Set :value[float-level], then :value[Idle Mixture].\n' },
      expect: [],
    },
    {
      name: 'a setting given under one of its names and called by another',
      sheet: {
        settings: 'vacuum-break: { value: 3/16 in, from: m48 p. 32 }',
        body: '## Choke pull-down\n\n1. Set :value[choke-pull-down].\n',
      },
      expect: [],
    },
  ],
});
