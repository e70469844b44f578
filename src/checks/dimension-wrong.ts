import type { Kind } from '../kinds/model.ts';
import {
  allUnits,
  FLOW_NUMBER,
  NOT_STATED,
  rational,
  readStatement,
  sameFamily,
  unitWord,
} from '../quantity/index.ts';
import type { Dimension, Statement } from '../quantity/model.ts';
import type { CheckContext, Cure } from './define.ts';
import { defineCheck } from './define.ts';
import { dimensionNoun, readOf, type StatedSize, statedSizes } from './stated-sizes.ts';

/** A size of another kind of thing than its place asks for. */
/** The figure in units of what is wanted: only the unit may be the slip. */
function inUnits(
  { text }: Statement,
  wanted: readonly Dimension[],
  { gauges }: CheckContext,
): readonly Cure[] {
  const number = /^[\d./ -]*\d/.exec(text)?.[0];
  if (number === undefined) return [];
  const units = allUnits().filter(({ dimension }) => wanted.includes(dimension));
  return units
    .map(({ id }) => `${number} ${unitWord(id, rational(2))}`)
    .filter((each) => {
      const reading = readStatement(each, { gauges, expect: wanted });
      return reading.ok && wanted.includes(reading.statement.dimension);
    })
    .slice(0, 2)
    .map((write) => ({ write }));
}

