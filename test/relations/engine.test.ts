import { describe, expect, test } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { readKind } from '../../src/kinds/index.ts';
import { defineRelation, refuse } from '../../src/relations/define-relation.ts';
import type { WorkedNumbers } from '../../src/relations/index.ts';
import { textOf } from '../../src/relations/input-text.ts';
import { add, divide, interval, multiply, subtract } from '../../src/relations/interval.ts';
import type { Relation } from '../../src/relations/model.ts';
import { workNumbers } from '../../src/relations/worked-numbers.ts';
import { readSheet } from '../../src/sheet/index.ts';

const words = { source: 'invented', assumptions: [], range: 'any' };

/** whole = one + other, each way. */
const sum = defineRelation({
  ...words,
  id: 'sum',
  title: 'Sum',
  formula: 'whole = one + other',
  quantities: {
    one: { label: 'one', symbol: 'a', dimension: 'length' },
    other: {
      label: 'other',
      symbol: 'b',
      dimension: 'length',
      unsaid: { value: interval(0), words: 'no other' },
    },
    whole: { label: 'whole', symbol: 'c', dimension: 'length' },
  },
  solutions: [
    { for: 'whole', from: ['one', 'other'], solve: ({ one, other }) => add(one, other) },
    {
      for: 'one',
      from: ['whole', 'other'],
      solve: ({ whole, other }) =>
        whole.hi < other.lo
          ? refuse('{whole} is less than {other}', 'correct {whole}', 'whole', 'other')
          : subtract(whole, other),
    },
  ],
});

/** twice = 2 × single, each way. */
const double = defineRelation({
  ...words,
  id: 'double',
  title: 'Double',
  formula: 'twice = 2 × single',
  quantities: {
    single: { label: 'single', symbol: 's', dimension: 'length' },
    twice: { label: 'twice', symbol: 't', dimension: 'length' },
  },
  solutions: [
    { for: 'twice', from: ['single'], solve: ({ single }) => multiply(single, interval(2)) },
    { for: 'single', from: ['twice'], solve: ({ twice }) => divide(twice, interval(2)) },
  ],
});

/** small is never more than large, and large never less than small. */
const bounded = defineRelation({
  ...words,
  id: 'bounded',
  title: 'Bound',
  formula: 'small ≤ large',
  quantities: {
    small: { label: 'small', symbol: 's', dimension: 'length' },
    large: { label: 'large', symbol: 'l', dimension: 'length' },
  },
  solutions: [
    { for: 'small', from: ['large'], hold: 'at-most', offer: false, solve: ({ large }) => large },
    { for: 'large', from: ['small'], hold: 'at-least', offer: false, solve: ({ small }) => small },
  ],
});

const formulas = new Map<string, Relation>([sum, double, bounded].map((each) => [each.id, each]));

const vocabulary = `gaugeleaf-kind: 1
kind: winch
title: Winch
unit: { drum: [length] }
features:
  two-drum: { label: Two drums, explain: Two. }
settings:
${['alpha', 'beta', 'gamma', 'delta']
  .map((name) => `  ${name}: { label: ${name}, explain: A size., dimensions: [length] }`)
  .join('\n')}
operations:
  alpha: { stage: bench }
`;

/** What follows on a sheet with some settings, of a kind with some relations. */
function work(relations: string, settings: string, unit = ''): WorkedNumbers {
  const { kind, problems } = readKind(`${vocabulary}relations:\n${relations}`, 'kinds/winch.yaml');
  expect(problems).toEqual([]);
  if (!kind) throw new Error('no kind');
  const kinds = new Map([['winch', kind]]);
  const text = `---\ngaugeleaf: 1\nunit:\n  kind: winch\n${unit}settings:\n${settings}---\n`;
  const gauges = gaugeBook();
  const sheet = readSheet(text, 'sheets/winch.md', { kinds, gauges, wireGauge: null });
  return workNumbers(sheet, kind, { gauges, wireGauge: null, altitude: null }, formulas);
}

