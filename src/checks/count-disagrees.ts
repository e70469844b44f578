import { normalize, numberWordsAt } from '../quantity/index.ts';
import type { Sheet } from '../sheet/model.ts';
import { defineCheck } from './define.ts';

/** `all six lobes` on a unit of four; `twelve strokes` where the figure is of ten. */
export default defineCheck({
  id: 'count-disagrees',
  severity: 'warning',
  group: 'prose',
  depth: 6,
  summary: 'The text counts other than the features or the settings of the unit do.',
  explain:
    'How many lobes or barrels a unit has is said by its features, and of how many strokes a delivery is ' +
    'stands in its figure. A step that counts otherwise was taken over from the sheet of another unit, or ' +
    'mistyped. Only where the text speaks of all of them is it compared. Accept it where the step counts ' +
    'something else on purpose.',
  messages: {
    feature: {
      message: '{text}, but the unit is `{feature}`',
      fix: 'write {count}, or correct the features',
      suggest: [{ write: '{count}' }],
    },
    strokes: {
      message: '{text} stands beside the setting `{name}`, which is {value}',
      fix: 'write {count}, or say in the step what the other number is for',
      suggest: [{ write: '{count}' }],
    },
  },
  run(sheet, _context, report) {
    const counts = countsOf(sheet);
    for (const prose of sheet.prose) {
      if (prose.operation === null) continue;
      const spanAt = (match: RegExpMatchArray) => {
        const start = prose.span.start + (match.index ?? 0);
        return { start, end: start + match[0].length };
      };
      for (const { feature, count, words, pattern } of counts) {
        for (const match of prose.text.matchAll(pattern)) {
          const said = numberOf(match[1] ?? '');
          if (said === null || said === count) continue;
          report({
            message: 'feature',
            span: spanAt(match),
            values: {
              text: match[0],
              feature,
              count: `${count} ${count === 1 ? words.replace(/s$/, '') : words}`,
            },
            subject: feature,
          });
        }
      }
    }
    for (const [index, operation] of sheet.operations.entries()) {
      const printed = sheet.values.filter(({ span }) =>
        operation.steps.some((step) => step.span.start <= span.start && span.end <= step.span.end),
      );
      for (const { setting } of printed) {
        const value = setting?.value;
        const per = /\bper (\d+) strokes\b/.exec(value?.text ?? '')?.[1];
        if (!setting || !value || per === undefined) continue;
        const found = strokesIn(sheet, index);
        // Strokes that fill the well stand beside those that are measured: these must be somewhere.
        if (found.some(({ count }) => count === Number(per))) continue;
        for (const { text, span } of found) {
          report({
            message: 'strokes',
            span,
            values: {
              text,
              name: setting.name.value,
              value: value.text,
              count: `${per} strokes`,
            },
            compared: [value.text, text],
            related: [{ span: value.span, label: 'the setting' }],
            subject: setting.id,
          });
        }
      }
    }
  },
  examples: [
    {
      name: 'six lobes on a unit of four, and a segment too many in figures',
      sheet: distributor(
        '1. Try all six lobes in turn.\n2. Look at each of the 5 segments of the cap.\n',
      ),
      expect: [
        {
          at: 'all six lobes',
          message: 'all six lobes, but the unit is `four-lobe`',
          fix: 'write 4 lobes, or correct the features',
        },
        {
          at: 'each of the 5 segments',
          message: 'each of the 5 segments, but the unit is `four-lobe`',
          fix: 'write 4 segments, or correct the features',
        },
      ],
    },
    {
      name: 'as many as there are, some of them, and those of another unit',
      sheet: distributor(
        '1. Try all four lobes in turn, then two lobes again.\n2. Clean each of the four segments.\n3. Do not go by the six lobes of the old unit.\n',
      ),
      expect: [],
    },
    {
      name: 'twelve strokes for ten',
      sheet: pump('1. Work the throttle through twelve full strokes: :value[pump-delivery].\n'),
      expect: [
        {
          at: 'twelve full strokes',
          message:
            'twelve full strokes stands beside the setting `pump-delivery`, which is 12 cm3 per 10 strokes',
          fix: 'write 10 strokes, or say in the step what the other number is for',
        },
      ],
    },
    {
      name: 'the strokes of the setting, and strokes that fill the well first',
      sheet: pump(
        '1. Fill the well with five strokes.\n2. Work ten full strokes: :value[pump-delivery].\n',
      ),
      expect: [],
    },
  ],
});

const NUMBER = '(\\d{1,2}|[a-z]{3,9})';
const STROKES = /\b(\d{1,2}|[a-z]{3,9}) (?:(?:full|complete|whole|steady|slow) ){0,2}strokes\b/gi;
/** What is caught over another number of strokes and worked back to that of the setting. */
const REWORKED = /\b(?:halve|half|divid\w*|average\w*|multipl\w*|doubl\w*)\b/i;

function numberOf(words: string): number | null {
  if (/^\d+$/.test(words)) return Number(words);
  const text = normalize(words);
  const found = numberWordsAt(text, 0);
  return found && found.end === text.length && found.denominator === 1 ? found.whole : null;
}

/** Three strokes and more that an operation speaks of: one, or two, is how it is worked. */
function strokesIn(sheet: Sheet, index: number) {
  return sheet.prose.flatMap(({ operation, text, span, block }) => {
    if (operation !== index || REWORKED.test(sheet.text.slice(block.start, block.end))) return [];
    return [...text.matchAll(STROKES)].flatMap((match) => {
      const count = numberOf(match[1] ?? '');
      const start = span.start + match.index;
      const place = { start, end: start + match[0].length };
      return count === null || count < 3 ? [] : [{ count, text: match[0], span: place }];
    });
  });
}

/** The counts that the features of a unit settle, each with the words that the text has for it. */
function countsOf({ kind, unit }: Sheet) {
  return [...(kind?.countWords ?? [])].flatMap(([name, nouns]) => {
    const counted = kind?.relations.counts.get(name);
    const [only, ...more] = unit.features.flatMap(({ id }) => {
      const count = counted?.get(id);
      return count === undefined ? [] : [{ feature: id, count }];
    });
    if (!only || more.length > 0) return [];
    return nouns.map((words) => ({
      ...only,
      words,
      pattern: new RegExp(
        `\\b(?:all|(?:all|each|every one|any) of the) ${NUMBER} ${words}\\b`,
        'gi',
      ),
    }));
  });
}

/** A unit of four lobes with the steps of an operation, as an example has it. */
function distributor(steps: string): { readonly front: string; readonly body: string } {
  return {
    front:
      'unit: { kind: ignition-distributor, maker: Orlo, model: K14, features: [four-lobe, single-points] }\nsettings:\n  points-gap: { value: 0.015 in, from: m48 }',
    body: `# Orlo K14\n\n## Points gap\n\n${steps}`,
  };
}

/** A pump that delivers by ten strokes, with the steps that measure it. */
function pump(steps: string): { readonly settings: string; readonly body: string } {
  return {
    settings: 'pump-delivery: { value: 12 cm3 per 10 strokes, from: m48 p. 34 }',
    body: `## Pump delivery\n\n${steps}`,
  };
}
