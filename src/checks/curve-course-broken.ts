import { type CourseBroken, courseBroken } from '../relations/index.ts';
import {
  curvesOf,
  inOrder,
  isBelow,
  ownBand,
  rowsOf,
  stationText,
  timesBand,
  timesOf,
} from '../sheet/index.ts';
import type { Setting, Sheet } from '../sheet/model.ts';
import { rowSlips } from './curve-slips.ts';
import { type CheckContext, defineCheck } from './define.ts';

/** A row of a table that lies wholly against the way that the curve goes. */
export default defineCheck({
  id: 'curve-course-broken',
  severity: 'error',
  group: 'sizes',
  depth: 3,
  summary: 'A curve that can only rise, or only fall, goes the other way between two rows.',
  explain:
    'Weights do not draw in while the shaft runs faster, and a needle that is made to taper does not grow ' +
    'thicker. Where the whole band of a row lies on the wrong side of the band of another, one of them is a ' +
    'misprint, is told in another measure, or belongs to another unit. Bands that overlap break nothing.',
  messages: {
    broken: {
      message: '{value} at {at} is {way} than {other} at {otherAt}',
      fix: '{likely}look in the source which of the two rows is right',
    },
  },
  run(sheet, context, report) {
    for (const setting of curvesOf(sheet)) {
      for (const broken of courseBroken(setting)) {
        const { doubtful, other, isTooLow } = broken;
        const { value } = doubtful.row;
        if (!value) continue;
        const slips = slipsOf(broken, setting, sheet, context);
        const measure = otherMeasure(broken, setting);
        const likely = [
          ...measure,
          ...slips.slice(0, 1).map((slip) => `${slip.suggestion}, if ${slip.because}`),
        ];
        report({
          message: 'broken',
          span: value.span,
          values: {
            value: value.text,
            at: stationText(doubtful.row),
            way: isTooLow ? 'less' : 'more',
            other: other.row.value?.text ?? '',
            otherAt: stationText(other.row),
            likely: likely.map((each) => `${each}; `).join(''),
          },
          compared: [other.row.value?.text ?? '', value.text],
          suggest: () => slips.slice(0, 3).map(({ suggestion }) => ({ write: suggestion })),
          related: other.row.value ? [{ span: other.row.value.span, label: 'the other row' }] : [],
          subject: setting.id,
        });
      }
    }
  },
  examples: [
    {
      name: 'a wrong digit in a needle',
      sheet: {
        settings:
          'needle-profile:\n  table:\n    - { at: 0 in, value: 0.0890 in }\n    - { at: 1/8 in, value: 0.0350 in }\n    - { at: 1/4 in, value: 0.0815 in }\n    - { at: 3/8 in, value: 0.0786 in }\n  from: m48 p. 35',
      },
      expect: [
        {
          at: '0.0350 in',
          message: '0.0350 in at 1/8 in is less than 0.0815 in at 1/4 in',
          fix: '0.0850 in, if one digit is wrong; look in the source which of the two rows is right',
        },
      ],
    },
    {
      name: 'bands that overlap',
      sheet: {
        settings:
          'pump-curve:\n  table:\n    - { at: 1/8 in, value: 0.5 ± 0.1 cm3 }\n    - { at: 1/4 in, value: 0.35 ± 0.05 cm3 }\n  from: m48 p. 35',
      },
      expect: [],
    },
    {
      name: 'bands that just touch, and bands just apart',
      sheet: {
        settings:
          'pump-curve:\n  table:\n    - { at: 1/8 in, value: 0.5 ± 0.1 cm3 }\n    - { at: 1/4 in, value: 0.39 cm3 max }\n  from: m48 p. 35',
      },
      expect: [
        {
          at: '0.39 cm3 max',
          message: '0.39 cm3 max at 1/4 in is less than 0.5 ± 0.1 cm3 at 1/8 in',
          fix: '0.93 cm3 max, if two digits were swapped; look in the source which of the two rows is right',
        },
      ],
    },
  ],
});

/** What the row would be in the other measure, where it keeps its course so. */
function otherMeasure(broken: CourseBroken, setting: Setting): readonly string[] {
  const { scale } = setting;
  const { doubtful } = broken;
  const { value } = doubtful.row;
  if (!scale || !value) return [];
  const isOther = !timesOf(value.text, doubtful.row).equals(1);
  const times = isOther ? scale.times : scale.times.inverse();
  const band = {
    ...timesBand(doubtful, times),
  };
  if (!keepsCourse(band, broken, setting)) return [];
  const [word = ''] = scale.words;
  return [
    isOther
      ? `take the \`${word}\` away, if it is not told so`
      : `add \`${word}\`, if it is told so`,
  ];
}

/** Whether a band in the place of the doubtful row goes with all other rows. */
function keepsCourse(
  band: {
    readonly low: CourseBroken['doubtful']['low'];
    readonly high: CourseBroken['doubtful']['high'];
  },
  { doubtful }: CourseBroken,
  setting: Setting,
): boolean {
  const rising = setting.known?.curve?.course === 'rising';
  return inOrder(rowsOf(setting)).every((row) => {
    const side = row.station.compare(doubtful.station);
    if (side === 0) return true;
    const [earlier, later] = side < 0 ? [row, band] : [band, row];
    return rising ? !isBelow(later, earlier) : !isBelow(earlier, later);
  });
}

function slipsOf(broken: CourseBroken, setting: Setting, sheet: Sheet, context: CheckContext) {
  const { row } = broken.doubtful;
  const doubted = {
    size: row.value,
    near: broken.other.row.value,
    expect: setting.known?.dimensions,
  };
  return rowSlips(doubted, sheet, context, (slipped) => {
    const band = ownBand(slipped, row);
    return band !== null && keepsCourse(band, broken, setting);
  });
}