const verdictsIn = ({ verdicts }: WorkedNumbers) =>
  verdicts.map(({ place, kind, disparity }) =>
    [place.key, kind, disparity?.worked, disparity?.difference].filter(
      (each) => each !== undefined,
    ),
  );
const figuresIn = ({ figures }: WorkedNumbers) =>
  figures.map(({ label, text, place }) => `${place?.key} (${label}): ${text.text}`);

const sumOfThree = `  - relation: sum
    of: alpha
    quantities: { one: { setting: alpha }, other: { setting: beta }, whole: { setting: gamma } }
`;
const doubles = (single: string, twice: string, of = 'alpha') => `  - relation: double
    of: ${of}
    quantities: { single: ${single}, twice: ${twice} }
`;

describe('what follows from a sheet', () => {
  test('a missing figure is worked, in the unit and to the places of the others', () => {
    expect(
      figuresIn(work(sumOfThree, '  alpha: { value: 1/4 in }\n  beta: { value: 1/8 in }\n')),
    ).toEqual(['gamma (whole): 0.3750 in']);
    expect(
      figuresIn(work(sumOfThree, '  alpha: { value: 1.5 mm }\n  beta: { value: 2.25 mm }\n')),
    ).toEqual(['gamma (whole): 3.8 mm']);
  });

  test('limits go through, rounded inward', () => {
    const numbers = work(sumOfThree, '  alpha: { value: 2 ± 0.5 mm }\n  beta: { value: 1 mm }\n');
    const [figure] = numbers.figures;
    expect(figure?.text).toMatchObject({ nominal: '3.0 mm', limits: '2.5–3.5 mm' });
  });

  test('a range gives a range, and a lone limit a lone limit', () => {
    const twice = doubles('{ setting: alpha }', '{ setting: beta }');
    expect(figuresIn(work(twice, '  alpha: { value: 2 to 3 mm }\n'))).toEqual([
      'beta (twice): 4.0–6.0 mm',
    ]);
    expect(figuresIn(work(twice, '  alpha: { value: 1/2 in min }\n'))).toEqual([
      'beta (twice): 1.0000 in min',
    ]);
  });

  test('a lone limit turns over where the result falls', () => {
    const numbers = work(sumOfThree, '  beta: { value: 2 mm max }\n  gamma: { value: 10 mm }\n');
    expect(figuresIn(numbers)).toEqual(['alpha (one): 8 mm min']);
  });

  test('what is unsaid is taken, and owned up to', () => {
    const { figures } = work(sumOfThree, '  alpha: { value: 3 mm }\n');
    expect(figures.map(({ told }) => told)).toEqual(['one 3 mm (no other) comes to 3 mm']);
    expect(figures[0]?.inputs).toEqual([
      { label: 'one', text: '3 mm', from: 'stated' },
      { label: 'other', text: 'no other', from: 'unsaid' },
    ]);
  });

  test('a figure that cannot be read is not replaced by what is unsaid', () => {
    const numbers = work(sumOfThree, '  alpha: { value: 3 mm }\n  beta: { value: 3 }\n');
    expect(numbers.figures).toEqual([]);
  });

  test('figures are handed on by a name that no sheet states', () => {
    const chain =
      doubles('{ setting: alpha }', '{ worked: middle }') +
      doubles('{ worked: middle }', '{ setting: delta }');
    const numbers = work(chain, '  alpha: { value: 3 mm }\n');
    expect(figuresIn(numbers)).toEqual(['middle (twice): 6 mm', 'delta (twice): 12 mm']);
    expect([...(numbers.derived[1]?.support ?? [])]).toEqual(['setting alpha']);
  });

  test('a circle comes to an end, and no figure proves itself', () => {
    const circle =
      doubles('{ setting: alpha }', '{ setting: beta }') +
      doubles('{ setting: beta }', '{ setting: gamma }') +
      doubles('{ setting: gamma }', '{ setting: alpha }');
    const numbers = work(circle, '  alpha: { value: 3 mm }\n');
    // Twice of twice of twice would be 24 mm; nothing else than alpha was stated.
    expect(numbers.verdicts).toEqual([]);
    expect(numbers.derived.every(({ support }) => support.size === 1)).toBe(true);
    expect(numbers.derived.length).toBeLessThanOrEqual(6);
  });

  test('a relation does not come onto a sheet that lacks its settings', () => {
    expect(work(sumOfThree, '  delta: { value: 3 mm }\n').instances).toEqual([]);
  });
});

