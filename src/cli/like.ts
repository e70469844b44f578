import { Projects, Refusal, sheetNamed, type Target } from '../project/index.ts';
import { likenesses, workedNumbers } from '../relations/index.ts';
import { likeText } from '../report/index.ts';
import { jsonText } from '../text/index.ts';
import { type Io, widthOf } from './io.ts';
import { candidate } from './printing.ts';
import type { ExitStatus } from './run.ts';

/** Columns of a table that goes into a pipe. */
const PIPED_WIDTH = 80;

/**
 * `gaugeleaf work SHEET --like OTHER`: the throttles of two sheets at one gap, and the gap that opens
 * the other by the same area. Fails with `Refusal` where a sheet has no bore, or the first no gap.
 */
export async function like(
  name: string,
  otherName: string,
  options: { readonly json?: boolean },
  io: Io,
): Promise<ExitStatus> {
  const projects = new Projects(io.cwd);
  const own = numbersOf(sheetNamed(name, projects, io.cwd), io);
  const other = numbersOf(sheetNamed(otherName, projects, io.cwd), io);
  if (!own || !other) return 2;
  const found = likenesses(own.numbers, other.numbers);
  if (found.length === 0) {
    throw new Refusal(
      `${own.file} and ${other.file} cannot be compared: the first has to state a gap at its throttle and its bore, the other its bore`,
      'state the bore, and better the shaft as well, under `unit:` of both sheets',
    );
  }
  if (options.json === true) {
    io.stdout.write(`${jsonText({ sheet: own.file, like: other.file, throttles: found })}\n`);
  } else {
    io.stdout.write(likeText(found, other.file, widthOf(io.stdout) ?? PIPED_WIDTH));
  }
  return found.some(({ refusals }) => refusals.length > 0) ? 1 : 0;
}

function numbersOf({ project, path }: Target, io: Io) {
  const found = candidate(project, path, io);
  if (!found) return null;
  const { sheet } = found;
  return { file: sheet.file, numbers: workedNumbers(sheet, project.context(found.path)) };
}
