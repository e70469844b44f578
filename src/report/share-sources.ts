import {
  type DescribedSource,
  isSameDescription,
  repeatedSources,
  type SheetFacts,
} from '../checks/index.ts';
import { type ReadSheetOptions, readSheet, sourcesIn } from '../sheet/index.ts';
import { readYaml } from '../text/index.ts';
import { sourceBlock, withoutSource, withSource } from './source-lines.ts';

/** A sheet as it is saved, and its facts. */
export interface SheetToShare {
  readonly text: string;
  readonly facts: SheetFacts;
}

/** What is to be written so that a project describes its repeated papers once. */
export interface Sharing {
  /** The whole of `sources.yaml`. */
  readonly sourcesText: string;
  /** The whole of each sheet that changes, by its file. */
  readonly sheets: ReadonlyMap<string, string>;
  /** The short names of what moves. */
  readonly moved: readonly string[];
}

/**
 * Moves what several sheets describe in the same words to the text of `sources.yaml`; `before` is that
 * text, null where there is none. Left as it is: what an editor accepts, what shares its lines with
 * something else, and a sheet whose sources would not be the same afterwards. Null where nothing moves.
 */
export function shareSources(
  sheets: readonly SheetToShare[],
  before: string | null,
  options: ReadSheetOptions,
): Sharing | null {
  const texts = new Map(sheets.map(({ facts, text }) => [facts.file, text]));
  const changed = new Map<string, string>();
  const moved: string[] = [];
  let shared = before;
  for (const group of repeatedSources(sheets.map(({ facts }) => facts))) {
    const name = group[0]?.source.text ?? '';
    const open = group.filter((each) => !isAccepted(each));
    const known = shared === null ? undefined : sourcesOf(shared).get(name);
    const isKnown =
      known !== undefined && isSameDescription(known, group[0]?.source.described ?? {});
    if (known === undefined ? open.length < 2 : !isKnown || open.length === 0) continue;
    const stripped = new Map<string, string>();
    for (const { sheet } of open) {
      const text = texts.get(sheet.file);
      const without = text === undefined ? null : withoutSource(text, name, options);
      if (without !== null) stripped.set(sheet.file, without);
    }
    if (stripped.size < (known === undefined ? 2 : 1)) continue;
    const [first = ''] = stripped.keys();
    const block = sourceBlock(texts.get(first) ?? '', name, options);
    const next: string | null = known === undefined ? block && withSource(shared, block) : shared;
    const described = next === null ? undefined : sourcesOf(next).get(name);
    if (next === null || described === undefined) continue;
    const kept = [...stripped].filter(([file, text]) =>
      isUnchanged(texts.get(file) ?? '', text, next, options),
    );
    if (kept.length < (known === undefined ? 2 : 1)) continue;
    shared = next;
    moved.push(name);
    for (const [file, text] of kept) {
      texts.set(file, text);
      changed.set(file, text);
    }
  }
  return moved.length === 0 || shared === null
    ? null
    : { sourcesText: shared, sheets: changed, moved };
}

function isAccepted({ sheet, source }: DescribedSource): boolean {
  return sheet.accept.some(
    ({ check, meant }) =>
      check === 'source-repeated' && (meant === null || meant.includes(source.text)),
  );
}

function sourcesOf(text: string) {
  return sourcesIn(readYaml(text));
}

/** Whether a sheet has the sources that it had, in whatever file they are described. */
function isUnchanged(
  before: string,
  after: string,
  shared: string,
  options: ReadSheetOptions,
): boolean {
  const described = (text: string): string => {
    const sheet = readSheet(text, '', { ...options, sharedSources: sourcesOf(shared) });
    const sources = [...sheet.sources].map(([name, source]) => [
      name,
      [...source.described].map(([key, { value }]) => [key, value]).sort(),
    ]);
    return JSON.stringify(sources.sort());
  };
  return described(before) === described(after);
}
