import fc from 'fast-check';
import { expect, test } from 'vitest';
import { tried } from './faults.ts';
import { type Change, changed, someChanges } from './mutations.ts';
import { projectWith, remove, targets } from './project.ts';

/**
 * Files that were right, altered at random, and everything that reads them. `FUZZ_CASES` and `FUZZ_SEED`
 * say how many and which; a case that fails is made small, and printed with its seed.
 */
const cases = Number(process.env.FUZZ_CASES ?? 60);
const seed = Number(process.env.FUZZ_SEED ?? 1948);
const only = process.env.FUZZ_ONLY;

const everything = targets();
const all = everything.filter(({ name }) => only === undefined || name.includes(only));

/** The altered file: the changes in turn, and then perhaps a byte that is no letter. */
function alteredBytes(text: string, made: readonly Change[], byte: number | null): Uint8Array {
  const bytes = Buffer.from(made.reduce(changed, text).slice(0, 400_000), 'utf8');
  if (byte !== null && bytes.length > 0) bytes[byte % bytes.length] = byte & 0xff;
  return bytes;
}

async function run(name: string, made: readonly Change[], byte: number | null): Promise<void> {
  const target = all.find((each) => each.name === name);
  if (!target) throw new Error(`there is no file ${name} to alter`);
  const folder = projectWith(everything, target, alteredBytes(target.text, made, byte));
  try {
    await tried(folder, target, made[0]?.pick ?? 0);
  } finally {
    remove(folder);
  }
}

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
        (name, made, byte) => run(name, made, byte),
      ),
      { numRuns: cases, seed, endOnFailure: cases < 1000 },
    );
    // What is kept between commands does not grow with the number of files: MiB, a loose bound.
    expect(heap() - before).toBeLessThan(600);
  },
  24 * 3600_000,
);
