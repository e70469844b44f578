import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { gaugeleaf } from '../cli/console.ts';
import type { Mistake } from './facts-trial.ts';

/** One list of readings and what follows from it, as it was worked apart from the program. */
export interface Sum {
  readonly sheet: string;
  readonly source: string;
  readonly setting: string;
  readonly n: number;
  readonly mean: string;
  readonly 'mean-printed': string;
  readonly s?: number;
  readonly u?: number;
  readonly mean95?: readonly [number, number];
  readonly G?: number;
  readonly outlier?: boolean;
  readonly 'outlier-reading'?: number;
  readonly 'tolerance90-95'?: readonly [number, number];
  readonly 'limits-hold'?: boolean;
  readonly 'printed-within'?: boolean;
  readonly 'only-range'?: boolean;
}

export interface Factors {
  readonly n: number;
  readonly t: number;
  readonly 'G-critical'?: number;
  readonly k: number;
  readonly 'k-howe': number;
}

export const folder = fileURLToPath(new URL('./measured/', import.meta.url));

export const worked = parse(readFileSync(join(folder, 'sums.yaml'), 'utf8')) as {
  readonly factors: readonly Factors[];
  readonly sums: readonly Sum[];
};

/** One planted mistake of the edition, and what `check` said at its line; null where it was silent. */
export interface EditionOutcome {
  readonly mistake: Mistake;
  readonly said: readonly string[];
  readonly graveEnough: boolean;
}

interface Told {
  readonly check: string;
  readonly severity: 'error' | 'warning' | 'note';
  readonly line: number;
  readonly message: string;
}

const ranks = { note: 0, warning: 1, error: 2 } as const;

/** Runs `check` on the trial's folder with each mistake of its edition by itself. */
export async function runEditionTrial(): Promise<readonly EditionOutcome[]> {
  const list = parse(
    readFileSync(join(folder, 'mistakes', 'edition.yaml'), 'utf8'),
  ) as readonly Mistake[];
  const text = readFileSync(join(folder, 'edition.yaml'), 'utf8');
  const before = (await checkedWith(text)).map(({ check, message }) => `${check} ${message}`);
  const outcomes: EditionOutcome[] = [];
  for (const mistake of list) {
    const altered = mistake.edit.reduce((whole, { from, to }) => {
      if (whole.split(from).length !== 2) throw new Error(`edition: ${mistake.name}: ${from}`);
      return whole.replace(from, to);
    }, text);
    const line = altered.slice(0, altered.indexOf(String(mistake.at))).split('\n').length;
    const fresh = (await checkedWith(altered)).filter(
      (one) => one.line === line && !before.includes(`${one.check} ${one.message}`),
    );
    outcomes.push({
      mistake,
      said: fresh.map(({ check, severity, message }) => `${severity} ${check}: ${message}`),
      graveEnough: fresh.some(({ severity }) => ranks[severity] >= ranks[mistake.severity]),
    });
  }
  return outcomes;
}

async function checkedWith(edition: string): Promise<readonly Told[]> {
  const copy = mkdtempSync(join(tmpdir(), 'gaugeleaf-trial-'));
  try {
    cpSync(join(folder, 'sheets'), join(copy, 'sheets'), { recursive: true });
    writeFileSync(join(copy, 'edition.yaml'), edition);
    const { out } = await gaugeleaf(['check', '--format', 'json', '--no-cache'], { cwd: copy });
    const { findings } = JSON.parse(out) as { findings: (Told & { file: string })[] };
    return findings.filter(({ file }) => file === 'edition.yaml');
  } finally {
    rmSync(copy, { recursive: true, force: true });
  }
}

/** What differs between the trial's sums and what `measured --json` says; empty where all is alike. */
export async function runSums(): Promise<readonly string[]> {
  const faults: string[] = [];
  for (const sheet of new Set(worked.sums.map((each) => each.sheet))) {
    const { out, err } = await gaugeleaf(['measured', sheet, '--json'], { cwd: folder });
    let said: readonly Entry[] = [];
    try {
      said = (JSON.parse(out) as { settings: Entry[] }).settings;
    } catch {
      faults.push(`${sheet}: no JSON: ${err.slice(0, 80)}`);
    }
    for (const sum of worked.sums.filter((each) => each.sheet === sheet)) {
      const entry = said.find((one) => one.setting === sum.setting && one.source === sum.source);
      faults.push(...differences(sum, entry).map((fault) => `${sheet} ${sum.setting}: ${fault}`));
    }
  }
  return faults;
}

interface Entry {
  readonly source: string;
  readonly setting: string;
  readonly n: number;
  readonly meanExact: string;
  readonly mean: string;
  readonly deviation: number | null;
  readonly uncertainty: number | null;
  readonly mean95: { readonly low: number; readonly high: number } | null;
  readonly grubbs: {
    readonly g: number;
    readonly critical: number;
    readonly outlier: string | null;
  } | null;
  readonly tolerance: {
    readonly low: number;
    readonly high: number;
    readonly held: boolean | null;
  } | null;
  readonly printed: { readonly within: boolean | null } | null;
}

function differences(sum: Sum, entry: Entry | undefined): string[] {
  if (entry === undefined) return ['not worked'];
  const faults: string[] = [];
  const expect = (name: string, mine: unknown, theirs: unknown) => {
    const alike =
      typeof mine === 'number' && typeof theirs === 'number'
        ? Math.abs(mine - theirs) <= 2e-7 * Math.max(Math.abs(mine), Math.abs(theirs))
        : mine === theirs;
    if (!alike) faults.push(`${name} ${theirs}, and the trial has ${mine}`);
  };
  expect('n', sum.n, entry.n);
  expect('mean', sum.mean, entry.meanExact);
  expect('mean printed', sum['mean-printed'], /^[\d.]+/.exec(entry.mean)?.[0]);
  if (sum['only-range'] === true) {
    expect('deviation', null, entry.deviation);
    return faults;
  }
  expect('s', sum.s, entry.deviation);
  expect('u', sum.u, entry.uncertainty);
  expect('mean from', sum.mean95?.[0], entry.mean95?.low);
  expect('mean to', sum.mean95?.[1], entry.mean95?.high);
  // At three readings the test is nearly blind, and it is not made.
  if (sum.n > 3) {
    expect('G', sum.G, entry.grubbs?.g);
    expect('outlier', sum.outlier, entry.grubbs?.outlier !== null);
  }
  expect('units from', sum['tolerance90-95']?.[0], entry.tolerance?.low);
  expect('units to', sum['tolerance90-95']?.[1], entry.tolerance?.high);
  expect('limits hold', sum['limits-hold'] ?? null, entry.tolerance?.held ?? null);
  if (sum['printed-within'] !== undefined)
    expect('printed within', sum['printed-within'], entry.printed?.within);
  return faults;
}
