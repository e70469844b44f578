import { describe, expect, it } from 'vitest';
import { defineRelation, refuse } from '../../src/relations/define-relation.ts';
import { divide } from '../../src/relations/interval.ts';
import type { Interval, Worked } from '../../src/relations/model.ts';

const relation = defineRelation({
  id: 'share',
  title: 'Share',
  formula: 'share = part ÷ whole',
  source: 'definition',
  assumptions: ['None.'],
  range: 'whole > 0',
  quantities: {
    share: { label: 'share', symbol: 'share', dimension: 'ratio' },
    part: { label: 'part', symbol: 'part', dimension: 'length' },
    whole: { label: 'whole', symbol: 'whole', dimension: 'length' },
  },
  solutions: [
    {
      for: 'share',
      from: ['part', 'whole'],
      above: ['whole'],
      solve: ({ part, whole }) => divide(part, whole),
    },
    {
      for: 'part',
      from: ['share'],
      hold: 'at-most',
      offer: false,
      solve: () => ({ lo: 0, hi: Number.POSITIVE_INFINITY }),
    },
  ],
});

function solve(figures: Readonly<Record<string, Interval>>, index = 0): Worked | undefined {
  return relation.solutions[index]?.solve(new Map(Object.entries(figures)));
}

const at = (value: number) => ({ lo: value, hi: value });

describe('a relation', () => {
  it('names its quantities, and has what its solutions leave unsaid', () => {
    expect(relation.quantities.map(({ name, unsaid }) => [name, unsaid])).toEqual([
      ['share', null],
      ['part', null],
      ['whole', null],
    ]);
    expect(relation.solutions.map(({ hold, offer }) => [hold, offer])).toEqual([
      ['equals', true],
      ['at-most', false],
    ]);
  });

  it('cuts what a rounding reaches below nothing, or to nothing where that is no figure', () => {
    const cut = solve({ part: { lo: -0.5, hi: 0.5 }, whole: { lo: 1, hi: 2 } }) as Interval;
    expect(cut.lo).toBeCloseTo(0, 12);
    expect(cut.hi).toBeCloseTo(0.5, 12);
    const wide = solve({ part: at(1), whole: { lo: -0.4, hi: 0.5 } }) as Interval;
    expect(wide.lo).toBeCloseTo(2, 12);
    expect(wide.hi).toBeCloseTo(1e9, 0);
  });

  it.each([
    [{ part: at(-1), whole: at(1) }, 'the part, {part}, is less than nothing', 'part'],
    [
      { part: at(1), whole: at(0) },
      'the whole, {whole}, is too close to nothing to work with',
      'whole',
    ],
    [
      // `0 s`, with the half second that its rounding would allow.
      { part: at(1), whole: { lo: -0.5, hi: 0.5 } },
      'the whole, {whole}, is too close to nothing to work with',
      'whole',
    ],
    [
      { part: at(1), whole: at(-1) },
      'the whole, {whole}, is too close to nothing to work with',
      'whole',
    ],
    [{ part: at(2e9), whole: at(1) }, '{part} is beyond anything that the part can be', 'part'],
    [
      { part: at(Number.POSITIVE_INFINITY), whole: at(1) },
      '{part} is beyond anything that the part can be',
      'part',
    ],
    [
      { part: at(Number.NaN), whole: at(1) },
      '{part} is beyond anything that the part can be',
      'part',
    ],
  ])('refuses %o', (figures, message, name) => {
    expect(solve(figures)).toEqual(
      refuse(message, `look at {${name}} again: its point or its unit may have slipped`, name),
    );
  });

  it('keeps its ends away from the smallest doubles, outward', () => {
    expect(solve({ part: at(0), whole: at(1) })).toEqual({ lo: -1e-30, hi: 1e-30 });
    expect(solve({ part: at(1), whole: at(1) })).toEqual({
      lo: expect.closeTo(1, 12),
      hi: expect.closeTo(1, 12),
    });
  });

  it('makes a refusal of a result that is not finite', () => {
    expect(solve({ share: at(1) }, 1)).toEqual(
      refuse(
        'the figures lie too far apart to work the part',
        'look for a slipped point or a wrong unit among them',
        'share',
      ),
    );
  });

  it('fails where a quantity is missing that it needs', () => {
    expect(() => solve({ part: at(1) })).toThrow('whole is not known');
  });
});
