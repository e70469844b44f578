import { type Cure, defineCheck } from './define.ts';
import { eitherOf, nearest, wordsOf } from './vocabulary.ts';

/** None of a group of features of which every unit has one. */
/** A feature more in the list of the unit. */
const feature = (as: string): Cure => ({ under: ['unit', 'features'], as, item: true });

export default defineCheck({
  id: 'feature-unsaid',
  severity: 'warning',
  group: 'reading',
  summary: 'The features leave out something that every unit of the kind is or has.',
  explain:
    'Whether a unit is updraft or downdraft, of one barrel or two, decides how the restorer holds ' +
    'it, and whether one baseline serves every barrel. Accept it for a unit that is none of these.',
  messages: {
    unsaid: {
      message: 'the features do not say whether the unit is {choices}',
      fix: 'add one of {choices} to `features:`',
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    if (kind === null || sheet.unit.kind === null) return;
    const named = new Set<string>();
    const words = wordsOf(kind.features);
    for (const { value, known: plain } of sheet.unit.features) {
      // A misspelt feature has a finding of its own; it does not also leave its group unsaid.
      const known = plain ?? kind.featureNamed(nearest(value, words) ?? '');
      if (known !== null) named.add(known.name);
    }
    const last = sheet.unit.features.at(-1);
    for (const group of kind.oneOf) {
      if (group.some((name) => named.has(name))) continue;
      report({
        message: 'unsaid',
        span: last?.span ?? sheet.unit.kind.span,
        values: { choices: eitherOf(group) },
        suggest: () => group.map(feature),
        subject: group[0] ?? null,
        alsoCalled: group,
      });
    }
  },
  examples: [
    {
      name: 'nothing says which way the air goes',
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, pump] }',
      },
      expect: [
        {
          at: 'pump',
          message:
            'the features do not say whether the unit is `downdraft`, `semi-downdraft`, `updraft` or `side-draft`',
          fix: 'add one of `downdraft`, `semi-downdraft`, `updraft` or `side-draft` to `features:`',
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
