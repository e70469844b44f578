import { defineCheck } from './define.ts';
import { eitherOf, nearest, wordsOf } from './vocabulary.ts';

/** A setting that a feature of the unit, or every unit of the kind, needs. */
export default defineCheck({
  id: 'setting-missing',
  severity: 'warning',
  group: 'reading',
  summary: 'A setting is missing that the unit needs by its kind or one of its features.',
  explain:
    'A restorer who finds no pump stroke on the card leaves the pump as the last owner bent it. ' +
    'Accept it where no source gives the figure, and say so: the reason is printed.',
  messages: {
    feature: {
      message: 'the feature `{feature}` needs the setting {choices}, and the sheet has none',
      fix: 'add `{first}: { value: ..., from: ... }` under `settings:` and the step that makes it, or take `{feature}` out of the features',
      suggest: [{ takeOut: 'entry' }],
    },
    always: {
      message: 'every {kind} needs the setting {choices}, and the sheet has none',
      fix: 'add `{first}: { value: ..., from: ... }` under `settings:`',
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    if (kind === null || sheet.unit.kind === null) return;
    const present = new Set<string>();
    for (const { known: named, name } of sheet.settings.values()) {
      // A misspelt setting has a finding of its own; it is not missing as well.
      const near = named?.name ?? nearest(name.value, wordsOf(kind.settings));
      const known = near === null ? null : kind.settingNamed(near);
      if (known !== null) present.add(known.name);
    }
    const lacking = (choices: readonly string[]): boolean =>
      !choices.some((choice) => present.has(choice));

    for (const choices of kind.always.settings) {
      if (!lacking(choices)) continue;
      report({
        message: 'always',
        span: sheet.unit.kind.span,
        values: { kind: kind.name, choices: eitherOf(choices), first: choices[0] ?? '' },
        suggest: () => choices.map((setting) => ({ setting })),
        subject: choices[0] ?? null,
        alsoCalled: choices,
      });
    }
    for (const feature of sheet.unit.features) {
      const { known } = feature;
      for (const choices of known?.settings ?? []) {
        if (!lacking(choices)) continue;
        report({
          message: 'feature',
          span: feature.span,
          values: { feature: feature.value, choices: eitherOf(choices), first: choices[0] ?? '' },
          suggest: () => choices.map((setting) => ({ setting })),
          subject: choices[0] ?? null,
          alsoCalled: choices,
        });
      }
    }
  },
  examples: [
    {
      name: 'an unloader with no gap given',
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, downdraft, unloader] }',
      },
      expect: [
        {
          at: 'unloader',
          message: 'the feature `unloader` needs the setting `unloader`, and the sheet has none',
          fix: 'add `unloader: { value: ..., from: ... }` under `settings:` and the step that makes it, or take `unloader` out of the features',
        },
      ],
    },
    {
      name: 'no idle mixture and no jet height',
      sheet: {
        front:
          'settings: { float-level: { value: 13/64 in, at: free end, gasket: removed, from: m48 } }\nunit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, downdraft] }',
      },
      expect: [
        {
          at: 'carburetor',
          message:
            'every carburetor needs the setting `idle-mixture` or `jet-height`, and the sheet has none',
          fix: 'add `idle-mixture: { value: ..., from: ... }` under `settings:`',
        },
      ],
    },
    {
      name: 'a pump with its stroke',
      sheet: { settings: 'pump-stroke: { value: 7/16 in, link: middle hole, from: m48 p. 34 }' },
      expect: [],
    },
    {
      name: 'a pump with its delivery in place of its stroke',
      sheet: {
        front:
          'settings: { float-level: { value: 13/64 in, from: m48 }, pump-delivery: { value: 12 cc/10 strokes, from: m48 }, idle-mixture: { value: 1 turn out, from: m48 } }',
      },
      expect: [],
    },
  ],
});
