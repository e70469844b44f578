import type { UsualRange } from '../kinds/model.ts';
import { readStatement } from '../quantity/index.ts';
import type { Statement } from '../quantity/model.ts';
import type { CheckContext, Cure } from './define.ts';
import { defineCheck } from './define.ts';
import { pointSlips } from './size-slips.ts';
import { readingsOf, readOf, sizesOfSetting } from './stated-sizes.ts';
import { sideOutside } from './usual-range.ts';

const TESTED: ReadonlySet<string> = new Set(['value', 'also', 'place', 'but', 'reading']);

/** A figure that no ordinary unit of the kind comes near. */
/** What of the size's slips is usual: a point that slipped, or one that was a slash. */
function slips({ text }: Statement, range: UsualRange, { gauges }: CheckContext): readonly Cure[] {
  return pointSlips(text)
    .filter((each) => {
      const reading = readStatement(each, { gauges, expect: [range.dimension] });
      return reading.ok && sideOutside(reading.statement, range) === null;
    })
    .slice(0, 3)
    .map((write) => ({ write }));
}

export default defineCheck({
  id: 'size-unusual',
  severity: 'warning',
  group: 'sizes',
  depth: 5,
  summary: 'A figure lies outside the range that ordinary units keep to, or goes the other way.',
  explain:
    'The usual ranges are wide: what falls outside is mostly a slipped point or the wrong unit. ' +
    'Accept it for a unit that really is out of the ordinary, and say how it was made sure of.',
  messages: {
    low: {
      message: '{text} is less than is usual for {label}: {from} to {to}',
      fix: 'look for a slipped point or a wrong unit; if the figure is right, accept it with a reason',
    },
    high: {
      message: '{text} is more than is usual for {label}: {from} to {to}',
      fix: 'look for a slipped point or a wrong unit; if the figure is right, accept it with a reason',
    },
    sense: {
      message: '{text} goes {way}, but {label} is usually counted {usual}',
      fix: 'look in the source which way it goes; if the figure is right, accept it with a reason',
    },
  },
  run(sheet, context, report) {
    for (const [key, size] of sheet.unit.sizes) {
      const range = sheet.kind?.usualOfUnit.get(key);
      const statement = readOf(size);
      if (!statement || statement.dimension !== range?.dimension) continue;
      const side = sideOutside(statement, range);
      if (!side) continue;
      const { text } = statement;
      const [from, to] = [range.low.text, range.high.text];
      const values = { text, label: `\`${key}\``, from, to };
      const compared = [text, side === 'low' ? from : to] as const;
      const suggest = () => slips(statement, range, context);
      report({ message: side, span: size.span, values, compared, subject: key, suggest });
    }
    const stated = sheet.figures.flatMap((setting) => [...sizesOfSetting(setting)]);
    for (const { size, role, setting, subject } of [...stated, ...readingsOf(sheet)]) {
      const known = setting?.known;
      if (!known || !TESTED.has(role)) continue;
      const statement = readOf(size);
      const label = known.label.toLowerCase();
      if (statement?.sense && known.sense && statement.sense !== known.sense) {
        const { text, sense: way } = statement;
        const values = { text, label, way, usual: known.sense };
        const usual = known.sense;
        const suggest = () => [{ write: text.replace(new RegExp(`\\b${way}\\b`), usual) }];
        report({ message: 'sense', span: size.span, values, subject, suggest });
      }
      const range = statement
        ? known.usual.find((usual) => usual.dimension === statement.dimension)
        : undefined;
      const side = statement && range ? sideOutside(statement, range) : null;
      if (!statement || !range || !side) continue;
      report({
        message: side,
        span: size.span,
        values: {
          text: statement.text,
          label,
          from: range.low.text,
          to: range.high.text,
        },
        compared: [statement.text, side === 'low' ? range.low.text : range.high.text],
        suggest: () => slips(statement, range, context),
        subject,
      });
    }
  },
  examples: [
    {
      name: 'a shaft of the unit whose point slipped',
      sheet: {
        front:
          'unit: { kind: ignition-distributor, maker: Orlo, model: K14, features: [four-lobe, single-points], shaft-diameter: 127 mm }\nsettings:\n  points-gap: { value: 0.015 in, from: m48 }',
      },
      expect: [
        {
          at: '127 mm',
          message: '127 mm is more than is usual for `shaft-diameter`: 1/4 in to 1 in',
          fix: 'look for a slipped point or a wrong unit; if the figure is right, accept it with a reason',
        },
      ],
    },
    {
      name: 'a bore at the end of what is usual, and one below it',
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, downdraft], throttle-bore: 4 in, venturi: 1/8 in }\nsettings:\n  idle-mixture: { value: 1 turn out, from: m48 }',
      },
      expect: [
        {
          at: '1/8 in',
          message: '1/8 in is less than is usual for `venturi`: 1/4 in to 3-1/2 in',
          fix: 'look for a slipped point or a wrong unit; if the figure is right, accept it with a reason',
        },
      ],
    },
    {
      name: 'a point that slipped to the right',
      sheet: {
        settings:
          'float-level:\n  value: 2.03 in\n  at: free end of the float\n  cover: inverted\n  gasket: removed\n  from: m48 p. 31',
      },
      expect: [
        {
          at: '2.03 in',
          message: '2.03 in is more than is usual for float level: 0 in to 2 in',
          fix: 'look for a slipped point or a wrong unit; if the figure is right, accept it with a reason',
        },
      ],
    },
    {
      name: 'a point that slipped to the left',
      sheet: { settings: 'idle-speed: { value: 47.5 rpm, from: m48 p. 40 }' },
      expect: [
        {
          at: '47.5 rpm',
          message: '47.5 rpm is less than is usual for idle speed: 300 rpm to 2000 rpm',
          fix: 'look for a slipped point or a wrong unit; if the figure is right, accept it with a reason',
        },
      ],
    },
    {
      name: 'a limit that no unit comes near',
      sheet: { settings: 'idle-speed: { value: 450–4750 rpm, from: m48 p. 40 }' },
      expect: [
        {
          at: '450–4750 rpm',
          message: '450–4750 rpm is more than is usual for idle speed: 300 rpm to 2000 rpm',
          fix: 'look for a slipped point or a wrong unit; if the figure is right, accept it with a reason',
        },
      ],
    },
    {
      name: 'an idle needle that goes in from its seat',
      sheet: { settings: 'idle-mixture: { value: 1-1/4 turns in, from: m48 p. 40 }' },
      expect: [
        {
          at: '1-1/4 turns in',
          message: '1-1/4 turns in goes in, but idle mixture baseline is usually counted out',
          fix: 'look in the source which way it goes; if the figure is right, accept it with a reason',
        },
      ],
    },
    {
      name: 'exactly at either end of the usual range',
      sheet: {
        settings:
          'float-level:\n  value: 2 in\n  at: free end of the float\n  cover: inverted\n  gasket: removed\n  from: m48 p. 31\nidle-speed: { value: 300 rpm, from: m48 p. 40 }',
      },
      expect: [],
    },
  ],
});
