import type { DeskDocument, DeskPlace, FileEdits, Renamed, RenameStart } from './model.ts';
import { type Meant, meantAt, placesIn } from './names.ts';

/** The name at an offset that `rename` could change; null where there is none. */
export function renameStart(document: DeskDocument, offset: number): RenameStart | null {
  const meant = meantAt(document, offset);
  if (meant === null || !isOwn(meant)) return null;
  const name = nameOf(meant);
  // Within a mark only the name changes.
  const place = placesIn(document, meant).find(
    ({ file, span }) => file === document.file && span.start <= offset && offset <= span.end,
  );
  return place === undefined ? null : { span: place.span, name };
}

/**
 * Gives a source, a sheet or a setting of the sheet's own another name, wherever the project has it. A
 * source of one short name may be another paper on another sheet: it changes only where it is described
 * alike. For a sheet, `newFile` is the name that its file takes.
 */
export function rename(document: DeskDocument, offset: number, to: string): Renamed {
  const meant = meantAt(document, offset);
  if (meant === null) return refuse('there is no name here that can be changed');
  if (!isOwn(meant)) {
    return refuse(
      meant.what === 'setting'
        ? `\`${meant.setting.name.value}\` is the kind's name for the setting; it is the same on every sheet`
        : `\`${nameOf(meant)}\` is described in sources.yaml; change its name there`,
    );
  }
  const name = to.trim();
  if (!/^[a-z0-9]+(-[a-z0-9]+)*$/.test(name) || name.length > 100) {
    return refuse(`\`${to}\` is no name: write small letters, digits and hyphens`);
  }
  if (name === nameOf(meant)) return { ok: true, edits: [], newFile: null };
  const taken = takenBy(document, meant, name);
  if (taken !== null) return refuse(taken);
  const places = [
    ...placesIn(document, meant),
    ...(meant.what === 'setting'
      ? []
      : [...(document.project.others?.() ?? [])]
          .filter((other) => meant.what !== 'source' || isAlike(document, other, meant.id))
          .flatMap((other) => placesIn(other, meant))),
  ];
  return {
    ok: true,
    edits: byFile(places, name),
    newFile: meant.what === 'sheet' ? `${name}.md` : null,
  };
}

function refuse(message: string): Renamed {
  return { ok: false, message };
}

/** Whether the name is one that a sheet gives: not the kind's, and not one of `sources.yaml`. */
function isOwn(meant: Meant): boolean {
  if (meant.what === 'setting') return meant.setting.known === null;
  if (meant.what === 'source') return meant.source !== null && !meant.source.shared;
  return true;
}

function nameOf(meant: Meant): string {
  return meant.what === 'setting' ? meant.setting.name.value : meant.id;
}

function takenBy(document: DeskDocument, meant: Meant, name: string): string | null {
  const { sheet } = document;
  if (meant.what === 'setting') {
    if (sheet.settings.has(name)) return `the sheet has a setting \`${name}\` already`;
    if (sheet.kind?.settingNamed(name)) return `\`${name}\` is the kind's name for another setting`;
    return null;
  }
  if (meant.what === 'source') {
    return sheet.sources.has(name) ? `the sheet has a source \`${name}\` already` : null;
  }
  return document.project.context.family?.names().includes(name)
    ? `there is a sheet \`${name}\` already`
    : null;
}

/** Whether another sheet means the same paper by a short name. */
function isAlike(document: DeskDocument, other: DeskDocument, id: string): boolean {
  const [mine, theirs] = [document, other].map(({ sheet }) => sheet.sources.get(id)?.title?.value);
  return mine === theirs;
}

/** One name for many places, file by file, each place once. */
function byFile(places: readonly DeskPlace[], text: string): readonly FileEdits[] {
  const files = new Map<string, Map<number, DeskPlace>>();
  for (const place of places) {
    const known = files.get(place.file) ?? new Map<number, DeskPlace>();
    known.set(place.span.start, place);
    files.set(place.file, known);
  }
  return [...files].map(([file, known]) => ({
    file,
    edits: [...known.values()].map(({ span }) => ({ span, text })),
  }));
}
