import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clearanceOf } from '../../src/gauges/clearance.ts';
import { gaugeMakersPair } from '../../src/gauges/gauge-makers-pair.ts';
import {
  gaugeAdvice,
  gaugeBook,
  kitOf,
  ordinaryKit,
  readKitEntry,
} from '../../src/gauges/index.ts';
import { leafStack, MOST_LEAVES } from '../../src/gauges/leaf-stack.ts';
import { rational, readStatement } from '../../src/quantity/index.ts';
import type { Statement } from '../../src/quantity/model.ts';
import { runs } from '../suite/part.ts';

const INCH = rational('25.4');

function statement(text: string): Statement {
  const reading = readStatement(text, { gauges: gaugeBook() });
  if (!reading.ok) throw new Error(reading.problem.message);
  return reading.statement;
}

function kit(...lines: readonly string[]) {
  return kitOf(lines.map((line) => readKitEntry(line)));
}

function bore(text: string | null) {
  const boreMm = text === null ? null : (statement(text).nominal?.base ?? null);
  return { inBore: true, boreMm };
}

describe('advice between faces, of the ordinary kit', () => {
  test.each([
    // Exactly a gauge; the pair as far inside as leaves (0.0005 in) and wires (0.001 in) are uncertain.
    ['0.020 ± 0.002 in', '0.020 in leaf; go 0.019 in leaf, no-go 0.021 in leaf'],
    ['34 to 36 thou', '0.035 in wire; go 0.035 in wire, no-go 0.90 mm leaf'],
    ['13/64 ± 1/64 in', '13/64 drill; go 4.8 mm drill, no-go 5.5 mm drill'],
    ['0.50 ± 0.05 mm', '0.50 mm leaf; go 0.019 in leaf, no-go 0.021 in leaf'],
    // Only one size in the band: no pair.
    [
      '0.0199–0.0205 in',
      '0.020 in leaf; to prove it, make go 0.01993 in and no-go 0.02047 in, known to 0.00003 in',
    ],
    // Two sizes, and neither far enough inside to prove anything.
    [
      '0.0195–0.0205 in',
      '0.020 in leaf; to prove it, make go 0.01955 in and no-go 0.02045 in, known to 0.00005 in',
    ],
    // A nominal is as wide as its own rounding.
    ['0.015 in', '0.015 in leaf'],
    ['0.0150 in', '0.015 in leaf'],
    ['0.027 in', '0.014 in and 0.013 in leaves together'],
    ['0.0185 in', '0.016 in and 0.0025 in leaves together'],
    ['0.020 in min', '0.020 in leaf passes'],
    ['0.5 mm max', '0.50 mm leaf does not pass'],
    ['1-3/32 ± 1/32 in', 'no common gauge fits: nearest is 13 mm drill (0.5819 in less)'],
    ['0.5905 in', 'no common gauge fits: nearest is 13 mm drill (0.0787 in less)'],
    ['0.001 in', 'no common gauge fits: nearest is 0.0015 in leaf (0.0005 in more)'],
  ])('%s', (text, words) => expect(gaugeAdvice(statement(text), ordinaryKit())?.text).toBe(words));

  test.each(['475 rpm', 'parallel', '0 in', '0 in max'])('%s asks for no gap', (text) => {
    expect(gaugeAdvice(statement(text), ordinaryKit())).toBeNull();
  });
});

describe('advice of a kit of the club’s own', () => {
  const small = kit('0.026 in wire', '0.028 in wire', 'leaf set 0.002-0.005 in');

  test('names what the kit has, and not what a catalog has', () => {
    expect(gaugeAdvice(statement('0.027 in'), small)?.text).toBe(
      'no gauge of the kit fits: nearest are 0.026 in wire (0.0010 in less) and 0.028 in wire (0.0010 in more)',
    );
  });

  test('an empty kit has nothing near', () => {
    expect(gaugeAdvice(statement('0.027 in'), kit())?.text).toBe('no gauge of the kit fits');
  });

  test('the boundary: a gauge exactly at a limit lies within it', () => {
    expect(gaugeAdvice(statement('0.026–0.0275 in'), small)?.text).toMatch(/^0.026 in wire;/);
    expect(gaugeAdvice(statement('0.02601–0.0279 in'), small)?.fits).toEqual([]);
  });
});

describe('advice in a bore', () => {
  test('takes a round gauge before a leaf of the same size', () => {
    const advice = gaugeAdvice(statement('0.020 ± 0.002 in'), ordinaryKit(), bore('1-7/16 in'));
    expect(advice?.text).toBe(
      '0.020 in wire, held along the bore; go 0.50 mm wire, no-go No. 75 drill',
    );
    expect(advice?.fits.some(({ widthMm }) => widthMm !== null)).toBe(false);
  });

  test('allows a narrow leaf whose error the limits leave room for, and not a wide one', () => {
    // R = 23/32 in; 1/8 in wide: .71875 - sqrt(.71875² - .0625²) = .0027225 in, worked by hand.
    const narrow = kit('0.020 in leaf, 1/8 in wide');
    const wide = kit('0.020 in leaf');
    const at = bore('1-7/16 in');
    expect(gaugeAdvice(statement('0.018–0.0228 in'), narrow, at)?.fits).toHaveLength(1);
    expect(gaugeAdvice(statement('0.018–0.0227 in'), narrow, at)?.fits).toHaveLength(0);
    expect(gaugeAdvice(statement('0.018–0.0228 in'), wide, at)?.fits).toHaveLength(0);
  });

  test('takes no leaf at all where nobody says how wide the bore is', () => {
    const advice = gaugeAdvice(
      statement('0.020 in'),
      kit('0.020 in leaf, 1/8 in wide'),
      bore(null),
    );
    expect(advice?.text).toBe('no gauge of the kit fits');
  });
});

