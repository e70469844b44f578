import { join, resolve } from 'node:path';
import { Projects, Refusal, readTemplates, writePages } from '../../project/index.ts';
import { editionCandidates } from '../edition-candidates.ts';
import { type Io, say } from '../io.ts';
import { pictureSource } from '../printing.ts';
import type { ExitStatus } from '../run.ts';

export interface PagesOptions {
  /** A folder; `print/pages` of the project without it. */
  readonly out?: string;
  readonly proof?: boolean;
}

/**
 * `gaugeleaf pages`: the edition of a project as pages for a club's site, HTML without a script. 1
 * where findings stop the press; then nothing is written.
 */
export async function pages(
  folder: string | undefined,
  options: PagesOptions,
  io: Io,
): Promise<ExitStatus> {
  if (options.out === '-') {
    throw new Refusal(
      'pages are many files, and standard output takes one',
      'name a folder: gaugeleaf pages --out site',
    );
  }
  const project = new Projects(io.cwd).of(resolve(io.cwd, folder ?? '.'));
  const proof = options.proof === true;
  const found = await editionCandidates(
    project,
    { what: 'a set of pages', proof, store: null },
    io,
  );
  if (typeof found === 'number') return found;
  const { edition, sheets, progress } = found;
  const { siteFiles } = await import('../../press/site/index.ts');
  const files = await siteFiles({
    sheets,
    edition: edition.facts,
    templates: readTemplates(project.root),
    picture: pictureSource(project, sheets),
    draft: proof,
    onProgress: (message) => progress.show(message),
  });
  progress.show('Writing the pages');
  const name = proof ? 'pages-proof' : 'pages';
  const into =
    options.out === undefined ? join(project.root, 'print', name) : resolve(io.cwd, options.out);
  const { removed, left } = writePages(
    into,
    files,
    options.out === undefined ? project.root : into,
  );
  progress.clear();
  io.stdout.write(`${project.show(join(into, 'index.html'))}\n`);
  const count = files.filter(({ path }) => path.endsWith('.html')).length;
  say(io, `${count} pages${proof ? ', a proof with DRAFT on every page' : ''}`);
  if (removed.length > 0) say(io, `taken away, no longer in the edition: ${removed.join(', ')}`);
  if (left.length > 0) {
    say(io, `no longer in the edition, but changed by hand and left: ${left.join(', ')}`);
  }
  return 0;
}
