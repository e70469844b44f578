import { type CurveDispute, curveDisputes, rowsAbove } from '../relations/index.ts';
import { readingText, stationText } from '../sheet/index.ts';
import type { Setting } from '../sheet/model.ts';
import { defineCheck } from './define.ts';

/** A setting of one figure that a table of the same sheet does not bear out. */
export default defineCheck({
  id: 'curve-disagrees',
  severity: 'error',
  group: 'sizes',
  depth: 3,
  summary: 'A figure lies outside of what a table of the same sheet says at its station.',
  explain:
    'The most that the weights give, the speed at which they begin, and the delivery at the stroke of the ' +
    'sheet are points of the tables. Where such a figure lies wholly outside of the band there, one of the two ' +
    'is a misprint, is told in another measure, or is of another unit.',
  messages: {
    above: {
      message: '{row} at {station} is more than `{setting}`, {value}: {because}',
      fix: 'look in the source which is right',
    },
    apart: {
      message: '`{setting}` is {value}{at}, but of `{curve}` {says}',
      fix: 'look in the source which is right, and in which measure each is told',
    },
    late: {
      message: '`{setting}` is {value}, but of `{curve}` {says}',
      fix: 'look in the source which is right: there the table has to leave nothing yet',
    },
  },
  run(sheet, context, report) {
    for (const { curve, row, setting, size, because } of rowsAbove(sheet)) {
      if (!row.row.value) continue;
      report({
        message: 'above',
        span: row.row.value.span,
        values: {
          row: row.row.value.text,
          station: stationText(row.row),
          setting: setting.name.value,
          value: size.text,
          because,
        },
        compared: [size.text, row.row.value.text],
        related: [{ span: size.span, label: setting.name.value }],
        subject: curve.id,
      });
    }
    for (const dispute of curveDisputes(sheet, context.gauges)) {
      const { setting, size, is, curves } = dispute;
      const [found] = curves;
      if (setting.known?.sum || !found || is === 'beyond') continue;
      report({
        message: is,
        span: size.span,
        values: {
          setting: setting.name.value,
          value: size.text,
          at: atText(dispute),
          curve: found.curve.name.value,
          says: readingText(found.reading),
        },
        related: rowsBeside(found.curve, dispute),
        subject: setting.id,
      });
    }
  },
  examples: [
    {
      name: 'a needle that is thicker than its jet, and one as thick',
      sheet: {
        settings:
          'needle-jet: { value: 0.0890 in, from: m48 p. 35 }\nneedle-profile:\n  table:\n    - { at: 0 in, value: 0.0980 in }\n    - { at: 1/8 in, value: 0.0890 in }\n  from: m48 p. 35',
      },
      expect: [
        {
          at: '0.0980 in',
          message:
            '0.0980 in at 0 in is more than `needle-jet`, 0.0890 in: the needle hangs in the jet',
          fix: 'look in the source which is right',
        },
      ],
    },
    {
      name: 'a delivery that the table does not have',
      sheet: {
        settings:
          'pump-delivery: { value: 12 cm3 per 10 strokes, from: m48 p. 34 }\npump-stroke: { value: 1/4 in, link: middle hole, from: m48 p. 34 }\npump-curve:\n  table:\n    - { at: 1/8 in, value: 0.50 ± 0.05 cm3 }\n    - { at: 3/8 in, value: 1.50 ± 0.05 cm3 }\n  from: m48 p. 35',
      },
      expect: [
        {
          at: '12 cm3 per 10 strokes',
          message:
            '`pump-delivery` is 12 cm3 per 10 strokes at 1/4 in, but of `pump-curve` between its rows at 1/8 in and 3/8 in the table comes to 0.95 cm3 to 1.05 cm3',
          fix: 'look in the source which is right, and in which measure each is told',
        },
      ],
    },
    {
      name: 'a delivery at the limit of the table',
      sheet: {
        settings:
          'pump-delivery: { value: 10.5 cm3 per 10 strokes, from: m48 p. 34 }\npump-stroke: { value: 1/4 in, link: middle hole, from: m48 p. 34 }\npump-curve:\n  table:\n    - { at: 1/8 in, value: 0.50 ± 0.05 cm3 }\n    - { at: 3/8 in, value: 1.50 ± 0.05 cm3 }\n  from: m48 p. 35',
      },
      expect: [],
    },
    {
      name: 'a table that leaves something where nothing has begun',
      sheet: distributor(
        'advance-start: { value: 500 rpm, of: distributor, from: m48 }\n  advance-curve:\n    table:\n      - { at: 400 rpm, value: 1 to 2° }\n      - { at: 800 rpm, value: 5 to 6° }\n    from: m48',
      ),
      expect: [
        {
          at: '500 rpm',
          message:
            '`advance-start` is 500 rpm, but of `advance-curve` between its rows at 400 rpm and 800 rpm the table comes to 2° to 3°',
          fix: 'look in the source which is right: there the table has to leave nothing yet',
        },
      ],
    },
  ],
});

function atText({ station }: CurveDispute): string {
  return station ? ` at ${station.text}` : '';
}

/** The rows that were read, or the table's name where none was. */
function rowsBeside(curve: Setting, { curves }: CurveDispute) {
  const reading = curves.find((each) => each.curve === curve)?.reading;
  const rows =
    reading?.is === 'row'
      ? [reading.at]
      : reading?.is === 'between'
        ? [reading.before, reading.after]
        : [];
  return rows.flatMap(({ row }) =>
    row.value ? [{ span: row.value.span, label: 'the table' }] : [],
  );
}

/** A distributor with weights. */
function distributor(settings: string): { readonly front: string } {
  return {
    front: `unit: { kind: ignition-distributor, maker: Orlo, model: K14, features: [six-lobe, single-points, centrifugal-advance] }\nsettings:\n  ${settings}`,
  };
}
