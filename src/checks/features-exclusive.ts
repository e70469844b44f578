import { defineCheck } from './define.ts';

/** Two features that no one unit has. */
export default defineCheck({
  id: 'features-exclusive',
  severity: 'error',
  group: 'reading',
  summary: 'Two features are named that one unit cannot have together.',
  explain:
    'A unit with one barrel has not two. What is required, and what is the same on every barrel, ' +
    'hangs on the features, so a wrong one makes the other checks look for the wrong things. It cannot be accepted.',
  messages: {
    exclusive: {
      message: 'the unit cannot be both `{first}` and `{second}`',
      fix: 'take one of the two out of the features',
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    if (kind === null) return;
    const before: { readonly name: string; readonly index: number }[] = [];
    for (const [index, feature] of sheet.unit.features.entries()) {
      const { known } = feature;
      if (known === null) continue;
      for (const earlier of before) {
        const other = kind.features.get(earlier.name);
        if (!known.excludes.includes(earlier.name) && !other?.excludes.includes(known.name))
          continue;
        const first = sheet.unit.features[earlier.index];
        if (first === undefined) continue;
        report({
          message: 'exclusive',
          span: feature.span,
          values: { first: first.value, second: feature.value },
          compared: [first.value, feature.value],
          related: [{ span: first.span, label: 'the other' }],
          suggest: () => [
            { takeOut: 'entry', at: feature.span },
            { takeOut: 'entry', at: first.span },
          ],
          subject: known.name,
        });
      }
      before.push({ name: known.name, index });
    }
  },
  examples: [
    {
      name: 'one barrel and two',
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, two-barrel, downdraft] }',
      },
      expect: [
        {
          at: 'two-barrel',
          message: 'the unit cannot be both `single-barrel` and `two-barrel`',
          fix: 'take one of the two out of the features',
        },
      ],
    },
    {
      name: 'one barrel, downdraft',
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, downdraft, pump] }',
      },
      expect: [],
    },
  ],
});
