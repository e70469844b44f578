import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { wholeSheet } from '../checks/examples.ts';
import { gaugeleaf } from './console.ts';

const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-trace-'));

beforeAll(() => {
  mkdirSync(join(folder, 'sheets'));
  const body = `## Strip and inspect

1. Take the dust cover off.
2. Drain the bowl. :state[unit on-bench]

## Pump stroke

1. Back the stop screw off. :state[stop-screw backed-off]
2. Let the throttle shut and measure: :value[pump-stroke]. :state[throttle shut]

## Installation

1. Draw the nuts down.
2. Turn the stop screw in. :state[stop-screw set]
`;
  writeFileSync(join(folder, 'sheets', 'orlo-f27.md'), wholeSheet({ body }));
  const other = wholeSheet({ front: 'unit: { kind: winch, maker: Orlo, model: W }' });
  writeFileSync(join(folder, 'sheets', 'orlo-w.md'), other);
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

test('a line a step, with what it says and what is different after it', async () => {
  const { status, out, err } = await gaugeleaf(['check', '--trace', 'sheets/orlo-f27.md'], {
    cwd: folder,
  });
  expect([status, err]).toEqual([0, '']);
  expect(out).toMatchInlineSnapshot(`
    "A state with a question mark was read from words, which stand in quotes; without one it is
    marked, or follows by itself. Only what a step alters is shown, and the whole state where a
    stage of the work begins.

    sheets/orlo-f27.md
      line  step                 what it says                               what is different after it
      -- strip: unit on-engine, cover on, cover-gasket on, dust-cover on, throttle on-idle-stop, stop-screw set, choke free, engine stopped, temperature cold, vehicle free
        30  Strip and inspect 1  dust-cover off? “Take the dust cover off”  dust-cover off?
        31  Strip and inspect 2  unit on-bench                              unit on-bench
      -- bench: unit on-bench, cover on, cover-gasket on, dust-cover off?, throttle on-idle-stop, stop-screw set, choke free, engine stopped, temperature cold, vehicle free
        35  Pump stroke 1        stop-screw backed-off                      stop-screw backed-off
        36  Pump stroke 2        throttle shut                              throttle shut
      -- before-start: unit on-bench, cover on, cover-gasket on, dust-cover off?, throttle shut, stop-screw backed-off, choke free, engine stopped, temperature cold, vehicle free
        40  Installation 1
        41  Installation 2       stop-screw set                             unit on-engine?, throttle on-idle-stop, stop-screw set
    "
  `);
});

test('a sheet of no known kind, and a sheet that is not there', async () => {
  const unknown = await gaugeleaf(['check', '--trace', 'sheets/orlo-w.md'], { cwd: folder });
  expect(unknown).toEqual({
    status: 2,
    out: '',
    err: 'gaugeleaf: sheets/orlo-w.md is of no kind of unit that is known\n',
  });
  const absent = await gaugeleaf(['check', '--trace', 'sheets/orlo-9.md'], { cwd: folder });
  expect(absent.status).toBe(2);
  expect(absent.out).toBe('');
});
