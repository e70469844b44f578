import { join } from 'node:path';
import type { Kit } from '../gauges/index.ts';
import type { EditionFacts, Paper } from '../press/index.ts';
import { nearestName } from '../text/nearest-name.ts';
import { lookup, readYaml } from '../text/yaml-places.ts';
import { altitudeFault, previousFault } from './edition-facts.ts';
import { editionKit } from './edition-kit.ts';
import { editionSchemaFaults } from './edition-schema.ts';
import { type Fault, type FileFaults, fileFaults } from './file-faults.ts';
import { readText } from './read-text.ts';
import { readingDistance } from './reading-distance.ts';
import { isTaken } from './safe-path.ts';

/** What `edition.yaml` says; every field as written, null or empty where it says nothing. */
export interface Edition {
  readonly facts: EditionFacts;
  readonly paper: Paper | null;
  readonly cardPaper: Paper | null;
  /** Names of sheets in the order of the booklet; null where the edition leaves it to the names. */
  readonly sheets: readonly string[] | null;
  /** Which system a bare `SWG` means: `imperial` or `us-steel`. */
  readonly wireGauge: string | null;
  /** How many units a figure needs that only measuring bears out; null for no rule. */
  readonly measuredUnits: number | null;
  /** Whether notes tell what differs from the usual order of work; null where it does not say. */
  readonly usualOrder: boolean | null;
  /** Whether every chapter ends with the picture of its order of work. */
  readonly orderGraphs: boolean;
  /** The data file of the edition before this one, as written; null where it names none. */
  readonly previous: string | null;
}

export interface EditionRead {
  /** Null where there is no edition file, or none that can be used. */
  readonly edition: Edition | null;
  /** Null where there is no edition file. */
  readonly faults: FileFaults | null;
}

/** Lines of the edition that a check may need to know, as they are plainly written. */
const plainLines = {
  'wire-gauge': /^wire-gauge: +(imperial|us-steel) *\r?$/m,
  altitude: /^altitude: +(\d[\d.,]* (?:ft|m)) *\r?$/m,
  'measured-units': /^measured-units: +(\d{1,3}) *\r?$/m,
  'usual-order': /^usual-order: +(true|false) *\r?$/m,
} as const;

/**
 * What the edition says of something that checks need: `plain` where a line says just that, null
 * where none does, `unclear` where the whole file has to be read to know. One line spares the start
 * of every check of a single sheet the parsing of the edition. `text` is the edition's, null where
 * there is none.
 */
export function editionLine(
  text: string | null,
  key: keyof typeof plainLines,
): { readonly plain: string | null } | 'unclear' {
  if (!text?.includes(key)) return { plain: null };
  const line = plainLines[key].exec(text);
  return line ? { plain: line[1] ?? null } : 'unclear';
}

/** The text of a project's edition; null where there is none that can be read. */
export function editionText(root: string): string | null {
  const read = readText(join(root, 'edition.yaml'));
  return read.ok ? read.text : null;
}

