import { gaugeAdvice, nearestWords, ordinaryKit } from '../gauges/index.ts';
import { gapsOf } from '../sheet/index.ts';
import { defineCheck } from './define.ts';

/** Narrow limits that no gauge at hand lies within, and no gauge named. */
export default defineCheck({
  id: 'gauge-none-fits',
  severity: 'note',
  group: 'sizes',
  summary: 'Limits that no common gauge, or none of the club’s kit, lies within.',
  explain:
    'The reader has nothing to set the gap by, and takes the nearest: a gauge that is itself outside ' +
    'the limits. Limits that a steel rule can tell are passed over, and so are gaps that leaves laid ' +
    'together can measure. Name the gauge that the work was done with, and it is held to the limits; ' +
    'or give the club’s own gauges under `kit:` in `edition.yaml`.',
  messages: {
    none: {
      message: 'no {gauge} lies within {value}; nearest {nearest}',
      fix: 'name the gauge that it is set with under `gauge:`, or list it in the `kit:` of `edition.yaml`',
      suggest: [{ say: 'gauge', as: null }],
    },
  },
  run(sheet, context, report) {
    for (const setting of sheet.settings.values()) {
      for (const { size, statement, place, isGauged } of gapsOf(setting, sheet)) {
        const { low, high } = statement;
        if (isGauged || !low || !high) continue;
        const kit = context.kit ?? ordinaryKit();
        const advice = gaugeAdvice(statement, kit, place);
        if (advice === null || advice.isForRule) continue;
        if (advice.fits.length > 0 || advice.stack?.fits) continue;
        const sides = nearestWords(advice);
        report({
          message: 'none',
          span: size.span,
          values: {
            gauge: kit.ordinary ? 'common gauge' : 'gauge of the kit',
            value: statement.text,
            nearest: `${sides.includes(' and ') ? 'are' : 'is'} ${sides || 'nothing'}`,
          },
          subject: setting.id,
        });
      }
    }
  },
  examples: [
    {
      name: 'limits between two wires',
      sheet: { settings: 'fast-idle-gap: { value: 0.0266–0.0274 in, from: m48 p. 34 }' },
      expect: [
        {
          at: '0.0266–0.0274 in',
          message:
            'no common gauge lies within 0.0266–0.0274 in; nearest are 0.026 in wire (0.0010 in less) and 0.70 mm wire (0.0006 in more)',
          fix: 'name the gauge that it is set with under `gauge:`, or list it in the `kit:` of `edition.yaml`',
        },
      ],
    },
    {
      name: 'larger than any gauge of the bench',
      sheet: { settings: 'dashpot: { value: 0.620 ± 0.005 in, from: m48 p. 41 }' },
      expect: [
        {
          at: '0.620 ± 0.005 in',
          message:
            'no common gauge lies within 0.620 ± 0.005 in; nearest is 13 mm drill (0.1082 in less)',
          fix: 'name the gauge that it is set with under `gauge:`, or list it in the `kit:` of `edition.yaml`',
        },
      ],
    },
    {
      name: 'a wire exactly on the limit',
      sheet: { settings: 'fast-idle-gap: { value: 0.0260–0.0274 in, from: m48 p. 34 }' },
      expect: [],
    },
    {
      name: 'limits that a steel rule can tell, and limits that two leaves make',
      sheet: {
        settings:
          'float-level: { value: 41/64 ± 1/64 in, at: free end, gasket: removed, from: m48 p. 31 }\nbowl-vent: { value: 0.0264–0.0276 in, from: m48 p. 36 }',
      },
      expect: [],
    },
    {
      name: 'a gauge named all the same',
      sheet: {
        settings:
          'fast-idle-gap: { value: 0.0266–0.0274 in, gauge: 0.027 in wire, from: m48 p. 34 }',
      },
      expect: [],
    },
  ],
});
