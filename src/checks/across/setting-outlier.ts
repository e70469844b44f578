import { median, medianAbsoluteDeviation } from 'simple-statistics';
import type { Kind } from '../../kinds/model.ts';
import { plainName } from '../vocabulary.ts';
import { defineAcrossCheck } from './define.ts';
import type { FigureFact, SheetFacts } from './facts.ts';

/** Fewer like figures than this beside one say nothing of what is usual. */
const fewest = 6;

/**
 * How many robust deviations are far: 3.5 of 1.4826 times the median absolute deviation, the modified
 * z-score of Iglewicz and Hoaglin, How to Detect and Handle Outliers (1993), section 3.3.3.
 */
const far = 3.5;
const consistent = 1.4826;

/** The least deviation: a figure a sixth off is never far, however alike the others are. */
const least = 0.05;

interface Like {
  readonly sheet: SheetFacts;
  readonly figure: FigureFact;
  /** In the base unit, for statistics only; what is printed is what the sheets wrote. */
  readonly value: number;
}

/** A figure far from those of all like units. */
export default defineAcrossCheck({
  id: 'setting-outlier',
  severity: 'note',
  group: 'across',
  summary: 'A figure lies far from those of all like units of the project.',
  explain:
    'It may be right: the unit may be unlike the others. It may also be a slip that lies inside ' +
    'the usual range, a misread digit or another unit of measure, which only the other sheets show. ' +
    'Units are alike that are of one kind and have the same of each line of its `one-of:`, and figures ' +
    'that are measured alike. At least six others are asked for; sizes are compared by their ratio.',
  messages: {
    far: {
      message:
        '{setting} {figure} is far {side} those of {count} like units, {lowest} to {highest}',
      fix: 'compare it with its source, and leave it where the source says so',
    },
  },
  run(sheets, context, report) {
    for (const [kind, likes] of alike(sheets, context.kinds)) {
      if (likes.length <= fewest) continue;
      const name = likes[0]?.figure.name ?? '';
      const scores = scoresOf(likes, name, kind);
      if (scores === null) continue;
      const near = likes.filter((_, index) => Math.abs(scores[index] ?? 0) <= far);
      if (near.length < fewest) continue;
      const sorted = near.toSorted((a, b) => a.value - b.value);
      const [lowest, highest] = [sorted[0], sorted.at(-1)];
      if (!lowest || !highest) continue;
      likes.forEach(({ sheet, figure }, index) => {
        const score = scores[index] ?? 0;
        if (Math.abs(score) <= far) return;
        report({
          message: 'far',
          sheet,
          at: figure.at,
          others: [
            { sheet: lowest.sheet, at: lowest.figure.at, label: 'the lowest of the others' },
            { sheet: highest.sheet, at: highest.figure.at, label: 'the highest of the others' },
          ],
          values: {
            setting: kind.settings.get(name)?.label ?? `\`${name}\``,
            figure: figure.text,
            side: score > 0 ? 'above' : 'below',
            count: String(near.length),
            lowest: lowest.figure.text,
            highest: highest.figure.text,
          },
          subject: name,
        });
      });
    }
  },
  examples: [
    {
      name: 'one of seven pump strokes with a misread digit',
      sheets: pumps('7/16 in', '15/32 in', '27/64 in', '7/16 in', '13/32 in', '11 mm', '7/64 in'),
      expect: [
        {
          in: 'orlo-7',
          at: '7/64 in',
          message: 'Pump stroke 7/64 in is far below those of 6 like units, 13/32 in to 15/32 in',
          fix: 'compare it with its source, and leave it where the source says so',
          see: [
            ['orlo-5', '13/32 in'],
            ['orlo-2', '15/32 in'],
          ],
        },
      ],
    },
    {
      name: 'too few to tell',
      sheets: pumps('7/16 in', '15/32 in', '27/64 in', '7/16 in', '13/32 in', '7/64 in'),
      expect: [],
    },
  ],
});

/** Sheets for the examples, each of a model of its own. */
function pumps(...strokes: readonly string[]) {
  return Object.fromEntries(
    strokes.map((stroke, index) => [
      `orlo-${index + 1}`,
      {
        front: `unit: { kind: carburetor, maker: Orlo, model: "${index + 1}", features: [single-barrel, downdraft] }`,
        settings: `pump-stroke: { value: ${stroke}, link: middle hole, from: m48 p. 34 }`,
      },
    ]),
  );
}

/** Figures that may be held against one another, with their kind; each place of a file once. */
function alike(
  sheets: readonly SheetFacts[],
  kinds: ReadonlyMap<string, Kind>,
): readonly (readonly [Kind, readonly Like[]])[] {
  const found = new Map<string, { readonly kind: Kind; readonly likes: Like[] }>();
  const seen = new Set<string>();
  for (const sheet of sheets) {
    const kind = kinds.get(sheet.kind ?? '');
    if (!kind) continue;
    const which = kind.oneOf.flat().filter((feature) => sheet.features.includes(feature));
    for (const figure of sheet.figures) {
      const { name, place, dimension, sense, figure: value, measured, at } = figure;
      if (value === null) continue;
      // What a variant takes from its base is one figure, however many take it.
      const where = `${at.file}:${at.line}:${at.column}`;
      if (seen.has(where)) continue;
      seen.add(where);
      const ways = Object.entries(measured).map(([key, words]) => [key, plainName(words)]);
      const key = JSON.stringify([kind.name, which, name, place, dimension, sense, ways]);
      const known = found.get(key);
      if (known) known.likes.push({ sheet, figure, value });
      else found.set(key, { kind, likes: [{ sheet, figure, value }] });
    }
  }
  return [...found.values()].map(({ kind, likes }) => [kind, likes] as const);
}

/**
 * How many robust deviations each figure lies from the median: of the logarithms where all are
 * positive, else of the figures, against the width of the usual range. Null where nothing tells how
 * wide is wide.
 */
function scoresOf(likes: readonly Like[], name: string, kind: Kind): readonly number[] | null {
  const positive = likes.every(({ value }) => value > 0);
  const values = likes.map(({ value }) => (positive ? Math.log(value) : value));
  const middle = median(values);
  const floor = positive ? least : least * usualWidth(likes, name, kind);
  const deviation = Math.max(consistent * medianAbsoluteDeviation(values), floor);
  return deviation > 0 ? values.map((value) => (value - middle) / deviation) : null;
}

function usualWidth(likes: readonly Like[], name: string, kind: Kind): number {
  const dimension = likes[0]?.figure.dimension;
  const usual = kind.settings.get(name)?.usual.find((range) => range.dimension === dimension);
  const [low, high] = [usual?.low.nominal?.base, usual?.high.nominal?.base];
  return low && high ? high.sub(low).valueOf() : 0;
}
