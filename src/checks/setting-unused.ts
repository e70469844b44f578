import { NOT_STATED } from '../quantity/index.ts';
import { settingNamed } from '../sheet/index.ts';
import type { Setting } from '../sheet/model.ts';
import { brokenMarks } from './broken-marks.ts';
import { defineCheck } from './define.ts';
import { readOf } from './stated-sizes.ts';
import { nearest, settingNames } from './vocabulary.ts';

/** A setting that no `:value[...]` of the work calls for. */
export default defineCheck({
  id: 'setting-unused',
  severity: 'warning',
  group: 'reading',
  depth: 8,
  summary: 'A setting is given that no step of the work uses.',
  explain:
    'A number that no step calls for is set by nobody: either the step is missing, or it carries a ' +
    'number of its own that will not follow when the setting is corrected. Accept it for a figure ' +
    'that is only for reference.',
  messages: {
    unused: {
      message: '`{setting}` is given, but no step uses it',
      fix: 'put `:value[{setting}]` in the step that makes it, or accept it with a reason',
    },
  },
  run(sheet, _context, report) {
    if (sheet.settings.size === 0) return;
    const used = new Set<Setting>();
    const undefinedNames: string[] = [];
    for (const { name, setting } of sheet.values) {
      if (setting !== null) used.add(setting);
      else undefinedNames.push(name);
    }
    // The misspelt or broken `:value[...]` has a finding of its own and is what leaves the setting unused.
    for (const name of undefinedNames) {
      const near = nearest(name, settingNames(sheet));
      const setting = near === null ? null : settingNamed(near, sheet);
      if (setting !== null) used.add(setting);
    }
    for (const { meant } of brokenMarks(sheet)) {
      const name = /^:value\[(.*)\]$/.exec(meant)?.[1];
      const setting = name === undefined ? null : settingNamed(name, sheet);
      if (setting !== null) used.add(setting);
    }
    const ids = new Set<string>();
    for (const setting of sheet.settings.values()) {
      // A setting that is given twice is told as that, and the work uses the first.
      const isSecond = ids.has(setting.id);
      ids.add(setting.id);
      // What no source states is made in no step.
      const isUnstated = setting.value !== null && readOf(setting.value)?.condition === NOT_STATED;
      if (isSecond || isUnstated || used.has(setting)) continue;
      report({
        message: 'unused',
        span: setting.name.span,
        values: { setting: setting.name.value },
        suggest: () => {
          const name = setting.name.value;
          const step = `Set and measure: :value[${name}].`;
          const makers = sheet.operations.filter(({ known }) =>
            known?.settings.includes(setting.id),
          );
          const [maker] = makers;
          if (maker !== undefined) return [{ step, where: 'end', at: maker.heading.span }];
          const kinds = [...(sheet.kind?.operations.values() ?? [])];
          const operation = kinds.find(({ settings }) => settings.includes(setting.id));
          return operation === undefined ? [] : [{ operation: operation.name }];
        },
        subject: setting.id,
      });
    }
  },
  examples: [
    {
      name: 'a float drop that no step sets',
      sheet: { settings: 'float-drop: { value: 1-1/4 in, from: m48 p. 31 }' },
      expect: [
        {
          at: 'float-drop',
          message: '`float-drop` is given, but no step uses it',
          fix: 'put `:value[float-drop]` in the step that makes it, or accept it with a reason',
        },
      ],
    },
    {
      name: 'every setting used',
      sheet: {
        settings: 'float-drop: { value: 1-1/4 in, from: m48 p. 31 }',
        body: '## Float\n\n1. Set :value[float-level], :value[float-drop], :value[pump-stroke], :value[idle-mixture].\n',
      },
      expect: [],
    },
    {
      name: 'accepted as a figure for reference',
      sheet: {
        settings: 'float-drop: { value: 1-1/4 in, from: m48 p. 31 }',
        front:
          'accept: [{ finding: setting-unused, at: float-drop, reason: The float is riveted and cannot be bent }]',
      },
      expect: [
        {
          at: 'float-drop',
          message: '`float-drop` is given, but no step uses it',
          fix: 'put `:value[float-drop]` in the step that makes it, or accept it with a reason',
        },
      ],
    },
    {
      name: 'a float drop that no source states',
      sheet: { settings: 'float-drop: { value: not stated, from: m48 p. 31 }' },
      expect: [],
    },
  ],
});
