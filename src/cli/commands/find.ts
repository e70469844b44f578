import { gaugeBook } from '../../gauges/index.ts';
import { Projects, projectSheets, Refusal, targetsOf } from '../../project/index.ts';
import { findIn, foundText, queryOf, withinFrom } from '../../report/find/index.ts';
import { paint } from '../../report/index.ts';
import { type Io, say, usesColor, widthOf } from '../io.ts';
import type { ExitStatus } from '../run.ts';

export interface FindOptions {
  readonly within?: string;
  readonly json?: boolean;
}

/**
 * `gaugeleaf find`: where the sheets of the project say a size, in any notation and nearly, or words. 1
 * where nothing is found.
 */
export async function find(
  what: readonly string[],
  options: FindOptions,
  io: Io,
): Promise<ExitStatus> {
  const gauges = gaugeBook();
  const text = what.join(' ').trim();
  if (text === '')
    throw new Refusal('nothing was said to look for', 'for example: gaugeleaf find "13/64 in"');
  const within = options.within === undefined ? null : withinFrom(options.within, gauges);
  if (options.within !== undefined && within === null) {
    throw new Refusal(
      `--within ${options.within} says no distance`,
      'write a size or a percentage, such as "0.002 in" or "1 %"',
    );
  }
  const projects = new Projects(io.cwd);
  // Told as everywhere, where the folder has no sheets.
  targetsOf([], projects, io.cwd);
  const sheets = projectSheets(projects.of(io.cwd)).map(({ sheet }) => sheet);
  const found = findIn(sheets, queryOf(text, gauges, within), gauges);
  if (options.json === true)
    io.stdout.write(`${JSON.stringify({ query: text, found }, null, 2)}\n`);
  else if (found.length > 0) {
    const ink = paint(usesColor(io, io.stdout));
    io.stdout.write(foundText(found, { ink, width: widthOf(io.stdout) }));
  } else say(io, `gaugeleaf: ${text} is found in none of ${sheets.length} sheets`);
  return found.length > 0 ? 0 : 1;
}
