import { defineCheck } from './define.ts';
import { eitherOf, nearest, wordsOf } from './vocabulary.ts';

/** An operation that a feature of the unit, or every unit of the kind, needs. */
export default defineCheck({
  id: 'operation-missing',
  severity: 'warning',
  group: 'reading',
  summary: 'An operation is missing that the unit needs by its kind or one of its features.',
  explain:
    'A setting without its operation is a number without a way to set it, and work that is left ' +
    'out is left undone. Accept it where another paper is printed beside the sheet that has it.',
  messages: {
    feature: {
      message:
        'the feature `{feature}` needs the operation {choices}, and no heading of the sheet is one',
      fix: 'add a heading `## {label}` with its steps, or take `{feature}` out of the features',
      suggest: [{ takeOut: 'entry' }],
    },
    always: {
      message: 'every {kind} needs the operation {choices}, and no heading of the sheet is one',
      fix: 'add a heading `## {label}` with its steps',
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    if (kind === null || sheet.unit.kind === null) return;
    const present = new Set<string>();
    for (const { known: named, heading } of sheet.operations) {
      // A misspelt heading has a finding of its own; it is not missing as well.
      const near = named?.name ?? nearest(heading.value, wordsOf(kind.operations));
      const known = near === null ? null : kind.operationNamed(near);
      if (known !== null) present.add(known.name);
    }
    const lacking = (choices: readonly string[]): boolean =>
      !choices.some((choice) => present.has(choice));
    const label = (choices: readonly string[]): string =>
      kind.operations.get(choices[0] ?? '')?.label ?? choices[0] ?? '';

    for (const choices of kind.always.operations) {
      if (!lacking(choices)) continue;
      report({
        message: 'always',
        span: sheet.unit.kind.span,
        values: { kind: kind.name, choices: eitherOf(choices), label: label(choices) },
        suggest: () => choices.map((operation) => ({ operation })),
        subject: choices[0] ?? null,
        alsoCalled: choices,
      });
    }
    const given = new Set([...sheet.settings.values()].map(({ id }) => id));
    // Work whose setting is missing too: that finding asks for both.
    const untold = (choices: readonly string[]): boolean =>
      choices.every((choice) => {
        const made = kind.operations.get(choice)?.settings ?? [];
        return made.length > 0 && !made.some((setting) => given.has(setting));
      });
    for (const feature of sheet.unit.features) {
      const { known } = feature;
      for (const choices of known?.operations ?? []) {
        if (!lacking(choices) || ((known?.settings.length ?? 0) > 0 && untold(choices))) continue;
        report({
          message: 'feature',
          span: feature.span,
          values: { feature: feature.value, choices: eitherOf(choices), label: label(choices) },
          suggest: () => choices.map((operation) => ({ operation })),
          subject: choices[0] ?? null,
          alsoCalled: choices,
        });
      }
    }
  },
  examples: [
    {
      name: 'a bowl, and no work on it',
      sheet: {
        front:
          'unit: { kind: fuel-pump, maker: Orlo, model: P29, features: [glass-bowl] }\nsettings: { pump-pressure: { value: 4 psi, from: m48 p. 50 } }',
        body: '## Diaphragm\n\n1. Fit it, and see that it gives :value[pump-pressure].\n',
      },
      expect: [
        {
          at: 'glass-bowl',
          message:
            'the feature `glass-bowl` needs the operation `strainer` or `bowl-seal`, and no heading of the sheet is one',
          fix: 'add a heading `## Strainer` with its steps, or take `glass-bowl` out of the features',
        },
      ],
    },
    {
      name: 'what every unit of the kind needs',
      sheet: {
        front:
          'unit: { kind: fuel-pump, maker: Orlo, model: P29 }\nsettings: { pump-pressure: { value: 4 psi, from: m48 p. 50 } }',
        body: '## Bowl seal\n\n1. See that it gives :value[pump-pressure].\n',
      },
      expect: [
        {
          at: 'fuel-pump',
          message:
            'every fuel-pump needs the operation `diaphragm`, and no heading of the sheet is one',
          fix: 'add a heading `## Diaphragm` with its steps',
        },
      ],
    },
    {
      name: 'work on the diaphragm and the bowl',
      sheet: {
        front:
          'unit: { kind: fuel-pump, maker: Orlo, model: P29, features: [glass-bowl] }\nsettings: { pump-pressure: { value: 4 psi, from: m48 p. 50 } }',
        body: '## Diaphragm\n\n1. Fit it, and see that it gives :value[pump-pressure].\n\n## Bowl seal\n\n1. Fit it.\n',
      },
      expect: [],
    },
  ],
});
