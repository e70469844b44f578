import type { Setting } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { eitherOf } from './vocabulary.ts';

/** A setting of a feature that the unit is not said to have. */
export default defineCheck({
  id: 'feature-dropped',
  severity: 'note',
  group: 'reading',
  summary: 'A setting belongs to a feature that the sheet does not say the unit has.',
  explain:
    'By its features the sheet is held to the settings and the work that each asks for. A feature that ' +
    'was taken away while its setting stayed takes those proofs with it, and nobody notices. Where ' +
    'several of its settings and their work stay it is a warning.',
  messages: {
    dropped: {
      message: '`{setting}` is stated, but `{features}` is not among the features of the unit',
      fix: 'add `{features}` to the features, or take out the setting and its work',
    },
    several: {
      message: '`{setting}` is stated, but none of {features} is among the features of the unit',
      fix: 'add the one that the unit has, or take out the setting and its work',
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    if (kind === null || sheet.unit.kind === null) return;
    const always = new Set(kind.always.settings.flat());
    const present = new Set(sheet.unit.features.map(({ id }) => id));
    // A feature that is misspelt has a finding of its own, and may be the one that is looked for.
    if (sheet.unit.features.some(({ known }) => known === null)) return;
    const groups = new Map<string, { features: readonly string[]; settings: Setting[] }>();
    for (const setting of sheet.settings.values()) {
      const { id, known } = setting;
      if (known === null || known.withoutFeature || always.has(id)) continue;
      const asking = [...kind.features.values()].filter(({ settings }) =>
        settings.flat().includes(id),
      );
      if (asking.length === 0 || asking.some((feature) => present.has(feature.name))) continue;
      const features = asking.map((feature) => feature.name);
      const group = groups.get(features.join()) ?? { features, settings: [] };
      groups.set(features.join(), group);
      group.settings.push(setting);
    }
    for (const { features, settings } of groups.values()) {
      const [first, ...others] = settings;
      if (!first) continue;
      const work = sheet.operations.filter(({ known }) =>
        features.some((feature) =>
          kind.features
            .get(feature)
            ?.operations.flat()
            .includes(known?.name ?? ''),
        ),
      );
      const isOne = features.length === 1;
      report({
        message: isOne ? 'dropped' : 'several',
        span: first.name.span,
        // One setting may stand there for reference; several and their work are a unit that has the part.
        severity: settings.length > 1 && work.length > 0 ? 'warning' : 'note',
        values: {
          setting: first.name.value,
          features: isOne ? (features[0] ?? '') : eitherOf(features),
        },
        suggest: () =>
          features.map((as) => ({ under: ['unit', 'features'], as, item: true as const })),
        related: [
          ...others.map(({ name }) => ({ span: name.span, label: 'another of its settings' })),
          ...work.map(({ heading }) => ({ span: heading.span, label: 'its work' })),
        ],
        subject: first.id,
        alsoCalled: others.map(({ id }) => id),
      });
    }
  },
  examples: [
    {
      name: 'an unloader on a unit that is not said to have one',
      sheet: { settings: 'unloader: { value: No. 29 drill, from: m48 p. 33 }' },
      expect: [
        {
          at: 'unloader',
          message: '`unloader` is stated, but `unloader` is not among the features of the unit',
          fix: 'add `unloader` to the features, or take out the setting and its work',
        },
      ],
    },
    {
      name: 'a needle of a slide or a piston, and neither is said',
      sheet: { settings: 'needle-shoulder: { value: flush, from: m48 p. 33 }' },
      expect: [
        {
          at: 'needle-shoulder',
          message:
            '`needle-shoulder` is stated, but none of `constant-depression` or `slide` is among the features of the unit',
          fix: 'add the one that the unit has, or take out the setting and its work',
        },
      ],
    },
    {
      name: 'a pump stroke on a unit with a pump, and settings that every unit has',
      sheet: { settings: 'pump-stroke: { value: 7/16 in, link: middle hole, from: m48 p. 34 }' },
      expect: [],
    },
  ],
});
