import { basename, join, resolve } from 'node:path';
import { examineText, longestText, openProject, Refusal } from '../project/index.ts';
import { placeSheet, stoppers } from '../report/index.ts';
import type { CheckOptions } from './commands/check.ts';
import { printerFor } from './findings-printer.ts';
import type { Io } from './io.ts';
import type { ExitStatus } from './run.ts';

/**
 * `gaugeleaf check -`: what standard input holds, as if it stood in the file that `--as` names; without one, in
 * a sheet of the project under the name that it gives itself. Nothing is looked at across sheets.
 */
export async function checkStdin(
  paths: readonly string[],
  options: CheckOptions & { readonly as?: string },
  io: Io,
): Promise<ExitStatus> {
  if (paths.length > 1)
    throw new Refusal('- is standard input, and goes with no other name', 'check the others apart');
  if (options.fix === true || options.trace === true)
    throw new Refusal('standard input is only checked', 'write it into a file for the rest');
  const text = await allOf(io);
  const project = openProject(io.cwd, io.cwd);
  const path = resolve(io.cwd, options.as ?? join(project.root, 'sheets', `${nameIn(text)}.md`));
  const { sheet, findings } = examineText(project, path, project.show(path), text);
  const printer = printerFor(options.format, io, options);
  for (const report of placeSheet(sheet, findings)) printer.add(report);
  printer.end(1, 0, { figures: 0, twice: 0 });
  return stoppers(findings, sheet.status?.value ?? null).length > 0 ? 1 : 0;
}

/** The name that a sheet gives itself; `standard-input` for none that could be a file's. */
function nameIn(text: string): string {
  const name = /^sheet:[ \t]*["']?([^\s"']+)/m.exec(text)?.[1] ?? '';
  return name !== '' && basename(name) === name ? name : 'standard-input';
}

async function allOf(io: Io): Promise<string> {
  const parts: Buffer[] = [];
  let bytes = 0;
  for await (const part of io.stdin) {
    const buffer = Buffer.from(part);
    bytes += buffer.length;
    if (bytes > longestText) {
      throw new Refusal(
        `standard input has more than ${longestText} bytes, and is read no further`,
        'split it, or take out what is no sheet',
      );
    }
    parts.push(buffer);
  }
  return Buffer.concat(parts).toString('utf8');
}