describe('stated figures', () => {
  const three = (whole: string) =>
    `  alpha: { value: 1.2 mm }\n  beta: { value: 2.3 mm }\n  gamma: { value: ${whole} }\n`;

  test('of several inexact ones agree where the stretches meet, and touching is meeting', () => {
    // 1.15 to 1.25 and 2.25 to 2.35 come to 3.40 to 3.60.
    for (const whole of ['3.5 mm', '3.4 mm', '3.65 mm'])
      expect(verdictsIn(work(sumOfThree, three(whole))), whole).toEqual([
        [
          'gamma',
          whole === '3.65 mm' ? 'apart' : 'agrees',
          ...(whole === '3.65 mm' ? ['3.400 mm to 3.600 mm', '0.05 mm more'] : []),
        ],
      ]);
  });

  test('that miss are told with the stretch, and by how much they miss it', () => {
    const numbers = work(sumOfThree, three('5.3 mm'));
    expect(verdictsIn(numbers)).toEqual([
      ['gamma', 'apart', '3.400 mm to 3.600 mm', '1.65 mm more'],
    ]);
    expect(numbers.verdicts[0]?.disparity?.slip()).toBe('3.5 mm, if two digits were swapped');
    expect(numbers.verdicts[0]?.told).toBe(
      'one 1.2 mm and other 2.3 mm come to 3.400 mm to 3.600 mm',
    );
  });

  test.each([
    ['6 mm', []],
    ['6.4 mm', ['loose']],
    ['7.4 mm', ['apart']],
  ])('of one inexact input are held to its rounding: %s', (twice, kinds) => {
    const settings = `  alpha: { value: 3 mm }\n  beta: { value: ${twice} }\n`;
    const numbers = work(doubles('{ setting: alpha }', '{ setting: beta }'), settings);
    expect(numbers.verdicts.map(({ kind }) => kind).filter((kind) => kind !== 'agrees')).toEqual(
      kinds,
    );
  });

  test.each([
    ['5–7 mm', 'agrees'],
    ['5.1–6.9 mm', 'limits'],
    ['4–7 mm', 'limits'],
  ])('have limits that follow from those of the one input: %s', (twice, kind) => {
    const settings = `  alpha: { value: 2.5–3.5 mm }\n  beta: { value: ${twice} }\n`;
    const numbers = work(doubles('{ setting: alpha }', '{ setting: beta }'), settings);
    expect(numbers.verdicts.map((each) => each.kind)).toEqual([kind]);
  });

  test('that contradict over a chain are one finding', () => {
    const chain =
      doubles('{ setting: alpha }', '{ worked: middle }') +
      doubles('{ worked: middle }', '{ setting: delta }');
    const numbers = work(chain, '  alpha: { value: 3 mm }\n  delta: { value: 21 mm }\n');
    expect(verdictsIn(numbers)).toEqual([['delta', 'apart', '12.000 mm', '9.00 mm more']]);
  });

  const bound = `  - relation: bounded
    of: alpha
    quantities: { small: { setting: alpha }, large: { setting: beta } }
`;
  test.each([
    ['4 mm', '4 mm', []],
    ['4 mm', '5 mm', []],
    ['5 mm', '4 mm', []],
    ['6 mm', '4 mm', ['at-most']],
    ['4 ± 1 mm', '4.0 mm', ['at-most']],
    ['9 mm max', '4 mm', []],
    ['9 mm min', '4 mm', ['at-most']],
  ])('are held to a bound whole: %s of %s', (small, large, holds) => {
    const settings = `  alpha: { value: ${small} }\n  beta: { value: ${large} }\n`;
    const { verdicts } = work(bound, settings);
    const beyond = verdicts.filter(({ kind }) => kind === 'beyond');
    expect(beyond.map(({ proof }) => proof.solution.hold)).toEqual(holds);
  });

  test('that no formula fits are refused with both as written, once', () => {
    const settings = '  beta: { value: 9 mm }\n  gamma: { value: 3.0 mm }\n';
    const { unworkable, figures } = work(sumOfThree, settings);
    expect(unworkable.map(({ message, fix }) => [message, fix])).toEqual([
      ['3.0 mm is less than 9 mm', 'correct 3.0 mm'],
    ]);
    expect(unworkable[0]?.places.map(({ label }) => label)).toEqual(['the whole', 'the other']);
    expect(figures).toEqual([]);
  });
});

