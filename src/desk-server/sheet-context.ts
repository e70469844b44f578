import { join } from 'node:path';
import type { SheetContext } from '../desk-page/model.ts';
import {
  isFolder,
  listFiles,
  locate,
  openEdition,
  type Project,
  readText,
} from '../project/index.ts';

/** More bases than this no sheet stands on. */
const mostBases = 20;

/**
 * What the page's worker needs to check a sheet as the command does. `bases` and `pictures` are names that
 * it asked for, `openText` what another window has typed into a base.
 */
export function sheetContext(
  project: Project,
  at: { readonly id: string; readonly path: string },
  asked: { readonly bases: readonly string[]; readonly pictures: readonly string[] },
  openText: (id: string) => string | null,
): SheetContext {
  const context = project.context(at.path);
  const bases: Record<string, { file: string; text: string }> = {};
  const open = [...asked.bases];
  for (
    let id = open.shift();
    id !== undefined && Object.keys(bases).length < mostBases;
    id = open.shift()
  ) {
    const found = Object.hasOwn(bases, id) ? null : (context.family?.find(id) ?? null);
    if (found === null) continue;
    const text = openText(id) ?? found.text;
    bases[id] = { file: found.file, text };
    // A base may stand on another.
    const next = /^based-on:[ \t]*["']?([a-z0-9-]+)/m.exec(text)?.[1];
    if (next !== undefined) open.push(next);
  }
  const pictures: SheetContext['pictures'] = Object.fromEntries(
    asked.pictures.map((url) => [url, context.picture?.(url) ?? 'found']),
  );
  return {
    id: at.id,
    file: project.show(at.path),
    kinds: kindFiles(project),
    wireGauge: context.wireGauge,
    altitude: context.altitude ?? null,
    measuredUnits: context.measuredUnits ?? null,
    usualOrder: context.usualOrder ?? null,
    kit: kitEntries(project),
    sharedSources: [...(context.sharedSources ?? [])],
    bases,
    names: context.family?.names() ?? [],
    pictures,
  };
}

function kindFiles(project: Project): { file: string; text: string }[] {
  const folder = join(project.root, 'kinds');
  if (!isFolder(folder)) return [];
  return listFiles(folder, /\.ya?ml$/i).flatMap((name) => {
    const located = locate(project.root, folder, name);
    if (located.status !== 'found') return [];
    const file = project.show(join(folder, name));
    const read = readText(located.path, file);
    return read.ok && read.fault === null ? [{ file, text: read.text }] : [];
  });
}

function kitEntries(project: Project): string[] | null {
  const { kit } = openEdition(project.root, 'edition.yaml').value;
  if (!Array.isArray(kit) || kit.length === 0) return null;
  return kit.filter((entry) => typeof entry === 'string' || typeof entry === 'number').map(String);
}
