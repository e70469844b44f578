import { type CheckContext, factsIn, packFacts } from '../checks/index.ts';
import type { PartStore } from '../press/index.ts';
import { type FileReport, placeSheet, type Refused, stoppers } from '../report/index.ts';
import { provedFigures, type ReadCount, readCount } from '../rereading/index.ts';
import { examineOpened } from './examine-file.ts';
import type { ReadAndChecked } from './kept-sheets.ts';
import type { Project } from './project.ts';
import { openSheet } from './sheet-file.ts';
import { type Form, type Pictures, recalled, remembered } from './sheet-memory.ts';

/** What `check` tells of one sheet, as plain data in which nothing of the sheet itself is held. */
export interface CheckedSheet {
  readonly file: string;
  /** Its own first; then, where it is based on another, those of files that it is based on. */
  readonly reports: readonly FileReport[];
  /** Whether any of it stops the press. */
  readonly stops: boolean;
  /** What the checks across sheets need of it, packed; null where its front matter could not be read. */
  readonly facts: Uint8Array | null;
  /** Of its figures that stand in papers, how many were read twice; null where nobody counts. */
  readonly read: ReadCount | null;
  /** Files that it is put together from, as reports show them; its own alone where it has no base. */
  readonly files: readonly string[];
  /** Changes with anything of this; null where nothing is kept. */
  readonly digest: string | null;
}

/** A sheet as it was checked, or why the file is no sheet at all. */
export type Checked =
  | { readonly ok: true; readonly sheet: CheckedSheet }
  | { readonly ok: false; readonly refused: Refused };

const encoder = new TextEncoder();

type Told = Omit<CheckedSheet, 'digest'>;

/** Length of the head in front of everything, as four bytes. */
const lengthBytes = 4;

/** Findings and facts: the first as JSON, the second as they are, for they are rarely looked at. */
const checkedForm: Form<Told> = {
  what: 'checked',
  pack({ facts, ...head }, pictures) {
    const told = Buffer.from(JSON.stringify({ ...head, pictures, hasFacts: facts !== null }));
    const length = Buffer.alloc(lengthBytes);
    length.writeUInt32LE(told.length);
    return Buffer.concat([length, told, facts ?? new Uint8Array()]);
  },
  unpack(bytes) {
    try {
      const whole = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
      const end = lengthBytes + whole.readUInt32LE();
      const head = JSON.parse(whole.toString('utf8', lengthBytes, end)) as Omit<Told, 'facts'> & {
        readonly pictures: Pictures;
        readonly hasFacts: boolean;
      };
      const { pictures, hasFacts, file, reports, stops, read, files } = head;
      const facts = hasFacts ? new Uint8Array(whole.subarray(end)) : null;
      return { pictures, value: { file, reports, stops, read, files, facts } };
    } catch {
      return null;
    }
  },
};

/** What is told of a sheet that was read and checked. */
export function toldOf(
  { sheet, findings }: ReadAndChecked,
  { readings = null }: Pick<CheckContext, 'readings'>,
): Told {
  const facts = factsIn(sheet);
  return {
    file: sheet.file,
    reports: placeSheet(sheet, findings),
    stops: stoppers(findings, sheet.status?.value ?? null).length > 0,
    read: readings === null ? null : readCount(provedFigures(sheet, readings)),
    files: sheet.family?.members.map((member) => member.file) ?? [sheet.file],
    facts: facts === null ? null : encoder.encode(packFacts(facts)),
  };
}

/** What was told of the same sheet before; null where it has to be checked. */
export function recallFile(project: Project, path: string, store: PartStore): Checked | null {
  const read = openSheet(project, path);
  if (!read.ok) return read;
  const known = recalled(store, project, read.opened, checkedForm);
  return known && { ok: true, sheet: { ...known.value, digest: known.digest } };
}

/** Reads and checks a sheet of a project, and keeps what is told of it: who may know it asks `recallFile` before. */
export function checkFile(project: Project, path: string, store: PartStore | null): Checked {
  const read = openSheet(project, path);
  if (!read.ok) return read;
  const { opened } = read;
  if (store === null)
    return { ok: true, sheet: { ...toldOf(examineOpened(opened), opened.context), digest: null } };
  const { value, digest } = remembered(store, project, opened, checkedForm, (context) =>
    toldOf(examineOpened({ ...opened, context }), context),
  );
  return { ok: true, sheet: { ...value, digest } };
}
