import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gaugeleaf, type Outcome } from '../../cli/console.ts';
import { patience, shameful, turning } from '../shameful.ts';
import type { Target } from './project.ts';

/** A case that the program did not stand: what was run and what was wrong with it. */
export class Fault extends Error {}

/** A sign that a terminal would obey; line ends of tables are data. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for.
const obeyed = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f]/;

async function plainly(cwd: string, ...argv: readonly string[]): Promise<Outcome> {
  const started = process.cpuUsage();
  let outcome: Outcome;
  try {
    // A table is data to a program, and to a terminal text: as such it is looked at.
    outcome = await gaugeleaf(argv, { cwd, tty: argv.includes('csv') });
  } catch (error) {
    throw new Fault(`${argv.join(' ')} threw ${error instanceof Error ? error.stack : error}`);
  }
  const { user, system } = process.cpuUsage(started);
  const ms = (user + system) / 1000;
  if (ms > patience) throw new Fault(`${argv.join(' ')} took ${Math.round(ms)} ms`);
  if (![0, 1, 2].includes(outcome.status))
    throw new Fault(`${argv.join(' ')} ended in ${outcome.status}`);
  const said = outcome.out + outcome.err;
  const data = /json|sarif|csv|package/.test(argv.join(' '));
  for (const shame of [...shameful, obeyed, ...(data ? [] : [turning])]) {
    const found = shame.exec(said);
    if (found) {
      const around = said.slice(Math.max(0, found.index - 200), found.index + 200);
      throw new Fault(`${argv.join(' ')} wrote ${shame}: ${JSON.stringify(around)}`);
    }
  }
  return outcome;
}

interface Verdict {
  readonly findings: readonly {
    readonly name: string;
    readonly severity: string;
    readonly edits?: unknown;
  }[];
  readonly refused?: unknown;
}

async function verdict(
  cwd: string,
): Promise<{ readonly out: string; readonly verdict: Verdict; readonly status: number }> {
  const { out, status } = await plainly(cwd, 'check', '--format', 'json');
  try {
    return { out, status, verdict: JSON.parse(out) };
  } catch {
    if (status === 2 && out === '') return { out, status, verdict: { findings: [] } };
    throw new Fault(`check --format json wrote no JSON: ${out.slice(0, 200)}`);
  }
}

function errors({ findings }: Verdict): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { name, severity } of findings) {
    if (severity === 'error') counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return counts;
}

/** `--fix` brings no error that was not there, ends where it ends, and mends a second time nothing. */
async function fixed(cwd: string, { name }: Target, before: Verdict): Promise<void> {
  if (!before.findings.some(({ edits }) => edits !== undefined)) return;
  await plainly(cwd, 'check', '--fix');
  const once = readFileSync(join(cwd, name));
  const after = await verdict(cwd);
  const had = errors(before);
  for (const [id, count] of errors(after.verdict)) {
    const more = count - (had.get(id) ?? 0);
    if (more > 0) throw new Fault(`--fix brought ${more} ${id}`);
  }
  await plainly(cwd, 'check', '--fix');
  if (!once.equals(readFileSync(join(cwd, name)))) throw new Fault('--fix twice is not once');
}

/** Runs what reads such a file. Fails with a `Fault` for what no file may do to the program. */
export async function tried(cwd: string, target: Target, pick: number): Promise<void> {
  const first = await verdict(cwd);
  const again = await verdict(cwd);
  if (first.out !== again.out) throw new Fault('check says two things of one file');
  const format = ['text', 'sarif', 'github'][pick % 3] ?? 'text';
  const other = await plainly(cwd, 'check', '--format', format);
  if (other.status !== first.status)
    throw new Fault(`check ends in ${first.status}, and as ${format} in ${other.status}`);
  const { name } = target;
  if (target.sort === 'sheet') {
    const more = [
      ['order', name, '--text'],
      ['order', name, '--out', '-'],
      ['work', name, '--full'],
      ['sources', name, '--all'],
      ['export', '--format', 'csv'],
      ['export', '--format', 'json'],
      ['check', '--trace', name],
      ['draw', name, '--out', 'drawn/'],
      ['record', name, '--out', '-'],
      ['pages', '--proof', '--out', 'pages'],
    ];
    await plainly(cwd, ...(more[pick % more.length] ?? []));
    await fixed(cwd, target, first.verdict);
  } else if (target.sort === 'record') {
    await plainly(cwd, 'record', name);
    await plainly(cwd, 'record', name, '--json');
  } else if (target.sort === 'list') {
    await plainly(
      cwd,
      'draft',
      '--from',
      name,
      '--yes',
      '--kind',
      'carburetor',
      '--date',
      '2026-10-03',
    );
    await verdict(cwd);
  } else {
    await plainly(cwd, 'pages', '--proof', '--out', 'pages');
    await plainly(cwd, 'export', '--format', 'json');
  }
}
