import { createHash } from 'node:crypto';
import { serialize } from 'node:v8';
import type { CheckContext } from '../checks/index.ts';
import { builtInKinds } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import type { PartStore } from '../press/index.ts';
import type { RecordBook, RecordTexts } from '../sheet/index.ts';
import { oncePer } from '../text/index.ts';
import { fileId } from './file-id.ts';
import type { Project } from './project.ts';
import type { SheetFile } from './sheet-file.ts';

/** What was asked of pictures and bench records, which are files of their own, and what each question came to. */
export type Pictures = readonly (readonly [asked: string, came: string])[];

/** What is made of sheets and kept, and how it is written down. */
export interface Form<T> {
  /** Tells it from other things that are made of the same sheet. */
  readonly what: string;
  /** Null for what would not come back as it was. */
  pack(value: T, pictures: Pictures): Uint8Array | null;
  /** Null for bytes that this program did not write. */
  unpack(bytes: Uint8Array): { readonly value: T; readonly pictures: Pictures } | null;
}

/** Something made of a sheet, and a name that changes with anything it was made of; null where it has none. */
export interface Made<T> {
  readonly value: T;
  readonly digest: string | null;
}

/**
 * The one rule for what is kept of a sheet: its name is of the text, the file, and all that the sheet is
 * read and checked by; what was made is good for as long as its pictures are what they were. What is based
 * on another sheet changes with that one, and is not kept; nor is a text with damaged bytes. Null for such.
 */
function nameOf<T>(
  store: PartStore,
  project: Project,
  { file, text, problem, context }: SheetFile,
  { what }: Form<T>,
): string | null {
  if (problem !== null || text.includes('based-on')) return null;
  const read = context.readings ? `\n${project.readings()?.of(fileId(file)).mark}` : '';
  return store.nameOf(`${what} ${markOf(project)} ${file}\n${text}${read}`);
}

function digestOf(store: PartStore, name: string, pictures: Pictures): string {
  return store.nameOf(`${name} ${JSON.stringify(pictures)}`);
}

/** What was made of the same sheet before; null where nothing is kept, or no longer holds. */
export function recalled<T>(
  store: PartStore,
  project: Project,
  opened: SheetFile,
  form: Form<T>,
): Made<T> | null {
  const name = nameOf(store, project, opened, form);
  const bytes = name === null ? null : store.read(name);
  const kept = bytes === null ? null : form.unpack(bytes);
  if (name === null || kept === null) return null;
  const { picture, records } = opened.context;
  const holds = kept.pictures.every(([asked, came]) =>
    asked.startsWith(recordMark)
      ? toldBy(records?.(asked.slice(recordMark.length)) ?? null) === came
      : (picture?.(asked) ?? 'found') === came,
  );
  return holds ? { value: kept.value, digest: digestOf(store, name, kept.pictures) } : null;
}

/** Makes something of a sheet and keeps it for the next time. */
export function remembered<T>(
  store: PartStore,
  project: Project,
  opened: SheetFile,
  form: Form<T>,
  make: (context: CheckContext) => T,
): Made<T> {
  const { context } = opened;
  const name = nameOf(store, project, opened, form);
  if (name === null) return { value: make(context), digest: null };
  const pictures: [string, string][] = [];
  const { picture } = context;
  const asked: CheckContext['picture'] = (url) => {
    const status = picture?.(url) ?? 'found';
    pictures.push([url, status]);
    return status;
  };
  const { records = null } = context;
  const asRecord: RecordBook = (name) => {
    const texts = records?.(name) ?? null;
    pictures.push([recordMark + name, toldBy(texts)]);
    return texts;
  };
  const value = make({
    ...context,
    picture: picture === null ? null : asked,
    records: records === null ? null : asRecord,
  });
  const packed = form.pack(value, pictures);
  if (packed !== null) store.keep(name, packed);
  return { value, digest: digestOf(store, name, pictures) };
}

/** What tells a bench record from a picture, whose address begins with no blank. */
const recordMark = ' record ';

function toldBy(texts: RecordTexts | null): string {
  return texts === null ? '' : JSON.stringify(texts);
}

/**
 * What changes with all that the sheets of a project are read and checked by: whatever a context has, but
 * for the gauges, which are the program's own, pictures and records, which are asked for one by one, and the family,
 * for a sheet that has one is not kept. Second readings are each sheet's own, and belong to its name.
 */
export const markOf = oncePer((project: Project): string => {
  const {
    kinds,
    gauges: _,
    picture: __,
    family: ___,
    readings: ____,
    records: _____,
    ...rest
  } = project.context(project.root);
  const hash = createHash('sha256').update(JSON.stringify(kindsMark(kinds)));
  return hash.update(serialize(rest)).digest('hex');
});

/** The program's own kinds are told by the program's mark, and are large; a club's by all they say. */
function kindsMark(kinds: ReadonlyMap<string, Kind>): unknown {
  const own = builtInKinds();
  if (kinds === own) return null;
  return [...kinds].map(([name, kind]) => [name, kind === own.get(name) ? null : dataOf(kind)]);
}

/** A value without its functions, which cannot be kept and come of the data beside them. */
function dataOf(value: unknown): unknown {
  if (typeof value === 'function') return null;
  if (typeof value === 'bigint' || value instanceof RegExp) return String(value);
  if (typeof value !== 'object' || value === null) return value;
  if (value instanceof Map) return [...value].map(dataOf);
  if (Array.isArray(value) || value instanceof Set) return [...value].map(dataOf);
  return Object.entries(value).map(([key, inner]) => [key, dataOf(inner)]);
}
