import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const root = join(import.meta.dirname, '..', '..');

/** The smallest kind that a club may have. */
const own = `gaugeleaf-kind: 1
kind: oil-pump
title: Oil pump
settings:
  relief-pressure:
    label: Relief pressure
    explain: The pressure at which the valve opens.
    dimensions: [pressure]
    usual: { pressure: [5 psi, 200 psi] }
operations:
  relief-pressure:
    stage: bench
    steps:
      - "Read the gauge: {setting}."
`;

describe('kind', () => {
  test('lists kinds, those of the project too with their files', async () => {
    const folder = folderWith({ 'sheets/one.md': cleanSheet('one'), 'kinds/pump.yaml': own });
    const { status, out, err } = await gaugeleaf(['kind'], { cwd: folder });
    expect([status, err]).toEqual([0, '']);
    expect(out).toMatch(/^carburetor +Carburetor: \d+ settings/m);
    expect(out).toMatch(/^oil-pump +Oil pump: 1 settings?.* \(kinds\/pump\.yaml\)$/m);
    const listed = JSON.parse((await gaugeleaf(['kind', '--json'], { cwd: folder })).out);
    expect(listed).toContainEqual({ kind: 'oil-pump', title: 'Oil pump', file: 'kinds/pump.yaml' });
    const of = await gaugeleaf(['kind', 'Oil pump', 'relief pressure'], { cwd: folder });
    expect(of.out).toMatch(/usual +5 psi to 200 psi/);
  });

  test('tells all of a kind, one line an entry', async () => {
    const { out } = await gaugeleaf(['kind', 'carburetor'], { cwd: root });
    const line = (name: string) => out.split('\n').filter((each) => each.startsWith(`  ${name} `));
    expect(line('float-drop').length).toBe(2);
    expect(line('automatic-choke')[0]).toMatch(/Automatic choke; settings choke-cover-index; work/);
    expect(line('cover-gasket')[0]).toMatch(/cover gasket: on or off/);
    expect(line('carbon-monoxide')[0]).toMatch(/at least danger/);
    expect(line('throttle-bore')[0]).toMatch(/length; usual 1\/2 in to 4 in/);
  });

  test('breaks its lines on a terminal', async () => {
    const { out } = await gaugeleaf(['kind', 'carburetor'], {
      cwd: root,
      tty: true,
      env: { NO_COLOR: '1' },
    });
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  test('refuses what no kind knows, and lists what is like it', async () => {
    const strange = await gaugeleaf(['kind', 'carburetor', 'flaot level'], { cwd: root });
    expect([strange.status, strange.out]).toEqual([2, '']);
    expect(strange.err).toContain('perhaps float-level');
    expect(strange.err).toContain('gaugeleaf kind carburetor lists all');
    const kind = await gaugeleaf(['kind', 'carburettor'], { cwd: root });
    expect(kind.err).toContain('perhaps carburetor was meant');
  });
});
