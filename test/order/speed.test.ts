import { expect, test } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { orderedOperations, workOf } from '../../src/order/index.ts';
import { walkWork } from '../../src/order/walk.ts';
import { readSheet } from '../../src/sheet/index.ts';

/** A sheet of forty operations with ten steps each, every second step marked, all in order. */
function longSheet(): string {
  const kind = builtInKinds().get('carburetor');
  const work = orderedOperations(
    [...(kind?.operations.values() ?? [])].filter(({ stage }) => stage !== 'any'),
  );
  const sections = Array.from({ length: 40 }, (_, i) => work[Math.min(i, work.length - 1)]);
  const body = sections.map((operation, i) => {
    const steps = Array.from({ length: 10 }, (_, n) =>
      n % 2 === 0
        ? `${n + 1}. Let the throttle shut and see that nothing binds. :state[throttle shut]`
        : `${n + 1}. Measure with the gauge in the bore: :value[float-level].`,
    );
    return `## ${operation?.label} ${i} {#${operation?.name}}\n\n${steps.join('\n')}\n`;
  });
  return `---\ngaugeleaf: 1\nunit: { kind: carburetor }\n---\n\n${body.join('\n')}`;
}

test('a sheet of 40 operations and 400 steps walks in under 20 ms beyond its parsing', () => {
  const kinds = builtInKinds();
  const kind = kinds.get('carburetor');
  if (!kind) throw new Error('no carburetor');
  const sheet = readSheet(longSheet(), 'sheets/long.md', {
    kinds,
    gauges: gaugeBook(),
    wireGauge: null,
  });
  expect(sheet.operations).toHaveLength(40);
  const times: { readonly read: number; readonly walk: number }[] = [];
  for (let round = 0; round < 30; round++) {
    const start = performance.now();
    const work = workOf(sheet, kind);
    const between = performance.now();
    const { steps } = walkWork(work, sheet, kind);
    const end = performance.now();
    expect(steps).toHaveLength(400);
    times.push({ read: between - start, walk: end - between });
  }
  // The best of many rounds: what else the machine does is not the walk's.
  const read = Math.min(...times.map((each) => each.read));
  const walk = Math.min(...times.map((each) => each.walk));
  console.log(
    `400 steps: words and marks read in ${read.toFixed(1)} ms, walked in ${walk.toFixed(1)} ms`,
  );
  expect(read + walk).toBeLessThan(20);
});
