import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { gaugeleaf } from './console.ts';

const sheet = (travel: string, unit = 'kind: carburetor') => `---
gaugeleaf: 1
sheet: orlo-f27
unit:
  ${unit}
  features: [single-barrel, downdraft]
  idle-needle-thread: 10-32 UNF
settings:
  idle-mixture: { value: 1-1/4 ± 1/4 turns out${travel} }
---

# Orlo F27
`;

function folderWith(text: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-work-'));
  writeFileSync(join(folder, 'orlo-f27.md'), text);
  return folder;
}

const work = (text: string, ...more: string[]) =>
  gaugeleaf(['work', 'orlo-f27.md', ...more], { cwd: folderWith(text) });

test('a stated figure that agrees, with formula, inputs and limits', async () => {
  const { status, out } = await work(sheet(', travel: 0.039 in'));
  expect(status).toBe(0);
  expect(out).toContain(`idle-mixture: Travel of a screw
  travel = turns × pitch
  turns   1-1/4 ± 1/4 turns out
  thread  10-32 UNF
  travel  0.0391 in (0.0313–0.0468 in), worked; 0.039 in is stated, and agrees
`);
  for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
});

test('a figure that nobody states is offered', async () => {
  const { status, out } = await work(sheet(''));
  expect(status).toBe(0);
  expect(out).toContain('travel  0.0391 in (0.0313–0.0468 in), worked; not stated\n');
});

test('a figure that disagrees gives 1, and says by how much', async () => {
  const { status, out } = await work(sheet(', travel: 0.093 in'));
  expect(status).toBe(1);
  expect(out.replace(/\s+/g, ' ')).toContain(
    '0.0391 in, worked; 0.093 in is stated, and disagrees: 0.054 in more',
  );
});

test('source and assumptions come with --full, everything with --json', async () => {
  const full = await work(sheet(''), '--full');
  expect(full.out).toContain('  source: definition of the pitch of a single-start thread;');
  expect(full.out).toContain('  assumes: The thread has one start.\n');
  const { out } = await work(sheet(', travel: 0.093 in'), '--json');
  const { relations } = JSON.parse(out) as { relations: { results: unknown[]; of: string }[] };
  expect(relations.find(({ of }) => of === 'idle-mixture')?.results).toEqual([
    {
      label: 'travel',
      worked: '0.0391 in',
      stretch: null,
      hold: 'equals',
      stated: '0.093 in',
      verdict: 'apart',
      difference: '0.054 in more',
      side: null,
    },
  ]);
});

test('a sheet of no known kind is refused with the kinds there are', async () => {
  const { status, err } = await work(sheet('', 'kind: winch'));
  expect(status).toBe(2);
  expect(err).toContain('kind');
  expect(err).toContain('carburetor');
});