export default defineCheck({
  id: 'dimension-wrong',
  severity: 'error',
  group: 'sizes',
  summary: 'A size measures another thing than the setting it stands for.',
  explain:
    'A float level in turns or an idle speed in inches is a unit slipped, or a figure in the wrong ' +
    'row. It cannot be right, so it cannot be accepted.',
  messages: {
    setting: {
      message: '{text} is {found}, but {name} is stated as {wanted}',
      fix: 'correct the unit, or move the figure to the setting it belongs to',
    },
    length: {
      message: '{text} is {found}, but `{key}` is a length',
      fix: 'give the length of the {key}, with its unit',
    },
    among: {
      message: '{text} is {found}, but `value` is {wanted}',
      fix: 'state `{key}` in the same kind of unit as `value`',
    },
    reference: {
      message: '{text} is counted as {found}, but {name} is {wanted}',
      fix: 'look in the source which is meant; a vacuum is below ambient, a pressure above it',
    },
  },
  run(sheet, context, report) {
    const { kind } = sheet;
    for (const stated of statedSizes(sheet)) {
      const statement = readOf(stated.size);
      if (!statement) continue;
      const { dimension, text, condition } = statement;
      // That a source states nothing may be said of every setting.
      if (condition === NOT_STATED || statement.qualifier === FLOW_NUMBER) continue;
      const { role, size, setting, subject, key } = stated;
      const found = dimensionNoun(dimension);
      if (role === 'gauge' || role === 'go' || role === 'no-go' || role === 'travel') {
        // An instrument (a tachometer, a vacuum gauge) is named in words and proves no length.
        const free =
          role === 'travel'
            ? dimension === 'length'
            : dimension === 'length' || dimension === 'condition';
        if (!free && !(role !== 'travel' && dimension === valueDimension(stated))) {
          const suggest = (): readonly Cure[] => [
            ...inUnits(statement, ['length'], context),
            { takeOut: 'entry' },
          ];
          report({
            message: 'length',
            span: size.span,
            values: { text, found, key },
            subject,
            suggest,
          });
        }
        continue;
      }
      const wanted = wantedDimensions(stated, kind);
      if (wanted && !wanted.includes(dimension)) {
        const family = wanted.find((each) => sameFamily(each, dimension));
        const name = setting ? setting.name.value : key;
        const values = { text, found, name, wanted: eitherNoun(wanted) };
        report({
          message: family ? 'reference' : 'setting',
          span: size.span,
          suggest: () => inUnits(statement, wanted, context),
          values: family
            ? { ...values, found: referenceNoun(statement.reference, dimension) }
            : values,
          subject,
        });
        continue;
      }
      const value = role === 'value' ? null : valueDimension(stated);
      if (
        value === null ||
        sameFamily(value, dimension) ||
        value === 'condition' ||
        dimension === 'condition'
      )
        continue;
      if (role !== 'also') continue;
      report({
        message: 'among',
        span: size.span,
        values: { text, found, key, wanted: dimensionNoun(value) },
        related: setting?.value ? [{ span: setting.value.span, label: 'the value' }] : [],
        suggest: () => [{ takeOut: 'entry' }],
        subject,
      });
    }
  },
  examples: [
    {
      name: 'an idle speed in inches',
      sheet: { settings: 'idle-speed: { value: 475 in, from: m48 p. 40 }' },
      expect: [
        {
          at: '475 in',
          message: '475 in is a length, but idle-speed is stated as a speed',
          fix: 'correct the unit, or move the figure to the setting it belongs to',
        },
      ],
    },
    {
      name: 'a float level in turns',
      sheet: {
        settings:
          'float-level:\n  value: 1-1/2 turns out\n  at: free end of the float\n  cover: inverted\n  gasket: removed\n  from: m48 p. 31',
      },
      expect: [
        {
          at: '1-1/2 turns out',
          message:
            '1-1/2 turns out is a number of turns or flats, but float-level is stated as a length, a condition in words or an angle',
          fix: 'correct the unit, or move the figure to the setting it belongs to',
        },
      ],
    },
    {
      name: 'another way of stating it that measures something else',
      sheet: {
        settings:
          'idle-stop: { value: 1/2 turn in after contact, also: [0.02 in], from: m48 p. 40 }',
      },
      expect: [
        {
          at: '0.02 in',
          message: '0.02 in is a length, but `value` is a number of turns or flats',
          fix: 'state `also` in the same kind of unit as `value`',
        },
      ],
    },
    {
      name: 'a gauge that is no length',
      sheet: { settings: 'unloader: { value: 0.136 in, gauge: 29 rpm, from: m48 p. 33 }' },
      expect: [
        {
          at: '29 rpm',
          message: '29 rpm is a speed, but `gauge` is a length',
          fix: 'give the length of the gauge, with its unit',
        },
      ],
    },
    {
      name: 'a travel that is no length',
      sheet: {
        settings: 'idle-mixture: { value: 1-1/4 turns out, travel: 1-1/4 turns, from: m48 p. 40 }',
      },
      expect: [
        {
          at: '1-1/4 turns',
          message: '1-1/4 turns is a number of turns or flats, but `travel` is a length',
          fix: 'give the length of the travel, with its unit',
        },
      ],
    },
    {
      name: 'a vacuum counted from nothing',
      sheet: { settings: 'idle-vacuum: { value: 18 inHg absolute, from: m48 p. 40 }' },
      expect: [
        {
          at: '18 inHg absolute',
          message:
            '18 inHg absolute is counted as an absolute pressure, but idle-vacuum is a vacuum',
          fix: 'look in the source which is meant; a vacuum is below ambient, a pressure above it',
        },
      ],
    },
    {
      name: 'a fuel pressure below ambient',
      sheet: { settings: 'fuel-pressure: { value: 4 inHg vacuum, from: m48 p. 21 }' },
      expect: [
        {
          at: '4 inHg vacuum',
          message: '4 inHg vacuum is counted as a vacuum, but fuel-pressure is a pressure',
          fix: 'look in the source which is meant; a vacuum is below ambient, a pressure above it',
        },
      ],
    },
    {
      name: 'a bore of the unit in degrees',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft, pump]\n  throttle-bore: 36°',
      },
      expect: [
        {
          at: '36°',
          message: '36° is an angle, but throttle-bore is stated as a length',
          fix: 'correct the unit, or move the figure to the setting it belongs to',
        },
      ],
    },
    {
      name: 'a tachometer is named as a gauge, and a float may stand parallel',
      sheet: {
        settings:
          'idle-speed: { value: 475 rpm, gauge: tachometer, from: m48 p. 40 }\nfloat-alignment: { value: parallel, from: m48 p. 30 }',
      },
      expect: [],
    },
    {
      name: 'each in its own unit',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft, pump]\n  throttle-bore: 36 mm',
        settings:
          'idle-vacuum: { value: 18 inHg, also: [61 kPa], from: m48 p. 40 }\nidle-stop: { value: 1/2 turn in after contact, also: [3 flats in], from: m48 p. 40 }',
      },
      expect: [],
    },
  ],
});

function valueDimension(stated: StatedSize): Dimension | null {
  return readOf(stated.setting?.value ?? null)?.dimension ?? null;
}

function wantedDimensions(stated: StatedSize, kind: Kind | null): readonly Dimension[] | null {
  if (!kind) return null;
  if (!stated.setting) return kind.dimensionsOfUnit.get(stated.key) ?? null;
  const known = stated.setting.known;
  return known && known.dimensions.length > 0 ? known.dimensions : null;
}

function eitherNoun(dimensions: readonly Dimension[]): string {
  const nouns = dimensions.map(dimensionNoun);
  return nouns.length < 2
    ? (nouns[0] ?? '')
    : `${nouns.slice(0, -1).join(', ')} or ${nouns[nouns.length - 1]}`;
}

function referenceNoun(reference: string | null, dimension: Dimension): string {
  if (reference === 'absolute') return 'an absolute pressure';
  return dimension === 'vacuum' ? 'a vacuum' : 'a pressure above ambient';
}
