import type { Kind } from '../kinds/model.ts';
import { sameFamily } from '../quantity/index.ts';
import type { Dimension } from '../quantity/model.ts';
import { defineCheck } from './define.ts';
import {
  dimensionNoun,
  kindSetting,
  readOf,
  type StatedSize,
  statedSizes,
} from './stated-sizes.ts';
import { kindOf } from './vocabulary.ts';

/** A size of another kind of thing than its place asks for. */
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
    const kind = kindOf(sheet, context);
    for (const stated of statedSizes(sheet)) {
      const statement = readOf(stated.size);
      if (!statement) continue;
      const { dimension, text } = statement;
      const { role, size, setting, subject, key } = stated;
      const found = dimensionNoun(dimension);
      if (role === 'gauge' || role === 'go' || role === 'no-go' || role === 'travel') {
        // An instrument (a tachometer, a vacuum gauge) is named in words and proves no length.
        const free =
          role === 'travel'
            ? dimension === 'length'
            : dimension === 'length' || dimension === 'condition';
        if (!free && !(role !== 'travel' && dimension === valueDimension(stated))) {
          report({ message: 'length', span: size.span, values: { text, found, key }, subject });
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
        subject,
      });
    }
  },
  examples: [],
});

function valueDimension(stated: StatedSize): Dimension | null {
  return readOf(stated.setting?.value ?? null)?.dimension ?? null;
}

function wantedDimensions(stated: StatedSize, kind: Kind | null): readonly Dimension[] | null {
  if (!kind) return null;
  if (!stated.setting) return kind.dimensionsOfUnit.get(stated.key) ?? null;
  const known = kindSetting(stated.setting, kind);
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
