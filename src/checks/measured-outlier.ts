import { meanText, samplesOf } from '../measured/index.ts';
import { bench } from './bench-example.ts';
import { defineCheck } from './define.ts';
import { slipsToSuit } from './reading-slips.ts';

/** A reading that stands too far from the others to be one of theirs. */
export default defineCheck({
  id: 'measured-outlier',
  severity: 'warning',
  group: 'provenance',
  depth: 1,
  summary: 'A reading of measured units is an outlier by Grubbs’ test.',
  explain:
    'One worn unit, one slipped digit or one wrong gauge draws the mean of a few after it. The test is ' +
    'Grubbs’, two-sided at 5 % (ASTM E178), and is made of four readings or more: of three it is nearly ' +
    'blind. The reading stays in all sums until somebody takes it out. Accept it, for the setting, with ' +
    'what was special about that unit.',
  messages: {
    far: {
      message:
        '{text} is an outlier among {n} readings of `{setting}`, whose mean is {mean} (G = {g}, more than {critical})',
      fix: '{likely}look at that unit and its reading again; if it was read rightly, accept it and say what was special',
    },
  },
  run(sheet, context, report) {
    for (const sample of samplesOf(sheet)) {
      const { source, readings, statistics, setting, name } = sample;
      const test = statistics.spread?.grubbs ?? null;
      const reading = readings[test?.outlier ?? -1];
      if (test === null || reading === undefined) continue;
      const others = readings.filter((each) => each !== reading);
      const [first = reading] = others;
      const low = others.reduce(
        (one, each) => (each.number.compare(one.number) < 0 ? each : one),
        first,
      );
      const high = others.reduce(
        (one, each) => (each.number.compare(one.number) > 0 ? each : one),
        first,
      );
      const slips = slipsToSuit(reading.size, sample, sheet, context, (number) =>
        number.compare(low.number) >= 0 && number.compare(high.number) <= 0 ? 'right' : 'wrong',
      );
      const [likely] = slips;
      report({
        message: 'far',
        span: reading.size.span,
        values: {
          text: reading.size.text,
          n: String(statistics.n),
          setting: name,
          mean: meanText(sample),
          g: test.g.toFixed(2),
          critical: test.critical.toFixed(2),
          likely: likely ? `${likely.suggestion}, if ${likely.because}; otherwise ` : '',
        },
        compared: [reading.size.text, `${low.size.text} to ${high.size.text}`],
        related: reading.record === null ? [] : [{ span: source.name.span, label: 'the source' }],
        suggest: () =>
          reading.record === null
            ? slips.slice(0, 3).map((each) => ({ write: each.suggestion }))
            : [],
        subject: setting?.id ?? name,
        alsoCalled: [source.name.value],
      });
    }
  },
  examples: [
    {
      name: 'two digits changed about in one of six readings',
      sheet: {
        front: bench(
          6,
          'float-level: [0.203 in, 0.205 in, 0.204 in, 0.202 in, 0.240 in, 0.203 in]',
        ),
      },
      expect: [
        {
          at: '0.240 in',
          message:
            '0.240 in is an outlier among 6 readings of `float-level`, whose mean is 0.2095 in (G = 2.04, more than 1.89)',
          fix: '0.204 in, if two digits were swapped; otherwise look at that unit and its reading again; if it was read rightly, accept it and say what was special',
        },
      ],
    },
    {
      name: 'the farthest of four that are alike, and one of three',
      sheet: {
        front: bench(
          4,
          'float-level: [0.203 in, 0.205 in, 0.204 in, 0.201 in]',
          'pump-stroke: [0.437 in, 0.438 in, 0.461 in]',
        ),
      },
      expect: [],
    },
  ],
});
