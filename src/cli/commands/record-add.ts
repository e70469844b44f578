import { basename } from 'node:path';
import {
  type Examined,
  examineText,
  fileId,
  type Project,
  Refusal,
  recordFolder,
  writeWhole,
} from '../../project/index.ts';
import { addRecordEdits, applyEdits } from '../../report/index.ts';
import { ownText } from '../../sheet/index.ts';
import { type Io, say } from '../io.ts';

/** `gaugeleaf record FILE --add-to SOURCE`: what the record read as left counts among the source's readings. */
export function addRecord(
  project: Project,
  path: string,
  examined: Examined & { readonly ok: true },
  source: string,
  io: Io,
): void {
  const { sheet } = examined;
  const stem = basename(path).replace(/\.ya?ml$/i, '');
  const id = fileId(examined.path);
  const name = stem.startsWith(`${id}.`) ? stem.slice(id.length + 1) : stem;
  const known = project.context(examined.path).records?.(name) ?? null;
  if (known === null || known.file !== project.show(path)) {
    throw new Refusal(
      `${project.show(path)} is not where the sheet looks for its records`,
      `put it into ${recordFolder}, as ${id}.SERIAL.yaml`,
    );
  }
  const edits = addRecordEdits(sheet, source, name);
  if ('message' in edits) throw new Refusal(edits.message, edits.fix);
  const before = ownText(sheet);
  const text = applyEdits(before, edits);
  const now = examineText(project, examined.path, sheet.file, text).sheet;
  const isThere = now.sources.get(source)?.records.some((each) => each.name.value === name);
  if (isThere !== true || now.problems.length > sheet.problems.length) {
    throw new Refusal(
      `the record cannot be added to \`${source}\` in ${sheet.file}: read back, it is not there`,
      `write \`records: [${name}]\` into the source by hand`,
    );
  }
  writeWhole(examined.path, text, { within: project.root, was: before });
  const units = now.sources.get(source)?.units?.value ?? null;
  const counted =
    units === (sheet.sources.get(source)?.units?.value ?? null) ? '' : `, now ${units} units`;
  say(
    io,
    `${sheet.file}: record ${name} added to \`${source}\`${counted}; gaugeleaf measured ${id} sums it`,
  );
}
