import { holds, isWithin, printedFigure, samplesOf, stretchText } from '../measured/index.ts';
import { bench } from './bench-example.ts';
import { defineCheck } from './define.ts';

/** Of fewer units the stretch is so wide that hardly any limits hold it. */
const ENOUGH = 5;

/** Limits that would refuse units like those that were measured. */
export default defineCheck({
  id: 'measured-spread',
  severity: 'note',
  group: 'provenance',
  summary: 'The limits would refuse good units like those that were measured.',
  explain:
    'The stretch that holds 90 % of all such units, at 95 % confidence (the two-sided tolerance interval ' +
    'of ISO 16269-6), is wider than the printed limits. Either the limits are those of new units, or the ' +
    'measured ones are worn. It is said of five units or more.',
  messages: {
    narrow: {
      message:
        '{text} would refuse good units: by {n} readings of `{source}` 90 % of them need {stretch}',
      fix: 'measure more units, or say in `note` that good ones were found outside',
    },
  },
  run(sheet, _context, report) {
    for (const sample of samplesOf(sheet)) {
      const { setting, statistics, source } = sample;
      const { spread, n } = statistics;
      const printed = printedFigure(sample);
      if (!setting?.value || !spread || !printed || n < ENOUGH) continue;
      // Limits about another figure are another finding.
      if (isWithin(printed, sample) === false || holds(printed, spread.units90) !== false) continue;
      report({
        message: 'narrow',
        span: setting.value.span,
        values: {
          text: setting.value.text,
          n: String(n),
          source: source.name.value,
          stretch: stretchText(spread.units90, sample),
        },
        related: [{ span: source.name.span, label: 'the source of the readings' }],
        subject: setting.id,
        alsoCalled: [source.name.value],
      });
    }
  },
  examples: [
    {
      name: 'a hundredth either way, and units that differ by more',
      sheet: {
        front: bench(5, 'pump-stroke: [0.431 in, 0.437 in, 0.446 in, 0.440 in, 0.433 in]'),
        settings: 'pump-stroke: { value: 0.437 ± 0.010 in, link: middle hole, from: m48 p. 34 }',
      },
      expect: [
        {
          at: '0.437 ± 0.010 in',
          message:
            '0.437 ± 0.010 in would refuse good units: by 5 readings of `bench` 90 % of them need 0.4119 to 0.4629 in',
          fix: 'measure more units, or say in `note` that good ones were found outside',
        },
      ],
    },
    {
      name: 'limits that let them through, and four units that are too few to tell',
      sheet: {
        front: bench(
          null,
          'pump-stroke: [0.437 in, 0.438 in, 0.438 in, 0.437 in, 0.438 in]',
          'idle-mixture: [1.2 turns out, 1.4 turns out, 1.2 turns out, 1.3 turns out]',
        ),
        settings:
          'pump-stroke: { value: 0.437 ± 0.010 in, link: middle hole, from: m48 p. 34 }\nidle-mixture: { value: 1-1/4 ± 1/8 turns out, from: m48 p. 40 }',
      },
      expect: [],
    },
  ],
});
