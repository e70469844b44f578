import { basename, join, resolve } from 'node:path';
import {
  inListOrder,
  listBounds,
  listedDifferences,
  type Mapping,
  mappedTable,
  namedSheets,
  readList,
  readUnits,
  type SizeTools,
  type Table,
} from '../import/index.ts';
import {
  isFolder,
  isTaken,
  listedSheets,
  openProject,
  Refusal,
  readBounded,
  writeWhole,
} from '../project/index.ts';
import { wireGaugeNamed } from '../quantity/index.ts';
import { differencesText, listSummary, paint, slipsText } from '../report/index.ts';
import type { DraftOptions } from './draft-answers.ts';
import { draftMapping } from './draft-mapping.ts';
import { type Io, say, usesColor, widthOf } from './io.ts';
import { trusted } from './outlet.ts';
import type { ExitStatus } from './run.ts';

/**
 * `gaugeleaf draft --from`: a sheet for every unit of a list. Without a mapping beside the list it
 * proposes one and stops. Sheets that are there are left alone, and what the list says otherwise is
 * told. Ends with 1 where a cell could not be taken.
 */
export async function draftFrom(
  file: string,
  options: DraftOptions & { readonly date: string },
  io: Io,
): Promise<ExitStatus> {
  const path = resolve(io.cwd, file);
  const project = openProject(io.cwd, io.cwd);
  const shown = project.show(path);
  const list = listAt(path, shown);
  for (const sentence of list.settled) say(io, `${shown}: ${sentence}.`);
  const { gauges, wireGauge } = project.context(project.root);
  const swg: SizeTools['swg'] = wireGaugeNamed(wireGauge);
  const tools: SizeTools = { gauges, swg };
  const settled = draftMapping(path, list, options, project, tools, io);
  if (settled === null) return 0;
  const { mapping, kind } = settled;
  const table = checkedTable(list.tables, mapping, shown);
  const { units, slips: unread, passed } = readUnits(table, mapping, kind, tools);
  const { named, slips: doubled } = namedSheets(units);
  const slips = inListOrder([...unread, ...doubled]);
  const tab = table.name === '' ? '' : `, ${table.name}`;
  const title = mapping.source.title ?? `${basename(path)}${tab}`;
  const source = { ...mapping.source, name: 'list', title };

  const folder = sheetsFolder(options.out, project.root, io);
  const within = trusted(options.out, project, io);
  const order = { kind, source, date: options.date };
  const differences: string[] = [];
  let written = 0;
  let kept = 0;
  for (const sheet of listedSheets(project, named, folder, order)) {
    const shownPath = project.show(sheet.path);
    if ('text' in sheet) {
      if (options.dryRun !== true) writeWhole(sheet.path, sheet.text, { within });
      io.stdout.write(`${shownPath}\n`);
      written += 1;
      continue;
    }
    kept += 1;
    const { unit, there } = sheet;
    if (there === null) {
      differences.push(
        `${shownPath}: a file of this name is there, of another unit; row ${unit.rows[0]} has no sheet`,
      );
    } else {
      const found = listedDifferences(there.sheet, unit, kind, tools);
      differences.push(...differencesText(there.file, found));
    }
  }
  const style = { color: paint(usesColor(io, io.stdout)), width: widthOf(io.stdout) };
  if (slips.length > 0) io.stdout.write(slipsText(slips, `${shown}${tab}`, style));
  if (differences.length > 0) {
    io.stdout.write(`\nSheets that are there already say otherwise than the list:\n`);
    io.stdout.write(`${differences.map((line) => `  ${line}\n`).join('')}`);
  }
  for (const sentence of passed) say(io, sentence);
  const counts = { written, kept, slips: slips.length };
  say(io, listSummary(counts, options.dryRun === true));
  return slips.length > 0 ? 1 : 0;
}

function listAt(path: string, shown: string) {
  const bytes = readBounded(path, listBounds.file);
  if (!bytes.ok) {
    const why = bytes.why === 'too long' ? `it has ${bytes.size} bytes` : bytes.why;
    throw new Refusal(`${shown} cannot be read: ${why}`);
  }
  const read = readList(bytes.bytes);
  if (!read.ok) throw new Refusal(`${shown} cannot be read: ${read.message}`, read.fix);
  return read.list;
}

/** The table that a mapping reads, its heads as they were when the mapping was made. */
function checkedTable(tables: readonly Table[], mapping: Mapping, shown: string): Table {
  const found = mappedTable(tables, mapping);
  if (!found.ok) throw new Refusal(`${shown}: ${found.message}`, found.fix);
  return found.table;
}

function sheetsFolder(out: string | undefined, root: string, io: Io): string {
  if (out === undefined) {
    const sheets = join(root, 'sheets');
    return isFolder(sheets) ? sheets : io.cwd;
  }
  const folder = resolve(io.cwd, out);
  if (out === '-' || (isTaken(folder) && !isFolder(folder)) || /\.md$/i.test(out)) {
    throw new Refusal(`${out} is no folder`, 'with --from, --out is the folder for the sheets');
  }
  return folder;
}
