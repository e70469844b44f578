import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isQuick } from '../../suite/part.ts';
import { runCase } from './case.ts';
import { someChanges } from './mutations.ts';
import { targets } from './project.ts';

/**
 * Files that were right, altered at random, and everything that reads them. `FUZZ_CASES` and `FUZZ_SEED`
 * say how many and which; a case that fails is made small, and printed with its seed.
 */
const cases = Number(process.env.FUZZ_CASES ?? (isQuick ? 12 : 60));
const seed = Number(process.env.FUZZ_SEED ?? 1948);
const only = process.env.FUZZ_ONLY;

const all = targets().filter(({ name }) => only === undefined || name.includes(only));

test(
  'no altered file makes the program fail, wait, contradict itself, or say what it should not',
  async () => {
    const heap = () => process.memoryUsage().heapUsed / 2 ** 20;
    const before = heap();
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...all.map(({ name }) => name)),
        someChanges,
        fc.option(fc.nat(100_000), { freq: 8 }),
        (name, made, byte) => runCase({ name, made, byte }),
      ),
      { numRuns: cases, seed, endOnFailure: cases < 1000 },
    );
    // What is kept between commands does not grow with the number of files: MiB, a loose bound.
    expect(heap() - before).toBeLessThan(600);
  },
  24 * 3600_000,
);
