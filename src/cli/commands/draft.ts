import { join, resolve } from 'node:path';
import { draftSheet, freeNeighbors, planDraft, sheetIdOf } from '../../import/index.ts';
import type { Kind } from '../../kinds/model.ts';
import {
  fileId,
  isFolder,
  isTaken,
  openProject,
  Refusal,
  writeWhole,
} from '../../project/index.ts';
import { type DraftAnswers, type DraftOptions, draftAnswers } from '../draft-answers.ts';
import { hand, type Io, say } from '../io.ts';
import { trusted } from '../outlet.ts';
import type { ExitStatus } from '../run.ts';

/** `gaugeleaf draft`: a new sheet, never in place of a file that is there. */
export async function draft(options: DraftOptions, io: Io): Promise<ExitStatus> {
  const date = dateOf(options.date, io);
  if (options.club !== undefined) {
    refuseBesideClub(options);
    const { draftClub } = await import('../draft-club.ts');
    return draftClub(options.club, options, date, io);
  }
  if (options.program !== undefined) {
    throw new Refusal('--program is for a new folder', 'name the folder: --club wexcombe-register');
  }
  if (options.plain !== undefined) {
    throw new Refusal('--plain is for a new folder', 'name the folder: --club wexcombe-register');
  }
  if (options.from !== undefined) {
    const { draftFrom } = await import('../draft-from.ts');
    return draftFrom(options.from, { ...options, date }, io);
  }
  refuseListOptions(options);
  if (options.basedOn !== undefined || options.newKind !== undefined) {
    const { draftBasedOn, draftNewKind } = await import('../draft-more.ts');
    return options.newKind !== undefined
      ? draftNewKind(options.newKind, options.title, io)
      : draftBasedOn(options.basedOn ?? '', { ...options, date }, io);
  }
  if (options.title !== undefined) {
    throw new Refusal(
      '--title is for a variant, a kind or a new folder',
      'give --maker and --model: the title is made of them',
    );
  }
  const project = openProject(io.cwd, io.cwd);
  const answers = await draftAnswers(options, project, io);
  const path = draftPath(options.out, answers, project.root, io);
  if (path !== null && isTaken(path)) {
    throw new Refusal(
      `${project.show(path)} is there already, and a draft never replaces a file`,
      'give another name with --out, or move the old one away',
    );
  }
  const id = path === null ? idOf(answers) : fileId(path);
  if (!/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(id)) {
    throw new Refusal(
      `${id} cannot be the name of a sheet`,
      `small letters, digits and hyphens only, such as ${idOf(answers)}.md`,
    );
  }
  const text = draftSheet({ ...answers, id, date });
  if (path === null) {
    hand(io, text);
    tellFree(answers.kind, answers.features, io);
    return 0;
  }
  writeWhole(path, text, { within: trusted(options.out, project, io) });
  io.stdout.write(`${project.show(path)}\n`);
  say(io, `Now fill in the blanks: gaugeleaf check ${project.show(path)} lists them.`);
  tellFree(answers.kind, answers.features, io);
  return 0;
}

function refuseBesideClub(options: DraftOptions): void {
  const { club: _, date: __, program: ___, title: ____, plain: _____, ...others } = options;
  const [stray] = Object.keys(others);
  if (stray === undefined) return;
  const option = stray === 'dryRun' ? 'dry-run' : stray;
  throw new Refusal(`--${option} means nothing beside --club`, 'give one after the other');
}

/** Options that mean nothing without a list would otherwise be passed over in silence. */
function refuseListOptions(options: DraftOptions): void {
  const stray = (['mapping', 'yes', 'dryRun'] as const).find((key) => options[key] !== undefined);
  if (stray === undefined) return;
  const option = stray === 'dryRun' ? 'dry-run' : stray;
  throw new Refusal(`--${option} is for a list`, 'name the list: --from list.xlsx');
}

/** Which headings may change places, so that nobody takes the draft's order for the only one. */
function tellFree(kind: Kind, features: readonly string[], io: Io): void {
  const pairs = freeNeighbors(planDraft(kind, features)).map((pair) => pair.join(' and '));
  if (pairs.length > 0) say(io, `These neighbors may change places: ${pairs.join('; ')}.`);
}

function idOf({ maker, model }: DraftAnswers): string {
  return sheetIdOf(maker, model);
}

function dateOf(given: string | undefined, io: Io): string {
  const date = given ?? io.today();
  if (!/^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/.test(date)) {
    throw new Refusal(`${date} is no date`, 'write it as year-month-day: 2026-10-03');
  }
  return date;
}

/** Where the sheet goes: `sheets/` of the project unless `--out` says otherwise; null is stdout. */
function draftPath(
  out: string | undefined,
  answers: DraftAnswers,
  root: string,
  io: Io,
): string | null {
  if (out === '-') return null;
  const name = `${idOf(answers)}.md`;
  if (out === undefined) {
    const sheets = join(root, 'sheets');
    return isFolder(sheets) ? join(sheets, name) : resolve(io.cwd, name);
  }
  const path = resolve(io.cwd, out);
  if (/[\\/]$/.test(out) || isFolder(path)) return join(path, name);
  return /\.md$/i.test(path) ? path : `${path}.md`;
}
