import { join, resolve } from 'node:path';
import {
  isFolder,
  Projects,
  projectSheets,
  projectSnapshot,
  targetsOf,
  writeWhole,
} from '../../project/index.ts';
import { exportRows, toCsv, toData, toDataPackage } from '../../report/export/index.ts';
import { asciiName } from '../../text/index.ts';
import { hand, type Io } from '../io.ts';
import { trusted } from '../outlet.ts';
import type { ExitStatus } from '../run.ts';

export interface ExportOptions {
  readonly format: 'csv' | 'json' | 'package';
  readonly out?: string;
}

const files = { csv: 'settings.csv', json: 'edition.json', package: 'datapackage.json' } as const;

/**
 * `gaugeleaf export`: every setting of an edition with its written form, exact value, limits,
 * equivalents and source. `package` writes table, data file and table metadata into a folder.
 */
export async function exportSettings(options: ExportOptions, io: Io): Promise<ExitStatus> {
  const projects = new Projects(io.cwd);
  const project = projects.of(io.cwd);
  // Told as everywhere, where the folder has no sheets.
  targetsOf([], projects, io.cwd);
  const sheets = projectSheets(project);
  const snapshot = projectSnapshot(project, sheets);
  const rows = exportRows(sheets);
  if (options.format === 'package') {
    const folder =
      options.out === undefined
        ? join(project.root, 'print', 'data')
        : resolve(io.cwd, options.out);
    const within = trusted(options.out, project, io);
    const name = asciiName(snapshot.title ?? '') || 'adjustment-sheets';
    writeWhole(join(folder, files.csv), toCsv(rows), { within });
    writeWhole(join(folder, files.json), toData(snapshot, rows), { within });
    writeWhole(join(folder, files.package), toDataPackage(name, snapshot, files.csv), { within });
    for (const file of Object.values(files))
      io.stdout.write(`${project.show(join(folder, file))}\n`);
    return 0;
  }
  const text = options.format === 'csv' ? toCsv(rows) : toData(snapshot, rows);
  if (options.out === undefined || options.out === '-') {
    hand(io, text);
    return 0;
  }
  const out = resolve(io.cwd, options.out);
  const path = /[\\/]$/.test(options.out) || isFolder(out) ? join(out, files[options.format]) : out;
  writeWhole(path, text, { within: out });
  io.stdout.write(`${project.show(path)}\n`);
  return 0;
}
