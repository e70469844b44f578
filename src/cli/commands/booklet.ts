import { join, resolve } from 'node:path';
import type { LastEdition } from '../../press/index.ts';
import { browserCache } from '../../project/browser/index.ts';
import { flate, lastEdition, Projects, partFolder, readTemplates } from '../../project/index.ts';
import { editionCandidates } from '../edition-candidates.ts';
import {
  deliverImposed,
  type ImposeOptions,
  imposeBooklet,
  imposedPath,
  impositionOf,
} from '../imposition.ts';
import type { Io } from '../io.ts';
import { outlet } from '../outlet.ts';
import { browserFor, deliver, type PrintOptions, pictureSource } from '../printing.ts';
import type { ExitStatus } from '../run.ts';

/**
 * `gaugeleaf booklet`: the edition of a project, its sheets in the order of `edition.yaml`; beside it,
 * if asked for, its pages on sheets to fold. 1 where findings stop the press; then nothing is printed.
 */
export async function booklet(
  folder: string | undefined,
  options: PrintOptions & ImposeOptions & { readonly only?: readonly string[] },
  io: Io,
): Promise<ExitStatus> {
  const fold = impositionOf(options);
  const project = new Projects(io.cwd).of(resolve(io.cwd, folder ?? '.'));
  const store =
    options.cache === false
      ? null
      : partFolder(join(browserCache(io.env, process.platform), 'parts'));
  const proof = options.proof === true;
  const found = await editionCandidates(
    project,
    { what: 'a booklet', proof, store, only: options.only },
    io,
  );
  if (typeof found === 'number') return found;
  const { edition, sheets, progress } = found;
  const paper = options.paper ?? edition.paper ?? 'half-letter';
  const { printBooklet } = await import('../../press/index.ts');
  const printed = await printBooklet({
    sheets,
    edition: edition.facts,
    orderGraphs: edition.orderGraphs,
    last: lastOf(lastEdition(project, edition, sheets), options.only !== undefined),
    paper,
    templates: readTemplates(project.root),
    picture: pictureSource(project, sheets),
    browser: await browserFor(options, io, progress),
    draft: proof,
    flate,
    store,
    onProgress: (message) => progress.show(message),
  });
  store?.tidy();
  if (fold !== null) progress.show('Laying the pages on sheets');
  const { title } = edition.facts;
  const imposed =
    fold === null ? null : await imposeBooklet(printed.plain(), fold, { title, paper });
  progress.clear();
  const out = outlet(
    options.out,
    `booklet${options.only === undefined ? '' : `-${options.only.join('-')}`}${proof ? '-proof' : ''}.pdf`,
    project,
    io,
  );
  // Standard output takes one file: the sheets, where they were asked for.
  const first = out.path === null && imposed !== null ? { ...printed, pdf: imposed.pdf } : printed;
  if (!deliver(first, out, proof, project.show, io)) return 1;
  if (fold !== null && imposed !== null) {
    const beside = { ...out, path: out.path === null ? null : imposedPath(out.path) };
    await deliverImposed(imposed, fold, beside, project.show, io);
  }
  return 0;
}

/** What changed; of a booklet of some sheets alone, the others are not left out of the edition. */
function lastOf(last: LastEdition | null, isPart: boolean): LastEdition | null {
  if (last === null || !isPart) return last;
  const { changes } = last;
  const sheets = changes.sheets.filter(({ changes: [first] }) => first?.kind !== 'sheet-dropped');
  return { ...last, changes: { ...changes, sheets } };
}
