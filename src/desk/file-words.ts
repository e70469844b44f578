import { fileWords } from '../generated/file-words.ts';
import { references } from '../generated/kind-references.ts';
import type { KeyWords } from '../generated/sheet-words.ts';
import { type PlacedMap, readYaml } from '../text/index.ts';
import { isBareItem, keyText, placed } from './complete-front.ts';
import { holds } from './document.ts';
import { type FrontCursor, frontCursor } from './front-cursor.ts';
import { type Offer, wordsAt } from './front-words.ts';
import type { Completion, Hover } from './model.ts';

/** A YAML file of a project that is no sheet. */
export type YamlSort = keyof typeof fileWords;

/** What may stand at an offset of such a file, by its schema and by the names that it has itself. */
export function fileCompletions(
  sort: YamlSort,
  text: string,
  offset: number,
): readonly Completion[] {
  const found = frontCursor(text, { start: 0, end: text.length }, offset);
  if (found === null) return [];
  const words = (path: readonly string[]) => wordsAt(path, fileWords[sort]);
  const own = sort === 'kind' ? ownNames(text, found) : [];
  const isItem = isBareItem(found, words) || (own.length > 0 && found.path.at(-1) === '-');
  const cursor = { ...found, part: isItem ? ('value' as const) : found.part };
  const here = words(cursor.path);
  const offers =
    own.length > 0
      ? own
      : cursor.part === 'key'
        ? keyOffers(here, cursor, text)
        : valueOffers(here);
  return offers.map((offer) => placed(text, cursor, offer));
}

/** What the key at an offset says; null where there is none. */
export function fileHover(sort: YamlSort, text: string, offset: number): Hover | null {
  const cursor = frontCursor(text, { start: 0, end: text.length }, offset);
  if (cursor === null || cursor.part !== 'key' || !holds(cursor.span, offset)) return null;
  const { span, path } = cursor;
  const name = text.slice(span.start, span.end);
  const words = name === '' ? null : wordsAt([...path, name], fileWords[sort]);
  if (words === null || words.explain === '') return null;
  const rows: [string, string][] = [];
  if (words.choices.length > 0) rows.push(['one of', words.choices.join(', ')]);
  else if (words.examples.length > 0) rows.push(['such as', words.examples.join(', ')]);
  const below = Object.keys(words.keys);
  if (below.length > 0) rows.push(['below it', below.join(', ')]);
  return { span, title: name, words: [words.explain], rows };
}

function keyOffers(words: KeyWords | null, cursor: FrontCursor, text: string): readonly Offer[] {
  if (words === null) return [];
  const there = keysAt(text, cursor.path);
  const pad = ' '.repeat(cursor.indent + 2);
  const offers = Object.entries(words.keys).map(([key, { explain, keys, items, any }]): Offer => {
    const isMap = Object.keys(keys).length > 0 || any !== null;
    return {
      label: key,
      kind: 'key',
      detail: words.required.includes(key) ? 'needed' : null,
      explain,
      text: keyText(key, cursor.inFlow, pad, isMap && items === null, items !== null),
    };
  });
  return offers
    .filter(({ label }) => !there.has(label))
    .sort((a, b) => Number(b.detail === 'needed') - Number(a.detail === 'needed'));
}

function valueOffers(words: KeyWords | null): readonly Offer[] {
  if (words === null) return [];
  const { choices, explain } = words.choices.length > 0 ? words : (words.items ?? words);
  return choices.map((label) => ({ label, kind: 'word', explain }));
}

/** The file's own entries, where its schema says that a name refers to one. */
function ownNames(text: string, { path, part }: FrontCursor): readonly Offer[] {
  const { root } = readYaml(text);
  if (root?.kind !== 'map') return [];
  const key = path.at(-1) ?? '';
  const above = path.at(-2) ?? '';
  const needs = ['needs', 'leaves', 'while', 'unless'];
  if (needs.includes(key) && part === 'key') return partNames(root);
  if (needs.includes(above) && part === 'value') return conditionNames(root, key);
  if (above === 'parts' || path.at(-3) === 'parts') {
    const name = above === 'parts' ? key : above;
    const step = path.filter((each) => each !== '-').at(-1);
    if (step === 'starts' || step === 'home') return conditionNames(root, name);
  }
  const [found] = references.filter(
    ({ path: way }) =>
      way.length <= path.length &&
      way.every((step, at) => step === '*' || step === path[at]) &&
      path.slice(way.length).every((step) => step === '-'),
  );
  if (found === undefined) return [];
  const section = { setting: 'settings', operation: 'operations', feature: 'features' } as const;
  const others = { hazard: 'hazards', count: 'counts', size: 'unit' } as const;
  return namesBelow(root, { ...section, ...others }[found.to]);
}

function partNames(root: PlacedMap): readonly Offer[] {
  return namesBelow(root, 'parts').map((offer) => ({ ...offer, text: `${offer.label}: ` }));
}

function conditionNames(root: PlacedMap, part: string): readonly Offer[] {
  const parts = root.entries.get('parts')?.value;
  const found = parts?.kind === 'map' ? parts.entries.get(part)?.value : undefined;
  return found?.kind === 'map' ? namesBelow(found, 'conditions') : [];
}

function namesBelow(map: PlacedMap, section: string): readonly Offer[] {
  const node = map.entries.get(section)?.value;
  if (node?.kind !== 'map') return [];
  return [...node.entries].map(([label, { value }]): Offer => {
    const said = value.kind === 'map' ? value.entries.get('label')?.value : undefined;
    return { label, kind: 'word', detail: said?.kind === 'scalar' ? said.text : null };
  });
}

/** The keys that stand under a path already. */
function keysAt(text: string, path: readonly string[]): ReadonlySet<string> {
  let node: unknown = readYaml(text).root;
  for (const step of path) {
    const here = node as PlacedMap | null | undefined;
    if (here?.kind !== 'map' || step === '-') return new Set();
    node = here.entries.get(step)?.value;
  }
  const here = node as PlacedMap | null | undefined;
  return here?.kind === 'map' ? new Set(here.entries.keys()) : new Set();
}
