import type { RankedMisprint } from '../quantity/index.ts';
import { type OutOfPlace, outOfPlace, stationsBeyond } from '../relations/index.ts';
import { type CurveRow, curvesOf, rowsOf, stationOf, stationText } from '../sheet/index.ts';
import type { Setting, Sheet } from '../sheet/model.ts';
import { rowSlips } from './curve-slips.ts';
import { type CheckContext, type Cure, defineCheck } from './define.ts';

/** A row of a table that does not stand where its station belongs. */
export default defineCheck({
  id: 'curve-stations-disordered',
  severity: 'warning',
  group: 'sizes',
  depth: 2,
  summary: 'The stations of a table do not rise from row to row.',
  explain:
    'A table is read downward. A station that stands out of its order is a row that slipped, or a misprint: ' +
    '6100 for 1600. Accept it only where the source prints its rows in another order on purpose.',
  messages: {
    beyond: {
      message: '{at} is {way} than any {label} can be: {from} to {to}',
      fix: '{slip}look in the source: a point may have slipped, or another unit is meant',
    },
    place: {
      message: '{at} stands {where}',
      fix: '{slip}put the row where its station belongs',
    },
  },
  run(sheet, context, report) {
    for (const setting of curvesOf(sheet)) {
      const { curve } = setting.known ?? {};
      for (const { row, isMore } of stationsBeyond(setting)) {
        const { station } = row.row;
        if (!station || !curve?.within) continue;
        const slips = slipsOf({ row, ...neighborsOf(row, setting) }, setting, sheet, context);
        report({
          message: 'beyond',
          span: station.span,
          severity: 'error',
          values: {
            at: station.text,
            way: isMore ? 'more' : 'less',
            label: curve.label,
            from: curve.within.low.text,
            to: curve.within.high.text,
            slip: toldFirst(slips),
          },
          suggest: () => slips.slice(0, 3).map(({ suggestion }) => ({ write: suggestion })),
          subject: setting.id,
        });
      }
      for (const found of outOfPlace(setting)) {
        const { station } = found.row.row;
        if (!station) continue;
        const slips = slipsOf(found, setting, sheet, context);
        report({
          message: 'place',
          span: station.span,
          values: {
            at: station.text,
            where: whereIn(found),
            slip: toldFirst(slips),
          },
          suggest: () => [
            ...slips.slice(0, 3).map(({ suggestion }) => ({ write: suggestion })),
            ...exchanges(found),
          ],
          related: [found.before, found.after].flatMap((row) =>
            row?.row.station ? [{ span: row.row.station.span, label: 'beside it' }] : [],
          ),
          subject: setting.id,
        });
      }
    }
  },
  examples: [
    {
      name: 'stations in their order, and one at the end of what can be',
      sheet: {
        settings:
          'pump-curve:\n  table:\n    - { at: 0 in, value: 0.02 cm3 }\n    - { at: 1/8 in, value: 0.5 cm3 }\n    - { at: 3 in, value: 12 cm3 }\n  from: m48 p. 35',
      },
      expect: [],
    },
    {
      name: 'a stroke that no pump has',
      sheet: {
        settings:
          'pump-curve:\n  table:\n    - { at: 0.125 in, value: 0.5 cm3 }\n    - { at: 18.75 in, value: 0.8 cm3 }\n    - { at: 0.25 in, value: 1.1 cm3 }\n  from: m48 p. 35',
      },
      expect: [
        {
          at: '18.75 in',
          severity: 'error',
          message: '18.75 in is more than any stroke can be: 0 in to 3 in',
          fix: '0.1875 in, if the point slipped; otherwise look in the source: a point may have slipped, or another unit is meant',
        },
      ],
    },
    {
      name: 'two digits that changed places',
      sheet: {
        settings:
          'pump-curve:\n  table:\n    - { at: 0.10 in, value: 0.4 cm3 }\n    - { at: 0.51 in, value: 0.6 cm3 }\n    - { at: 0.20 in, value: 0.8 cm3 }\n  from: m48 p. 35',
      },
      expect: [
        {
          at: '0.51 in',
          message: '0.51 in stands between 0.10 in and 0.20 in',
          fix: '0.15 in, if two digits were swapped; otherwise put the row where its station belongs',
        },
      ],
    },
    {
      name: 'a row at the end of which no slip tells',
      sheet: {
        settings:
          'pump-curve:\n  table:\n    - { at: 1/4 in, value: 0.8 cm3 }\n    - { at: 3/8 in, value: 1.2 cm3 }\n    - { at: 1/16 in, value: 0.2 cm3 }\n  from: m48 p. 35',
      },
      expect: [
        {
          at: '1/16 in',
          message: '1/16 in stands behind 3/8 in',
          fix: '1-1/16 in, if the whole number was left out; otherwise put the row where its station belongs',
        },
      ],
    },
  ],
});

function toldFirst([first]: readonly RankedMisprint[]): string {
  return first ? `${first.suggestion}, if ${first.because}; otherwise ` : '';
}

function neighborsOf(row: CurveRow, setting: Setting): Pick<OutOfPlace, 'before' | 'after'> {
  const rows = rowsOf(setting);
  const i = rows.findIndex((each) => each.row === row.row);
  return { before: rows[i - 1] ?? null, after: rows[i + 1] ?? null };
}

/** The row in the place of the one beside it. */
function exchanges({ row, before, after }: OutOfPlace): readonly Cure[] {
  return [before, after].flatMap((other) =>
    other ? [{ at: row.row.span, exchange: other.row.span }] : [],
  );
}

function whereIn({ before, after }: OutOfPlace): string {
  if (!before) return `before ${after ? stationText(after.row) : ''}`;
  return after
    ? `between ${stationText(before.row)} and ${stationText(after.row)}`
    : `behind ${stationText(before.row)}`;
}

/** Single slips after which the station lies between those that stand beside it. */
function slipsOf(
  { row, before, after }: OutOfPlace,
  setting: Setting,
  sheet: Sheet,
  context: CheckContext,
) {
  const doubted = {
    size: row.row.station,
    near: (before ?? after)?.row.station,
    expect: setting.known?.curve?.against,
  };
  return rowSlips(doubted, sheet, context, (slipped) => {
    const at = stationOf(slipped, setting);
    return (
      at !== null &&
      (!before || at.compare(before.station) > 0) &&
      (!after || at.compare(after.station) < 0)
    );
  });
}
