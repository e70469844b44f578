import { defineCheck } from './define.ts';
import { meantAt } from './problem-cures.ts';

/** Something that a variant says of its base and that has no effect. */
export default defineCheck({
  id: 'variant-idle',
  severity: 'error',
  group: 'reading',
  summary: 'What the sheet says of its base has no effect.',
  explain:
    'A name that the base does not have drops nothing, so what was to be left out is printed all the ' +
    'same. Operations keep the order of the base, so one that is put elsewhere in the variant stays ' +
    'where it was. It cannot be accepted, only mended.',
  messages: {
    mendable: { message: '{problem}', fix: '{cure}' },
  },
  run(sheet, _context, report) {
    for (const { kind, span, message, fix, write } of sheet.problems) {
      if (kind !== 'variant') continue;
      report({
        message: 'mendable',
        span,
        values: { problem: message, cure: fix ?? '' },
        suggest: () => meantAt(write),
      });
    }
  },
  examples: [
    {
      name: 'a dashpot that the base does not have',
      sheet: { front: 'based-on: orlo-base', settings: 'dashpot: none' },
      expect: [
        {
          at: 'dashpot',
          message: '`dashpot: none` drops nothing: the base has no such setting',
          fix: 'write the name that the base has, or take it out',
        },
      ],
    },
    {
      name: 'operations in another order than the base has them',
      sheet: {
        front: 'based-on: orlo-base',
        body: '## Initial idle\n\n1. Back the needle out: :value[idle-mixture].\n\n## Pump stroke\n\n1. Measure it: :value[pump-stroke].\n',
      },
      expect: [
        {
          at: 'Pump stroke',
          message:
            '`Pump stroke` stands behind `Initial idle` here and before it in the base, whose order stands',
          fix: 'put them in the order of the base, or state the whole of the work without `based-on:`',
        },
      ],
    },
    {
      name: 'a setting that is dropped, with its operation',
      sheet: {
        front:
          'based-on: orlo-base\nunit: { features: [single-barrel, downdraft] }\nsettings: { pump-stroke: none }',
        body: '',
      },
      expect: [],
    },
  ],
});
