import { workedNumbers } from '../relations/index.ts';
import { defineCheck } from './define.ts';

/** Figures that no unit can have together. */
export default defineCheck({
  id: 'relation-unworkable',
  severity: 'error',
  group: 'sizes',
  depth: 2,
  summary: 'Figures that cannot be so on one unit.',
  explain:
    'Some figures shut one another out: an angle below the one at which the plate closes, a rod thicker ' +
    'than its jet, a dwell as long as the way from lobe to lobe. Nothing can be worked from them, and ' +
    'nobody can set them. One is a misprint, or belongs to another unit. It cannot be accepted, only ' +
    'mended.',
  messages: {
    shut: { message: '{message}', fix: '{fix}' },
  },
  run(sheet, context, report) {
    const { unworkable } = workedNumbers(sheet, context);
    for (const { instance, message, fix, places } of unworkable) {
      const [first, ...others] = places;
      const span = first?.span ?? sheet.unit.kind?.span;
      if (!span) continue;
      report({
        message: 'shut',
        span,
        values: { message, fix },
        related: others,
        subject: instance.binding.of,
      });
    }
  },
  examples: [
    {
      name: 'a dwell in degrees of the crank',
      sheet: fourLobes('dwell: { value: 108°, from: m48 }'),
      expect: [
        {
          at: '108°',
          message: '108° of dwell leaves no time for the points to open: 4 lobes stand 90° apart',
          fix: 'look in the source for the dwell in degrees of the distributor, and count the lobes',
        },
      ],
    },
    {
      name: 'a dwell exactly as long as the way from lobe to lobe',
      sheet: fourLobes('dwell: { value: 90.0°, from: m48 }'),
      expect: [
        {
          at: '90.0°',
          message: '90.0° of dwell leaves no time for the points to open: 4 lobes stand 90° apart',
          fix: 'look in the source for the dwell in degrees of the distributor, and count the lobes',
        },
      ],
    },
    {
      name: 'a dwell that leaves no time at its upper limit',
      sheet: fourLobes('dwell: { value: 84 ± 6°, from: m48 }'),
      expect: [
        {
          at: '84 ± 6°',
          message:
            '84 ± 6° of dwell leaves no time for the points to open: 4 lobes stand 90° apart',
          fix: 'look in the source for the dwell in degrees of the distributor, and count the lobes',
        },
      ],
    },
    {
      name: 'a dwell that leaves a little time',
      sheet: fourLobes('dwell: { value: 84 ± 5°, from: m48 }'),
      expect: [],
    },
  ],
});

/** Settings of a four-lobe unit, as an example's whole front matter has them. */
function fourLobes(settings: string): { readonly front: string } {
  return {
    front: `unit: { kind: ignition-distributor, maker: Orlo, model: K14, features: [four-lobe, single-points] }\nsettings:\n  ${settings}`,
  };
}
