import type { Command } from 'commander';
import type { Io } from '../../src/cli/io.ts';
import { candidate } from '../../src/cli/printing.ts';
import type { ExitStatus } from '../../src/cli/run.ts';
import { Projects, sheetNamed } from '../../src/project/index.ts';

/** `gaugeleaf settings`: the settings of a sheet as written, in its own order. */
export async function settings(name: string, io: Io): Promise<ExitStatus> {
  const { project, path } = sheetNamed(name, new Projects(io.cwd), io.cwd);
  const found = candidate(project, path, io);
  if (found === null) return 2;
  for (const { id, value } of found.sheet.settings.values()) {
    io.stdout.write(`${id}: ${value?.text ?? 'several statements'}\n`);
  }
  return 0;
}

/** What goes into `buildProgram`; there it loads the command's own file only when it is called. */
export function addSettings(program: Command, io: Io, done: (status: ExitStatus) => void): void {
  program
    .command('settings')
    .description('the settings of a sheet as written')
    .argument('<sheet>', 'a sheet, by path or by name')
    .action(async (name: string) => {
      done(await settings(name, io));
    });
}
