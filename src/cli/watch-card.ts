import { readFileSync, realpathSync } from 'node:fs';
import { Projects, Refusal, sheetNamed } from '../project/index.ts';
import { type CardPrintOptions, card } from './commands/card.ts';
import type { Io } from './io.ts';
import { browserFor } from './printing.ts';
import { startProgress } from './progress.ts';
import type { ExitStatus } from './run.ts';
import { atEachSave } from './watch-rounds.ts';
import { type Changes, WatchedFiles } from './watched-files.ts';

/**
 * `gaugeleaf card --watch`: prints, and again at each save the cards that it may alter, all in one browser
 * that is kept. Ends when the user ends it, with the status of the last print.
 */
export async function watchCard(
  names: readonly string[],
  options: CardPrintOptions,
  io: Io,
): Promise<ExitStatus> {
  if (options.out === '-')
    throw new Refusal('--watch prints into a file, not to standard output', 'name one with --out');
  const projects = new Projects(io.cwd);
  const targets = names.map((name) => sheetNamed(name, projects, io.cwd));
  const paths = new Map(
    targets.map(({ path }, index) => [realpathSync(path), names[index] ?? path]),
  );
  const progress = startProgress(io);
  const found = await browserFor(options, io, progress);
  progress.clear();
  const { keepBrowser } = await import('../press/index.ts');
  const close = keepBrowser(found);
  try {
    return await atEachSave(
      new WatchedFiles(
        projects.opened,
        targets.map(({ path }) => path),
      ),
      (changes) => card(altered(changes, paths), { ...options, found }, io),
      projects.of(io.cwd).show,
      io,
    );
  } finally {
    await close();
  }
}

/** Names of the cards that a save may alter: the saved sheets, and what may be based on them; else all. */
function altered({ paths, moved }: Changes, cards: ReadonlyMap<string, string>): readonly string[] {
  if (moved || paths.some((path) => !cards.has(path))) return [...cards.values()];
  return [...cards].flatMap(([path, name]) =>
    paths.includes(path) || isBased(path) ? [name] : [],
  );
}

function isBased(path: string): boolean {
  try {
    return /^based-on:/m.test(readFileSync(path, 'utf8'));
  } catch {
    return true;
  }
}
