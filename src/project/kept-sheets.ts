import { createHash } from 'node:crypto';
import { serialize } from 'node:v8';
import type { CheckContext, Finding } from '../checks/index.ts';
import type { PartStore } from '../press/index.ts';
import type { Sheet } from '../sheet/model.ts';
import { LineIndex } from '../text/index.ts';
import { pack, unpack } from './packed-sheet.ts';

/** What was read from a sheet and found in it. */
export interface ReadAndChecked {
  readonly sheet: Sheet;
  readonly findings: readonly Finding[];
}

interface Kept {
  /** Without its lines, which are quickly found again. */
  readonly sheet: Omit<Sheet, 'lines'>;
  readonly findings: readonly Finding[];
  /** What the checks were told of pictures, which are files of their own. */
  readonly pictures: readonly (readonly [url: string, status: string])[];
}

/**
 * Reads and checks a sheet, or takes what came of the same text the last time: with the same kinds
 * of unit, edition and pictures. `digest` changes with any of them; null without a store. The eleven sheets
 * of the demo take 0.16 s so, and 1.3 s when they are read and checked.
 */
export function keptSheet(
  store: PartStore | null,
  text: string,
  file: string,
  context: CheckContext,
  examine: (context: CheckContext) => ReadAndChecked,
): ReadAndChecked & { readonly digest: string | null } {
  if (store === null) return { ...examine(context), digest: null };
  const { kinds } = context;
  const name = store.nameOf(`sheet ${markOf(context)} ${file}\n${text}`);
  const digestOf = (pictures: Kept['pictures']) =>
    store.nameOf(`${name} ${JSON.stringify(pictures)}`);
  const kept = unpack<Kept>(store.read(name), kinds);
  if (kept?.pictures.every(([url, status]) => context.picture?.(url) === status)) {
    const sheet = { ...kept.sheet, lines: new LineIndex(text) };
    return { sheet, findings: kept.findings, digest: digestOf(kept.pictures) };
  }
  const pictures: [string, string][] = [];
  const { picture } = context;
  const asked: CheckContext['picture'] = (url) => {
    const status = picture?.(url) ?? 'found';
    pictures.push([url, status]);
    return status;
  };
  const examined = examine({ ...context, picture: picture === null ? null : asked });
  const { lines: _, ...sheet } = examined.sheet;
  const packed = pack({ sheet, findings: examined.findings, pictures }, sheet.kind);
  if (packed !== null) store.keep(name, packed);
  return { ...examined, digest: digestOf(pictures) };
}

let lastKinds: unknown = null;
let lastMark = '';

/**
 * What changes with all that a sheet is read and checked by: whatever a context has, but for the gauges,
 * which are the program's own, the pictures, which are asked for one by one, and the family, for a sheet
 * that has one is not kept. The kinds are the same for all sheets of a project, and large.
 */
function markOf({ kinds, gauges: _, picture: __, family: ___, ...rest }: CheckContext): string {
  if (kinds !== lastKinds) {
    lastMark = createHash('sha256')
      .update(JSON.stringify(dataOf([...kinds])))
      .digest('hex');
    lastKinds = kinds;
  }
  return `${lastMark} ${createHash('sha256').update(serialize(rest)).digest('hex')}`;
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
