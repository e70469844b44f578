import { basename, join, resolve } from 'node:path';
import { type OperationDrawing, rankedDrawings } from '../../press/drawings/index.ts';
import { Projects, Refusal, sheetNamed, writeWhole } from '../../project/index.ts';
import type { Operation } from '../../sheet/model.ts';
import { nearestName } from '../../text/index.ts';
import { type Io, say } from '../io.ts';
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
  const { kind } = sheet;
  const named = sheet.operations.filter(({ known }) => known !== null);
  const chosen =
    wanted === undefined
      ? named
      : operationsNamed(wanted, named, (text) => kind?.operationNamed(text)?.name ?? null);
  const files = new Map<string, OperationDrawing>();
  const id = basename(path).replace(/\.md$/i, '');
  for (const drawing of rankedDrawings(sheet, { prefix: 'drawing', alone: true })) {
    const { known } = drawing.operation;
    if (!chosen.some((operation) => operation.known?.name === known?.name)) continue;
    files.set(`${id}-${known?.name}-${drawing.shows}.svg`, drawing);
  }
  if (files.size === 0) {
    throw new Refusal(
      `${sheet.file} has nothing to draw${wanted === undefined ? '' : ` for ${wanted}`}`,
      'a drawing needs its sizes as numbers, and beside them where and how they are measured (`at`, first of all)',
    );
  }
  const folder =
    options.out === undefined ? join(project.root, 'print') : resolve(io.cwd, options.out);
  for (const [file, { svg }] of files) {
    const out = join(folder, file);
    writeWhole(out, svg);
    io.stdout.write(`${project.show(out)}\n`);
  }
  const many = files.size === 1 ? '1 drawing' : `${files.size} drawings`;
  say(io, `${many}, each to be printed at its own size: its lettering is as small as it may be.`);
  return 0;
}

function operationsNamed(
  wanted: string,
  operations: readonly Operation[],
  nameOf: (text: string) => string | null,
): readonly Operation[] {
  const name = nameOf(wanted) ?? wanted;
  const found = operations.filter(({ known }) => known?.name === name);
  if (found.length > 0) return found;
  const names = operations.flatMap(({ known }) => known?.name ?? []);
  const near = nearestName(wanted, names);
  throw new Refusal(
    `the sheet has no operation ${wanted}`,
    near === null ? `it has ${[...new Set(names)].join(', ')}` : `did you mean ${near}?`,
  );
}