describe('places', () => {
  test('are read as the kind of size that is wanted, from `also` where the value is none', () => {
    const relation = doubles('{ setting: alpha }', '{ setting: alpha, key: twice }');
    const numbers = work(relation, '  alpha: { value: flush, also: [3 mm], twice: 6 mm }\n');
    expect(verdictsIn(numbers)).toEqual([['twice', 'agrees']]);
  });

  test('a key that is no size is told', () => {
    const relation = doubles('{ setting: alpha }', '{ setting: alpha, key: twice }');
    const { unread } = work(relation, '  alpha: { value: 3 mm, twice: 6 }\n');
    expect(unread.map(({ place, dimension }) => [place.key, place.text, dimension])).toEqual([
      ['twice', '6', 'length'],
    ]);
  });

  test('of several barrels are worked one by one', () => {
    const relation = doubles('{ setting: alpha }', '{ setting: beta }');
    const settings =
      '  alpha: { places: { left: 3 mm, right: 4 mm } }\n  beta: { places: { left: 6 mm, right: 9.0 mm } }\n';
    const numbers = work(relation, settings);
    expect(numbers.verdicts.map(({ proof, kind }) => [proof.instance.at, kind])).toEqual([
      ['left', 'agrees'],
      ['right', 'loose'],
    ]);
    const named = doubles('{ setting: alpha, at-place: right }', '{ setting: gamma }');
    expect(figuresIn(work(named, '  alpha: { places: { left: 3 mm, right: 4 mm } }\n'))).toEqual([
      'gamma (twice): 8 mm',
    ]);
  });

  test('that say they are something else take no part', () => {
    const relation = doubles('{ setting: alpha, unless: [worn] }', '{ setting: beta }');
    expect(figuresIn(work(relation, '  alpha: { value: 3 mm, of: worn }\n'))).toEqual([]);
    expect(figuresIn(work(relation, '  alpha: { value: 3 mm, of: new }\n'))).toHaveLength(1);
  });

  test('that have to be said alike have to be', () => {
    const relation = sumOfThree.replace('of: alpha', 'of: alpha\n    same: [at]');
    const settings = (at: string) =>
      `  alpha: { value: 3 mm, at: free end }\n  beta: { value: 1 mm${at} }\n`;
    expect(work(relation, settings(', at: Free end')).figures).toHaveLength(1);
    expect(work(relation, settings(', at: seam')).figures).toEqual([]);
    expect(work(relation, settings('')).figures).toEqual([]);
  });

  test('fixed figures and sizes of the unit take part', () => {
    const relation = `  - relation: sum
    of: alpha
    quantities:
      one: { unit: drum }
      other: { fixed: 2 mm, because: all have it }
      whole: { setting: alpha }
`;
    const numbers = work(relation, '  alpha: { value: 9.5 mm }\n', '  drum: 5 mm\n');
    expect(verdictsIn(numbers)).toEqual([
      ['alpha', 'apart', '6.000 mm to 8.000 mm', '1.45 mm more'],
    ]);
    expect(numbers.derived).toEqual([]);
  });

  test('features that a relation is for have to be there', () => {
    const relation = sumOfThree.replace('of: alpha', 'of: alpha\n    if-feature: [two-drum]');
    const settings = '  alpha: { value: 3 mm }\n  beta: { value: 1 mm }\n';
    expect(work(relation, settings).figures).toEqual([]);
    expect(
      work(relation, settings, '  features: [two-drum]\n').figures.map(
        ({ derived }) => textOf(derived).text,
      ),
    ).toEqual(['4 mm']);
  });
});
