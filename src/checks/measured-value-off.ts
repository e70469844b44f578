import {
  isOffMean,
  meanText,
  numberText,
  pooled,
  printedFigure,
  samplesOf,
} from '../measured/index.ts';
import type { PrintedFigure, Sample } from '../measured/model.ts';
import { formatDecimal } from '../quantity/index.ts';
import { isMeasured } from '../sheet/index.ts';
import type { Setting, Sheet } from '../sheet/model.ts';
import { bench } from './bench-example.ts';
import { defineCheck } from './define.ts';
import { slipsToSuit } from './reading-slips.ts';

/** A figure that says it was measured, and is not what was read. */
export default defineCheck({
  id: 'measured-value-off',
  severity: 'error',
  group: 'provenance',
  depth: 1,
  summary: 'A figure of measured units is not what their readings come to.',
  explain:
    'A figure that only measuring bears out is the mean of the readings that stand beside it, to the ' +
    'places that it states, of a fraction to half of its denominator’s step. Where another figure was ' +
    'chosen, `ruling` says why, and this finding keeps silent. Limits that were measured hold the mean.',
  messages: {
    outside: {
      message: '{text} lies outside of all {n} readings of `{source}`: {least} to {most}',
      fix: 'write {right}, or say under `ruling` why it is another',
    },
    mean: {
      message: '{text} is not the mean of the {n} readings of `{source}`, which is {mean}',
      fix: 'write {right}, or say under `ruling` why it is another',
    },
  },
  run(sheet, context, report) {
    const samples = samplesOf(sheet);
    if (samples.length === 0) return;
    for (const setting of sheet.settings.values()) {
      const sample = ofTheBench(setting, sheet, samples);
      const printed = sample && printedFigure(sample);
      const size = setting.value;
      if (!sample || !printed || !size || setting.ruling !== null) continue;
      const { least, most, mean, n } = sample.statistics;
      const outside = isOutside(printed, sample);
      // A rounded mean may lie outside of readings that are all but alike.
      if (printed.statement.nominal === null ? !outside : !isOffMean(printed, sample)) continue;
      const slips = slipsToSuit(size, sample, sheet, context, (number) =>
        isOffMean({ ...printed, value: number }, sample) ? 'wrong' : 'right',
      );
      const [likely] = slips;
      const rounded = asMean(printed, sample);
      const right = [
        ...(likely ? [`${likely.suggestion}, if ${likely.because}`] : []),
        ...(rounded === null || rounded === likely?.suggestion ? [] : [`the mean, ${rounded}`]),
      ];
      report({
        message: outside ? 'outside' : 'mean',
        span: size.span,
        values: {
          text: size.text,
          n: String(n),
          source: sample.source.name.value,
          least: numberText(least, sample, 0),
          most: numberText(most, sample, 0),
          mean: meanText(sample),
          right:
            right.length === 0 ? `the mean, ${numberText(mean, sample, 0)}` : right.join(', or '),
        },
        compared: [size.text, meanText(sample)],
        related: [{ span: sample.source.name.span, label: 'the source of the readings' }],
        suggest: () =>
          [...slips.map((each) => each.suggestion), ...(rounded === null ? [] : [rounded])]
            .slice(0, 3)
            .map((write) => ({ write })),
        subject: setting.id,
      });
    }
  },
  examples: [
    {
      name: 'a mean with two digits changed about, outside of all readings',
      sheet: {
        front: bench(3, 'idle-mixture: [1.27 turns out, 1.30 turns out, 1.29 turns out]'),
        settings: 'idle-mixture: { value: 1.92 turns out, from: bench }',
      },
      expect: [
        {
          at: '1.92 turns out',
          message:
            '1.92 turns out lies outside of all 3 readings of `bench`: 1.27 turns to 1.30 turns',
          fix: 'write 1.29 turns out, if two digits were swapped, or say under `ruling` why it is another',
        },
      ],
    },
    {
      name: 'one of the readings in place of their mean',
      sheet: {
        front: bench(3, 'pump-stroke: [0.431 in, 0.437 in, 0.436 in]'),
        settings: 'pump-stroke: { value: 0.437 in, link: middle hole, from: bench }',
      },
      expect: [
        {
          at: '0.437 in',
          message: '0.437 in is not the mean of the 3 readings of `bench`, which is 0.4347 in',
          fix: 'write 0.435 in, if one digit is wrong, or say under `ruling` why it is another',
        },
      ],
    },
    {
      name: 'the mean to half of the step of a fraction, and a figure with its ruling',
      sheet: {
        front: bench(
          3,
          'pump-stroke: [0.431 in, 0.437 in, 0.436 in]',
          'idle-mixture: [1.2 turns out, 1.3 turns out, 1.5 turns out]',
        ),
        settings:
          'pump-stroke: { value: 7/16 in, link: middle hole, from: bench }\nidle-mixture: { value: 1-1/2 turns out, from: bench, ruling: two of the needles were worn }',
      },
      expect: [],
    },
  ],
});

/** What all the measured sources of a figure read of it; null where a paper gives it too, or one has no readings. */
function ofTheBench(
  { from, id }: Setting,
  sheet: Sheet,
  samples: readonly Sample[],
): Sample | null {
  const names = [...new Set(from.map((each) => each.id))];
  const sources = names.flatMap((each) => sheet.sources.get(each) ?? []);
  if (sources.length === 0 || !sources.every(isMeasured)) return null;
  const own = samples.filter(
    ({ source, setting }) => setting?.id === id && sources.includes(source),
  );
  return own.length < names.length ? null : pooled(own);
}

function isOutside(
  { value, low, high, statement }: PrintedFigure,
  { statistics }: Sample,
): boolean {
  const { least, most, mean } = statistics;
  if (statement.nominal === null) {
    return (low !== null && mean.compare(low) < 0) || (high !== null && mean.compare(high) > 0);
  }
  return value !== null && (value.compare(least) < 0 || value.compare(most) > 0);
}

/** The mean in the places of the printed figure, where it is a decimal in the readings' unit. */
function asMean({ statement }: PrintedFigure, { statistics, unit }: Sample): string | null {
  const { nominal, text } = statement;
  if (nominal === null || nominal.places === null || nominal.unit !== unit) return null;
  const number = /^[\d.]*\d/.exec(nominal.text)?.[0];
  if (number === undefined) return null;
  return text.replace(number, formatDecimal(statistics.mean, nominal.places));
}
