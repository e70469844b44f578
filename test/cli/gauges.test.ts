import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { change, demoCopy } from '../docs/marked-blocks.ts';
import { browserHere } from '../press/stand.ts';
import { gaugeleaf } from './console.ts';

const made: (() => void)[] = [];
afterEach(() => {
  for (const remove of made.splice(0)) remove();
});

/** A copy of the demo, with its pictures. */
function demo(): string {
  const { folder, remove } = demoCopy();
  made.push(remove);
  return folder;
}

const browser = await browserHere();
if (typeof browser === 'string') console.warn(`no gauges of paper are printed: ${browser}`);

describe.skipIf(typeof browser === 'string')('gaugeleaf gauges', { timeout: 60_000 }, () => {
  const env = process.env;

  test('prints what paper is fine enough for, and says what it is not', async () => {
    const cwd = demo();
    const { status, out, err } = await gaugeleaf(['gauges', 'orlo-t71-wexcombe-six'], { cwd, env });
    expect(out).toBe('print/orlo-t71-wexcombe-six-gauges.pdf\n');
    expect(err).toContain(
      '1 page\n2 gauges: print at 100 %, and measure the bars before you cut\n',
    );
    expect(err).toContain('not for paper: Pump stroke (no limits are stated)\n');
    expect(status).toBe(0);
    const pdf = readFileSync(join(cwd, 'print/orlo-t71-wexcombe-six-gauges.pdf'));
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  });

  test('is refused where paper will do for nothing', async () => {
    const cwd = demo();
    const argv = ['gauges', 'pellow-p44-ravensgarth-sports'];
    const { status, out, err } = await gaugeleaf(argv, { cwd, env });
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toContain('Paper is fine enough for no setting of');
    expect(existsSync(join(cwd, 'print'))).toBe(false);
  });

  test('stops at findings as every print does', async () => {
    const name = 'orlo-t71-wexcombe-six';
    const cwd = demo();
    change(join(cwd, `sheets/${name}.md`), 'value: 13/64 ± 1/64 in', 'value: 31/64 ± 1/64 in');
    const { status, out, err } = await gaugeleaf(['gauges', name], { cwd, env });
    expect(status).toBe(1);
    expect(out).toBe('');
    expect(err).toContain('sizes-disagree');
    expect(err).toContain('Nothing was printed.');
  });
});
