import { describe, expect, it } from 'vitest';
import { agree } from '../../src/quantity/index.ts';
import { gauges, size } from './reading.ts';

const verdict = (first: string, second: string) =>
  agree(size(first), size(second), { gauges }).verdict;

describe('a whole number beside a tolerance or a fraction', () => {
  it.each(['1 ± 1/16 in', '2 +0/-1/32 in', '1" ± .010"', '3 ± 1/4 in', '1 in (15/16–1-1/16 in)'])(
    '%s is exact',
    (text) => {
      expect(size(text).nominal?.places).toBeNull();
    },
  );

  it.each([
    ['1 to 1-1/4 in', 'low'],
    ['7/8 to 1 in', 'high'],
    ['1-1/2 to 2 in', 'high'],
  ] as const)('%s is exact at its %s end', (text, side) => {
    expect(size(text)[side]?.amount?.places).toBeNull();
  });

  it('is no half inch either way', () => {
    expect(verdict('1 ± 1/16 in', '1.2 in')).toBe('disagrees');
    expect(verdict('1 ± 1/16 in', '25 mm')).toBe('agrees');
    expect(verdict('1 ± 1/16 in', '30 mm')).toBe('disagrees');
    expect(verdict('2 ± 1/32 in', '2.3 in')).toBe('disagrees');
    expect(verdict('1 to 1-1/4 in', '0.8 to 1.25 in')).toBe('disagrees');
  });

  it('is right to no places when it stands alone', () => {
    expect(size('1 in').nominal?.places).toBe(0);
    expect(size('475 rpm').nominal?.places).toBe(0);
  });
});
