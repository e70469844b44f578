import { defineCheck } from './define.ts';
import { nearest, ofTheKind, oneUnit, wordsOf } from './vocabulary.ts';

/** A feature that the kind does not know. */
export default defineCheck({
  id: 'feature-unknown',
  severity: 'error',
  group: 'reading',
  summary: 'The kind of unit has no such feature.',
  explain:
    'A feature says which settings and operations the sheet must have. A misspelt one demands ' +
    'nothing, so a forgotten setting is not missed. A feature that the kind really lacks may be ' +
    'accepted with a word on what it is; a misspelling may not.',
  messages: {
    near: {
      message: '{kind} has no feature `{feature}`',
      fix: 'write `{near}`',
      suggest: [{ write: '{near}' }],
    },
    unknown: {
      message: '{kind} has no feature `{feature}`, so nothing is required for it',
      fix: 'use a name of the kind {names}, add it to the data file of the kind, or accept it with a reason',
      suggest: [{ takeOut: 'entry' }],
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    if (kind === null) return;
    for (const feature of sheet.unit.features) {
      if (feature.known !== null) continue;
      const near = nearest(feature.value, wordsOf(kind.features));
      const values = { kind: oneUnit(kind), feature: feature.value };
      const { span } = feature;
      const subject = feature.value;
      if (near !== null) report({ message: 'near', span, values: { ...values, near }, subject });
      else {
        const named = { ...values, names: ofTheKind(feature.value, kind.features.values(), kind) };
        report({ message: 'unknown', span, values: named, subject, severity: 'warning' });
      }
    }
  },
  examples: [
    {
      name: 'two letters swapped',
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, downdarft] }',
      },
      expect: [
        {
          at: 'downdarft',
          message: 'a carburetor has no feature `downdarft`',
          fix: 'write `downdraft`',
        },
      ],
    },
    {
      name: "a feature of the club's own",
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, downdraft, heated-jacket] }',
      },
      expect: [
        {
          at: 'heated-jacket',
          severity: 'warning',
          message: 'a carburetor has no feature `heated-jacket`, so nothing is required for it',
          fix: 'use a name of the kind (`gaugeleaf kind carburetor` lists all), add it to the data file of the kind, or accept it with a reason',
        },
      ],
    },
    {
      name: 'a feature of another kind of unit',
      sheet: {
        front:
          'unit: { kind: ignition-distributor, maker: Orlo, model: K14, features: [four-lobe, single-points, downdraft] }',
      },
      expect: [
        {
          at: 'downdraft',
          severity: 'warning',
          message:
            'an ignition-distributor has no feature `downdraft`, so nothing is required for it',
          fix: 'use a name of the kind (`gaugeleaf kind ignition-distributor` lists all), add it to the data file of the kind, or accept it with a reason',
        },
      ],
    },
    {
      name: 'another word for it that the kind knows',
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single choke, downdraught] }',
      },
      expect: [],
    },
  ],
});
