import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { gaugeleaf } from './console.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const OWN = 'orlo-t71-wexcombe-six';
const OTHER = 'dunnow-c31-tollgarth-eight';
let cwd = '';

beforeAll(() => {
  cwd = mkdtempSync(join(tmpdir(), 'gaugeleaf-like-'));
  for (const name of ['sheets', 'edition.yaml']) {
    cpSync(join(root, name), join(cwd, name), { recursive: true });
  }
});
afterAll(() => rmSync(cwd, { recursive: true, force: true }));

const like = (own: string, other: string, ...options: string[]) =>
  gaugeleaf(['work', own, '--like', other, ...options], { cwd });

/** A copy of a demo sheet in which a line reads otherwise. */
function changed(name: string, line: string, into: string): string {
  const text = readFileSync(join(root, 'sheets', `${name}.md`), 'utf8');
  expect(text).toContain(line);
  writeFileSync(join(cwd, 'sheets', 'changed.md'), text.replace(line, into));
  return 'sheets/changed.md';
}

/** Half of what two segments beyond the shaft have more than the plate's, in square inches. */
function openArea(bore: number, shaft: number, gap: number): number {
  const steps = 20_000;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const x = (((i + 0.5) / steps) * bore) / 2;
    const edge = Math.sqrt((bore / 2) ** 2 - x * x);
    sum += Math.max(0, edge - Math.max((1 - (2 * gap) / bore) * edge, shaft / 2));
  }
  return (4 * sum * (bore / 2)) / steps;
}

// The first command of a run loads the whole program.
describe('gaugeleaf work --like', { timeout: 60_000 }, () => {
  it('sets two throttles side by side', async () => {
    const { status, out, err } = await like(OWN, OTHER);
    expect(err).toBe('');
    expect(status).toBe(0);
    // 0.028 in wire on 1-7/16 in and two barrels against one of 1-11/16 in, by the midpoint rule.
    const own = 2 * openArea(1.4375, 5 / 16, 0.028);
    const share = (100 * openArea(1.6875, 3 / 8, 0.028)) / own;
    expect(share).toBeCloseTo(58.68, 2);
    expect(openArea(1.6875, 3 / 8, 0.0477)).toBeCloseTo(own, 3);
    expect(out).toContain(`fast-idle-gap: this sheet against sheets/${OTHER}.md
                     this sheet  the other
  throttle bore      1-7/16 in   1-11/16 in
  throttle shaft     5/16 in     3/8 in
  number of barrels  2           one barrel
  throttle gap       22 SWG      0.030 in wire
  At one gap of 22 SWG, the other is open by 58.68% of this one's area
  The other is open by the same area at a gap of 0.0477 in
`);
    expect(out).toContain(
      'assumes: Open areas stand for air only while both see the same pressures.',
    );
  });

  it('finds a throttle like itself', async () => {
    const { out } = await like(OTHER, OTHER);
    expect(out).toMatch(/the other is open by 100(?:\.0+)?% of this one/);
    expect(out).toContain('the same area at a gap of 0.030 in');
  });

  it('says what was taken where a sheet has no shaft', async () => {
    const { out } = await like(OWN, changed(OTHER, '  throttle-shaft: 3/8 in\n', ''));
    expect(out).toContain('throttle shaft     5/16 in     no shaft, as none is said');
  });

  it('hands the same over as JSON', async () => {
    const { out } = await like(OWN, OTHER, '--json');
    const { sheet, like: other, throttles } = JSON.parse(out);
    expect([sheet, other]).toEqual([`sheets/${OWN}.md`, `sheets/${OTHER}.md`]);
    expect(throttles[0]).toMatchObject({
      of: 'fast-idle-gap',
      gap: '22 SWG',
      share: { text: '58.68%', unit: 'percent' },
      otherGap: { text: '0.0477 in', unit: 'in' },
      refusals: [],
    });
  });

  it('says why a gap can not be had', async () => {
    const { status, out } = await like(
      OWN,
      changed(OTHER, 'throttle-shaft: 3/8 in', 'throttle-shaft: 2.0 in'),
    );
    expect(status).toBe(1);
    expect(out.replace(/\s+/g, ' ')).toContain(
      'impossible: a throttle shaft of 2.0 in fills a bore of 1-11/16 in: nothing is left open',
    );
    expect(out).not.toContain('NaN');
  });

  it('works what is left where only the rounding of a shaft lets it into its bore', async () => {
    // 2 in to the inch may be 1.5 in.
    const { status, out } = await like(
      OWN,
      changed(OTHER, 'throttle-shaft: 3/8 in', 'throttle-shaft: 2 in'),
    );
    expect(status).toBe(1);
    expect(out).toContain('the other is open by 16% of this one');
    expect(out).not.toContain('NaN');
  });

  it('refuses sheets without a gap at a throttle', async () => {
    const { status, err } = await like('pellow-p44-ravensgarth-sports', OTHER);
    expect(status).toBe(2);
    expect(err).toContain(
      'the first has to state a gap at its throttle and its bore, the other its bore',
    );
  });

  it('names a sheet that there is not', async () => {
    const { status, err } = await like(OWN, 'dunnow-c33-tollgarth-eight');
    expect(status).toBe(2);
    expect(err).toContain(`perhaps sheets/${OTHER}.md was meant`);
  });
});