/** How an edition's list may name a sheet: `orlo-t71`, `orlo-t71.md` or `sheets/orlo-t71.md`. */
export function sheetName(written: string): string {
  return written.replace(/^(?:\.\/)?sheets\//, '').replace(/\.md$/i, '');
}

/**
 * Reads `edition.yaml` of a project. `present` are the names of the sheets in its `sheets` folder.
 * Every mistake comes back with its place; never throws.
 */
export function readEdition(root: string, shown: string, present: readonly string[]): EditionRead {
  const path = join(root, 'edition.yaml');
  if (!isTaken(path)) return { edition: null, faults: null };
  const file = shown;
  const bad = 'edition-invalid';
  const read = readText(path, file);
  if (!read.ok) {
    const fault = { check: bad, span: { start: 0, end: 0 }, message: read.message, fix: read.fix };
    return { edition: null, faults: fileFaults(file, '', [fault]) };
  }
  const { text } = read;
  const faults: Fault[] = [];
  if (read.fault !== null) {
    const { start, end, message, fix } = read.fault;
    faults.push({ check: bad, span: { start, end }, message, fix });
  }
  const base = text.startsWith('\ufeff') ? 1 : 0;
  const yaml = readYaml(text.slice(base), base);
  for (const { span, message, fix, related } of yaml.problems) {
    faults.push({ check: bad, span, message, fix, related: related === null ? [] : [related] });
  }
  const start = { start: base, end: /[\r\n]|$/.exec(text)?.index ?? base };
  if (yaml.root === null || yaml.root.kind !== 'map') {
    if (faults.length === 0) {
      faults.push({
        check: bad,
        span: start,
        message: 'the edition file says nothing: at least a title is needed',
        fix: 'write `title:` and the name of the booklet',
      });
    }
    return { edition: null, faults: fileFaults(file, text, faults) };
  }
  if (yaml.sound) {
    for (const fault of editionSchemaFaults(yaml)) faults.push({ check: bad, ...fault });
  }
  const value = yaml.value as Record<string, unknown>;
  const distance = written(value['reading-distance']);
  const far = distance === null ? null : readingDistance(distance);
  if (far !== null && 'message' in far) {
    const span = lookup(yaml.root, ['reading-distance']) ?? start;
    faults.push({ check: bad, span, message: far.message, fix: far.fix });
  }
  const high = written(value.altitude);
  const unplaced = high === null ? null : altitudeFault(high);
  if (unplaced !== null) {
    faults.push({ check: bad, span: lookup(yaml.root, ['altitude']) ?? start, ...unplaced });
  }
  const last = written(value.previous);
  const lost = last === null ? null : previousFault(root, last);
  if (lost !== null) {
    faults.push({ check: bad, span: lookup(yaml.root, ['previous']) ?? start, ...lost });
  }
  const { kit, faults: unread } = editionKit(
    value.kit,
    written(value['wire-gauge']),
    (index) => lookup(yaml.root, ['kit', index]) ?? start,
  );
  faults.push(...unread);
  const edition = editionFrom(value, far !== null && 'mm' in far ? far.mm : null, kit);
  if (edition.sheets !== null) {
    const span = (index: number) => lookup(yaml.root, ['order', index]) ?? start;
    faults.push(
      ...orderFaults(edition.sheets, present, span, start, (key) =>
        lookup(yaml.root, [key], 'key'),
      ),
    );
  }
  return { edition, faults: fileFaults(file, text, faults) };
}

function written(value: unknown): string | null {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : null;
}

function whole(value: unknown): number | null {
  return typeof value === 'number' && Number.isInteger(value) && value > 0 ? value : null;
}

/** A text of several paragraphs, parted by empty lines. */
function paragraphs(value: unknown): readonly string[] {
  return (written(value) ?? '')
    .split(/\n\s*\n?/)
    .map((each) => each.trim())
    .filter((each) => each !== '');
}

function editionFrom(
  value: Record<string, unknown>,
  readingDistanceMm: number | null,
  kit: Kit | null,
): Edition {
  const list = Array.isArray(value.order) ? value.order : null;
  return {
    facts: {
      title: written(value.title) ?? '',
      subtitle: written(value.subtitle),
      club: written(value.club),
      edition: written(value.edition),
      date: written(value.date) ?? written(value.year),
      language: written(value.language),
      altitude: written(value.altitude),
      introduction: paragraphs(value.introduction),
      safety: paragraphs(value.safety),
      notice: written(value.colophon),
      readingDistanceMm,
      kit,
    },
    paper: paperNamed(value.paper),
    cardPaper: paperNamed(value['card-paper']),
    sheets: list?.map((name) => sheetName(written(name) ?? '')) ?? null,
    wireGauge: written(value['wire-gauge']),
    measuredUnits: whole(value['measured-units']),
    usualOrder: typeof value['usual-order'] === 'boolean' ? value['usual-order'] : null,
    orderGraphs: value['order-graphs'] === true,
    previous: written(value.previous),
  };
}

const papers: readonly Paper[] = ['letter', 'a4', 'half-letter', 'a5'];

function paperNamed(value: unknown): Paper | null {
  return papers.find((paper) => paper === value) ?? null;
}

type SpanOf<T> = (key: T) => { readonly start: number; readonly end: number } | null;

function orderFaults(
  sheets: readonly string[],
  present: readonly string[],
  spanOf: SpanOf<number>,
  start: { readonly start: number; readonly end: number },
  keySpan: SpanOf<string>,
): Fault[] {
  const faults: Fault[] = [];
  const there = new Set(present);
  const seen = new Map<string, number>();
  sheets.forEach((name, index) => {
    const span = spanOf(index) ?? start;
    const first = seen.get(name);
    if (first !== undefined) {
      faults.push({
        check: 'edition-sheet-missing',
        span,
        message: `the sheet \`${name}\` is listed twice`,
        fix: 'take one of the two out',
        related: [{ span: spanOf(first) ?? start, label: 'the first' }],
      });
      return;
    }
    seen.set(name, index);
    if (there.has(name)) return;
    faults.push({
      check: 'edition-sheet-missing',
      span,
      message: `there is no sheet \`sheets/${name}.md\``,
      fix: missingFix(
        name,
        present.filter((other) => !sheets.includes(other)),
      ),
    });
  });
  for (const name of present) {
    if (seen.has(name)) continue;
    faults.push({
      check: 'edition-sheet-unlisted',
      span: keySpan('order') ?? start,
      message: `\`sheets/${name}.md\` is not in the order of the booklet`,
      fix: `add \`- ${name}\` where it belongs, if this edition is to have it`,
    });
  }
  return faults;
}

function missingFix(name: string, unlisted: readonly string[]): string {
  const near = nearestName(name, unlisted);
  return near === null
    ? 'correct the name, or take the line out'
    : `\`${near}\`, if that was meant; otherwise take the line out`;
}
