import type { Kit } from '../gauges/index.ts';
import type { Kind } from '../kinds/model.ts';
import type { EditionFacts, Paper } from '../press/index.ts';
import { lookup, nearestName } from '../text/index.ts';
import { altitudeFault, previousFault } from './edition-facts.ts';
import { type EditionFile, truth, whole, written } from './edition-file.ts';
import { editionKit } from './edition-kit.ts';
import { editionSchemaFaults } from './edition-schema.ts';
import { type Fault, type FileFaults, fileFaults } from './file-faults.ts';
import { houseFaults, houseTolerancesIn } from './house-tolerances.ts';
import { readingDistance } from './reading-distance.ts';

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

/** How an edition's list may name a sheet: `orlo-t71`, `orlo-t71.md` or `sheets/orlo-t71.md`. */
export function sheetName(written: string): string {
  return written.replace(/^(?:\.\/)?sheets\//, '').replace(/\.md$/i, '');
}

/**
 * What `edition.yaml` of a project says. `present` are the names of the sheets in its `sheets` folder.
 * Every mistake comes back with its place; never throws.
 */
export function readEdition(
  { root, file, read, yaml, value }: EditionFile,
  present: readonly string[],
  kinds: ReadonlyMap<string, Kind> = new Map(),
): EditionRead {
  const bad = 'edition-invalid';
  if (read === null) return { edition: null, faults: null };
  if (!read.ok || yaml === null) {
    const { message, fix } = read.ok ? { message: `${file} cannot be read`, fix: null } : read;
    const fault = { check: bad, span: { start: 0, end: 0 }, message, fix };
    return { edition: null, faults: fileFaults(file, '', [fault]) };
  }
  const { text } = read;
  const faults: Fault[] = [];
  if (read.fault !== null) {
    const { start, end, message, fix } = read.fault;
    faults.push({ check: bad, span: { start, end }, message, fix });
  }
  for (const { span, message, fix, related } of yaml.problems) {
    faults.push({ check: bad, span, message, fix, related: related === null ? [] : [related] });
  }
  const base = text.startsWith('\ufeff') ? 1 : 0;
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
  const house = houseTolerancesIn(value['house-tolerances']);
  if (house !== null) faults.push(...houseFaults(house, yaml, kinds));
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

/** A text of several paragraphs, parted by empty lines. */
function paragraphs(value: unknown): readonly string[] {
  return (written(value) ?? '')
    .split(/\n\s*\n?/)
    .map((each) => each.trim())
    .filter((each) => each !== '');
}

function editionFrom(
  value: Readonly<Record<string, unknown>>,
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
    usualOrder: truth(value['usual-order']),
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
