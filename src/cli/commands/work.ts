import { Projects, Refusal, sheetNamed } from '../../project/index.ts';
import { isWrong, workedNumbers, workTable } from '../../relations/index.ts';
import { workText } from '../../report/index.ts';
import { jsonText } from '../../text/index.ts';
import { type Io, say, widthOf } from '../io.ts';
import { candidate } from '../printing.ts';
import type { ExitStatus } from '../run.ts';

export interface WorkOptions {
  /** Also source, assumptions and range, and what keeps a relation from being worked. */
  readonly full?: boolean;
  readonly json?: boolean;
}

/** Columns of a table that goes into a pipe. */
const PIPED_WIDTH = 80;

/**
 * `gaugeleaf work`: every relation that a sheet says anything of, with formula, inputs and result. 1
 * where a stated figure disagrees or a relation cannot be.
 */
export async function work(name: string, options: WorkOptions, io: Io): Promise<ExitStatus> {
  const { project, path } = sheetNamed(name, new Projects(io.cwd), io.cwd);
  const found = candidate(project, path, io);
  if (found === null) return 2;
  const { sheet } = found;
  const { kind } = sheet;
  if (kind === null) {
    throw new Refusal(
      `${sheet.file} does not say a kind of unit that is known, and the relations come from the kind`,
      `say \`kind:\` under \`unit:\`: ${[...project.kinds.keys()].join(', ')}`,
    );
  }
  const entries = workTable(workedNumbers(sheet, project.context(found.path)));
  if (options.json === true) {
    io.stdout.write(`${jsonText({ sheet: sheet.file, relations: entries })}\n`);
  } else if (entries.length === 0) {
    say(io, `${sheet.file} states nothing that a relation of the kind ${kind.name} could work`);
  } else {
    const width = widthOf(io.stdout) ?? PIPED_WIDTH;
    io.stdout.write(workText(entries, { full: options.full === true, width }));
  }
  return entries.some(isWrong) ? 1 : 0;
}
