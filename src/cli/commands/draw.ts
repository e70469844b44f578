import { join, resolve } from 'node:path';
import { wantedDrawings } from '../../press/drawings/index.ts';
import { withFonts } from '../../press/html/index.ts';
import { fileId, Projects, readTemplates, sheetNamed, writeWhole } from '../../project/index.ts';
import { chosen } from '../chosen.ts';
import { type Io, say } from '../io.ts';
import { trusted } from '../outlet.ts';
import { candidate } from '../printing.ts';
import type { ExitStatus } from '../run.ts';

export interface DrawOptions {
  /** The folder that the drawings go to; `print/` of the project where absent. */
  readonly out?: string;
}

/**
 * `gaugeleaf draw`: the line drawings of a sheet's operations, or of one of them, each as an SVG file
 * of its own; those that the kind ranks first are listed first. Fails with `Refusal` where there is nothing to draw, and says what a drawing needs.
 */
export async function draw(
  name: string,
  wanted: string | undefined,
  options: DrawOptions,
  io: Io,
): Promise<ExitStatus> {
  const { project, path } = sheetNamed(name, new Projects(io.cwd), io.cwd);
  const found = candidate(project, path, io);
  if (found === null) return 2;
  const { sheet } = found;
  const id = fileId(path);
  const files = new Map(
    chosen(wantedDrawings(sheet, wanted ?? null, { prefix: 'drawing', alone: true })).map(
      (drawing) => [`${id}-${drawing.operation.known?.name}-${drawing.shows}.svg`, drawing],
    ),
  );
  const templates = readTemplates(project.root);
  const folder =
    options.out === undefined ? join(project.root, 'print') : resolve(io.cwd, options.out);
  for (const [file, { svg }] of files) {
    const out = join(folder, file);
    writeWhole(out, withFonts(svg, templates), { within: trusted(options.out, project, io) });
    io.stdout.write(`${project.show(out)}\n`);
  }
  const many = files.size === 1 ? '1 drawing' : `${files.size} drawings`;
  say(io, `${many}, each to be printed at its own size: its lettering is as small as it may be.`);
  return 0;
}
