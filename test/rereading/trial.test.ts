import { cpSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { gaugeleaf } from '../cli/console.ts';

/** A printed page typed twice by people who have not read the program, and what it ought to say of it. */
const trial = join(import.meta.dirname, '..', 'trial', 'rereading');
const [right, wrong, datum] = parse(readFileSync(join(trial, 'verdicts.yaml'), 'utf8'));
const folders: string[] = [];

function club(edit: (folder: string) => void = () => {}): string {
  const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-trial-'));
  folders.push(folder);
  cpSync(trial, folder, { recursive: true });
  renameSync(join(folder, 'readings'), join(folder, 'sheets', 'readings'));
  edit(folder);
  return folder;
}

function alter(path: string, from: string, to: string): void {
  const text = readFileSync(path, 'utf8');
  expect(text).toContain(from);
  writeFileSync(path, text.replace(from, to));
}

async function compared(file: string, cwd: string) {
  const { status, out } = await gaugeleaf(['reread', join('sheets', file), '--json'], { cwd });
  return { status, told: JSON.parse(out) };
}

interface Wanted {
  readonly setting: string;
  readonly place?: string;
  readonly verdict: string;
  readonly bears?: string;
  readonly either?: true;
}

const verdicts: Readonly<Record<string, string>> = {
  same: 'same',
  'same-otherwise': 'same, written otherwise',
  differs: 'differs',
  'not-on-that-page': 'not on that page',
};

describe.each([right, wrong])('$file', ({ file, exit, figures, found, 'sheet-edit': edits }) => {
  it('is told as it ought to be', async () => {
    const cwd = club((folder) => {
      for (const { from, to } of edits ?? []) {
        alter(join(folder, 'sheets/tolland-k77-averick-eight.md'), from, to);
      }
    });
    const { status, told } = await compared(file, cwd);
    expect(status).toBe(exit);
    for (const { setting, place, verdict, bears, either } of figures as Wanted[]) {
      const figure = told.figures.find((each: { setting: string }) => each.setting === setting);
      const key = place === undefined ? 'value' : `places/${place}`;
      const part = figure.parts.find((each: { key: string }) => each.key === key);
      // The words beside a figure count with it.
      const whole = place === undefined && figure.parts.length > 1 ? figure.verdict : part.verdict;
      const said = whole === 'same, written otherwise' ? part.verdict : whole;
      if (either !== true)
        expect([setting, place, said]).toEqual([setting, place, verdicts[verdict]]);
      if (bears === undefined) continue;
      const sides = new Set(part.witnesses.map(({ backs }: { backs: string }) => backs));
      expect([setting, ...sides]).toEqual(bears === 'neither' ? [setting] : [setting, bears]);
    }
    const values = (list: readonly { value: string }[]) => list.map(({ value }) => value);
    expect(values(told.found)).toEqual(values(found));
  });
});

describe('the datum alone', () => {
  it.each<{ setting: string; from: string; to: string }>(datum['datum-edits'].edits)(
    '$setting: $to',
    async ({ setting, from, to }) => {
      const file = 'readings/tolland-k77-averick-eight.w51.yaml';
      const cwd = club((folder) => {
        const path = join(folder, 'sheets', file);
        const text = readFileSync(path, 'utf8');
        const start = text.indexOf(`    ${setting}:`);
        expect(start).toBeGreaterThan(0);
        const head = text.slice(0, start);
        const tail = text.slice(start);
        expect(tail).toContain(from);
        writeFileSync(path, head + tail.replace(from, to));
      });
      const { status, told } = await compared(file, cwd);
      expect(status).toBe(1);
      const apart = told.figures.filter(
        ({ verdict }: { verdict: string }) => verdict === 'differs',
      );
      expect(apart.map((each: { setting: string }) => each.setting)).toEqual([setting]);
    },
  );
});

afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true });
});