test('whatever is advised lies within the limits, and nothing that lies within is left out', () => {
  const all = ordinaryKit().gauges;
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 60_000 }),
      fc.integer({ min: 0, max: 4000 }),
      (low, band) => {
        const text = `${(low / 1e5).toFixed(5)}–${((low + band) / 1e5).toFixed(5)} in`;
        const said = statement(text);
        const advice = gaugeAdvice(said, ordinaryKit());
        const clearance = clearanceOf(said);
        const inside = all.filter(
          ({ gauge }) =>
            gauge.mm.compare(clearance?.lowMm ?? 0) >= 0 &&
            gauge.mm.compare(clearance?.highMm ?? 0) <= 0,
        );
        expect(new Set(advice?.fits)).toEqual(new Set(inside));
        const offs = (advice?.fits ?? []).map(({ gauge }) =>
          gauge.mm
            .sub(clearance?.nominalMm ?? 0)
            .abs()
            .valueOf(),
        );
        expect(offs).toEqual([...offs].sort((a, b) => a - b));
      },
    ),
    { numRuns: runs(200) },
  );
});

describe('stacked leaves', () => {
  /** Every choice of two to four leaves, by brute force. */
  function everyStack(sizes: readonly number[]): { count: number; sum: number }[] {
    const found: { count: number; sum: number }[] = [];
    for (let mask = 1; mask < 1 << sizes.length; mask++) {
      const chosen = sizes.filter((_, i) => mask & (1 << i));
      if (chosen.length < 2 || chosen.length > MOST_LEAVES) continue;
      found.push({ count: chosen.length, sum: chosen.reduce((a, b) => a + b) });
    }
    return found;
  }

  test('are the fewest that reach the limits, else the nearest: against brute force', () => {
    const tenThousandths = fc.uniqueArray(fc.integer({ min: 15, max: 300 }), {
      minLength: 2,
      maxLength: 9,
    });
    fc.assert(
      fc.property(
        tenThousandths,
        fc.integer({ min: 20, max: 900 }),
        fc.integer({ min: 0, max: 9 }),
        (sizes, low, band) => {
          const leaves = kit(...sizes.map((size) => `${(size / 1e4).toFixed(4)} in leaf`)).gauges;
          const clearance = clearanceOf(
            statement(`${(low / 1e4).toFixed(4)}–${((low + band) / 1e4).toFixed(4)} in`),
          );
          if (clearance === null) throw new Error('no gap');
          const stack = leafStack(clearance, leaves);
          const all = everyStack(sizes);
          const off = ({ sum }: { sum: number }) => Math.abs(2 * sum - 2 * low - band);
          const inside = all.filter(({ sum }) => sum >= low && sum <= low + band);
          const fewest = Math.min(...inside.map(({ count }) => count));
          const wanted = inside.length > 0 ? inside.filter(({ count }) => count === fewest) : all;
          expect(stack?.fits).toBe(inside.length > 0);
          if (inside.length > 0) expect(stack?.leaves.length).toBe(fewest);
          const mine = stack?.mm.div(INCH).mul(10_000).valueOf() ?? 0;
          expect(Math.abs(2 * mine - 2 * low - band)).toBeCloseTo(Math.min(...wanted.map(off)), 6);
          expect(new Set(stack?.leaves).size).toBe(stack?.leaves.length);
        },
      ),
      { numRuns: runs(300) },
    );
  });

  test('mix no inches with millimeters', () => {
    const leaves = kit('0.010 in leaf', '0.10 mm leaf').gauges;
    const clearance = clearanceOf(statement('0.354 mm'));
    expect(clearance && leafStack(clearance, leaves)).toBeNull();
  });

  test('more leaves than any set has are not searched for ever', () => {
    const leaves = kit('leaf set 0.0101-0.3001 in by 0.001 in').gauges;
    const clearance = clearanceOf(statement('0.40005 in'));
    const started = performance.now();
    expect(clearance && leafStack(clearance, leaves)).toBeNull();
    expect(performance.now() - started).toBeLessThan(2000);
  });
});

describe('the gauge maker’s pair', () => {
  test('takes a tenth of the band, half of it for each', () => {
    // Cited to ASME B89.1.5:1998: .250 +.004 → GO .2500 +.0002, NO-GO .2540 -.0002.
    const pair = gaugeMakersPair(rational('0.250').mul(INCH), rational('0.254').mul(INCH));
    const inches = (mm: typeof INCH | undefined) => mm?.div(INCH).toString();
    expect([inches(pair?.go.low), inches(pair?.go.high)]).toEqual(['0.25', '0.2502']);
    expect([inches(pair?.noGo.low), inches(pair?.noGo.high)]).toEqual(['0.2538', '0.254']);
  });

  test('needs a band', () => {
    expect(gaugeMakersPair(INCH, INCH)).toBeNull();
  });
});
