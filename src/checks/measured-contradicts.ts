import {
  allowedText,
  isWithin,
  meanText,
  printedFigure,
  samplesOf,
  stretchText,
} from '../measured/index.ts';
import { rational } from '../quantity/index.ts';
import { isMeasured } from '../sheet/index.ts';
import type { Setting, Sheet } from '../sheet/model.ts';
import { bench } from './bench-example.ts';
import { defineCheck } from './define.ts';

/** Of fewer units chance has so much room that it is a note. */
const MANY = 4;

/** A paper's figure that the measured units cannot have as their mean. */
export default defineCheck({
  id: 'measured-contradicts',
  severity: 'warning',
  group: 'provenance',
  summary: 'The measured units contradict what the paper prints.',
  explain:
    'The figure lies outside of what the mean of all such units can be, at 95 % by Student’s t (JCGM 100, ' +
    'G.3.2), and by more than half of the last place that was read. Either the paper has a misprint, or ' +
    'the units are worn or were measured otherwise. Of bare limits the middle is meant. Of three units it ' +
    'is a note, and of fewer nothing is said. Accept it where the units are known to be worn.',
  messages: {
    off: {
      message:
        '{text} cannot be the mean of such units: {n} readings of `{source}` have it from {stretch}, about {mean}',
      fix: 'look in the paper once more{allowed}; or accept it with what is wrong with the units',
    },
  },
  run(sheet, _context, report) {
    for (const sample of samplesOf(sheet)) {
      const { setting, statistics, source, readings } = sample;
      const { spread, n, mean } = statistics;
      const size = setting?.value ?? null;
      const printed = printedFigure(sample);
      if (!setting || !size || !spread || !printed || printed.value === null) continue;
      if (isOfTheBench(setting, sheet) || isWithin(printed, sample) !== false) continue;
      const half = readings.reduce(
        (most, each) => (each.half.compare(most) > 0 ? each.half : most),
        rational(0),
      );
      if (printed.value.sub(mean).abs().compare(half) <= 0) continue;
      const allowed = allowedText(printed, sample);
      report({
        message: 'off',
        span: size.span,
        severity: n < MANY ? 'note' : 'warning',
        values: {
          text: size.text,
          n: String(n),
          source: source.name.value,
          stretch: stretchText(spread.mean95, sample),
          mean: meanText(sample),
          allowed: allowed === null ? '' : `: the units allow ${allowed}`,
        },
        compared: [size.text, meanText(sample)],
        related: [{ span: source.name.span, label: 'the source of the readings' }],
        suggest: () => (allowed === null ? [] : [{ write: allowed }]),
        subject: setting.id,
        alsoCalled: [source.name.value],
      });
    }
  },
  examples: [
    {
      name: 'a figure above all that five units read',
      sheet: {
        front: bench(5, 'float-level: [0.203 in, 0.205 in, 0.204 in, 0.202 in, 0.203 in]'),
        settings:
          'float-level:\n  value: 15/64 in\n  at: free end of the float\n  cover: inverted\n  gasket: removed\n  from: m48 p. 31',
      },
      expect: [
        {
          at: '15/64 in',
          message:
            '15/64 in cannot be the mean of such units: 5 readings of `bench` have it from 0.2019 to 0.2049 in, about 0.2034 in',
          fix: 'look in the paper once more: the units allow 13/64 in; or accept it with what is wrong with the units',
        },
      ],
    },
    {
      name: 'three units prove so little that it is a note',
      sheet: {
        front: bench(3, 'idle-mixture: [1.5 turns out, 1.6 turns out, 1.5 turns out]'),
      },
      expect: [
        {
          at: '1-1/4 turns out',
          severity: 'note',
          message:
            '1-1/4 turns out cannot be the mean of such units: 3 readings of `bench` have it from 1.38 to 1.68 turns, about 1.53 turns',
          fix: 'look in the paper once more: the units allow 1-1/2 turns out; or accept it with what is wrong with the units',
        },
      ],
    },
    {
      name: 'a figure that the mean can be, and two units that prove nothing',
      sheet: {
        front: bench(
          null,
          'float-level: [0.203 in, 0.205 in, 0.204 in, 0.202 in, 0.203 in]',
          'idle-mixture: [1.5 turns out, 1.6 turns out]',
        ),
      },
      expect: [],
    },
  ],
});

/** Whether a figure says that it was measured itself: `measured-value-off` then holds it against its readings. */
function isOfTheBench({ from }: Setting, sheet: Sheet): boolean {
  const sources = from.flatMap(({ id }) => sheet.sources.get(id) ?? []);
  return sources.length > 0 && sources.length === from.length && sources.every(isMeasured);
}
