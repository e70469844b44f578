import { checkNamed } from '../checks/index.ts';
import { type KeyWords, sheetWords } from '../generated/sheet-words.ts';
import type { Kind } from '../kinds/model.ts';
import type { Setting, Source } from '../sheet/model.ts';
import { scalar } from '../text/index.ts';
import { sizeCompletions } from './complete-sizes.ts';
import type { FrontCursor } from './front-cursor.ts';
import type { Completion, CompletionKind, DeskDocument } from './model.ts';
import { citationsOf, otherSources } from './used.ts';

/** What may be offered, before it is put in its place. */
export interface Offer {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly detail?: string | null;
  readonly explain?: string | null;
  /** The text to write; the label, if absent. */
  readonly text?: string;
  /** Where in the text something is to be written yet. */
  readonly blank?: readonly [number, number];
}

/** What may stand at the cursor in the front matter, the likeliest first. */
export function frontCompletions(
  document: DeskDocument,
  cursor: FrontCursor,
): readonly Completion[] {
  const here = { ...cursor, part: isBareItem(cursor) ? ('value' as const) : cursor.part };
  const offers = here.part === 'key' ? keyOffers(document, here) : valueOffers(document, here);
  return offers.map((offer) => placed(document, here, offer));
}

/** An item of a list of names, which by its looks could be a key as well. */
function isBareItem({ path, part, hasColon }: FrontCursor): boolean {
  if (part !== 'key' || hasColon || path.at(-1) !== '-') return false;
  const words = wordsAt(path);
  return words !== null && words.any === null && Object.keys(words.keys).length === 0;
}

function placed({ text }: DeskDocument, cursor: FrontCursor, offer: Offer): Completion {
  const { span, part, hasColon } = cursor;
  let written = offer.text ?? offer.label;
  let blank = offer.blank ? { start: offer.blank[0], end: offer.blank[1] } : null;
  if (part === 'key' && hasColon) {
    // The colon and what stands behind it stay as they are.
    written = offer.label;
    blank = null;
  } else if (part === 'value' && text[span.start - 1] === ':') {
    written = ` ${written}`;
    if (blank) blank = { start: blank.start + 1, end: blank.end + 1 };
  }
  return {
    label: offer.label,
    kind: offer.kind,
    detail: offer.detail ?? null,
    explain: offer.explain ?? null,
    edit: { span, text: written },
    blank,
  };
}

/** What the schema says of the place that a path leads to; null where it says nothing. */
export function wordsAt(path: readonly string[]): KeyWords | null {
  let here: KeyWords | null = sheetWords;
  for (const step of path) {
    if (here === null) return null;
    if (step === '-') {
      // A single one may stand where a list may.
      here = here.items ?? here;
    } else here = (Object.hasOwn(here.keys, step) ? here.keys[step] : here.any) ?? null;
  }
  return here;
}

/** What the schema says of an entry of the front matter, its path with indexes in lists; null for nothing. */
export function keyWords(path: readonly (string | number)[]): KeyWords | null {
  return wordsAt(path.map((step) => (typeof step === 'number' ? '-' : step)));
}

function keyOffers(document: DeskDocument, cursor: FrontCursor): readonly Offer[] {
  const { sheet } = document;
  const { kind } = sheet;
  const { path, indent, inFlow } = cursor;
  const there = keysAt(document, path);
  const left = (offers: readonly Offer[]) => offers.filter(({ label }) => !there.has(label));
  const pad = ' '.repeat(indent + 2);
  if (path.length === 1 && path[0] === 'settings') {
    return left(
      [...(kind?.settings.values() ?? [])].map((setting) => {
        const head = inFlow ? `${setting.name}: { value: ` : `${setting.name}:\n${pad}value: `;
        const said = setting.mustSay.map((key) => (inFlow ? `, ${key}: ` : `\n${pad}${key}: `));
        const from = inFlow ? ', from: }' : `\n${pad}from: `;
        return {
          label: setting.name,
          kind: 'setting' as const,
          detail: setting.label,
          explain: setting.explain,
          text: `${head}${said.join('')}${from}`,
          blank: [head.length, head.length] as const,
        };
      }),
    );
  }
  if (path.length === 1 && path[0] === 'work') {
    return left(
      [...(kind?.operations.values() ?? [])].map(({ name, label, explain }) => ({
        label: name,
        kind: 'key' as const,
        detail: label,
        explain,
        text: `${name}:\n${pad}`,
      })),
    );
  }
  if (path.length === 1 && path[0] === 'sources') {
    return left(otherSources(document).map((source) => sourceOffer(source)));
  }
  if (path.at(-1) === 'needs' || path.at(-1) === 'leaves') {
    return left(
      [...(kind?.parts.values() ?? [])].map(({ name, label }) => ({
        label: name,
        kind: 'key' as const,
        detail: label,
        text: `${name}: `,
      })),
    );
  }
  const words = wordsAt(path);
  if (words === null) return [];
  const must = path[0] === 'settings' ? mustSay(document, path[1] ?? '') : [];
  const named = path[0] === 'unit' && path.length === 1 ? unitKeysOf(kind) : [];
  const known = Object.entries(words.keys).map(([key, { explain, keys, items, any }]) => ({
    label: key,
    kind: 'key' as const,
    detail: words.required.includes(key) ? 'needed' : null,
    explain,
    text: keyText(key, inFlow, pad, Object.keys(keys).length > 0 || any !== null, items !== null),
  }));
  const first = must.flatMap((key): Offer[] => [
    {
      label: key,
      kind: 'key',
      detail: 'needed for this setting',
      explain: words.keys[key]?.explain ?? null,
      text: `${key}: `,
    },
  ]);
  const rest = [...known].filter(({ label }) => !must.includes(label));
  return left([
    ...first,
    ...rest.filter(({ detail }) => detail !== null),
    ...named.filter(({ label }) => !Object.hasOwn(words.keys, label)),
    ...rest.filter(({ detail }) => detail === null),
  ]);
}

/** A key with its colon, and where mappings stand below keys, the start of the next line. */
function keyText(
  key: string,
  inFlow: boolean,
  pad: string,
  isMap: boolean,
  isList: boolean,
): string {
  if (inFlow || (!isMap && !isList)) return `${key}: `;
  const below = ['fits', 'accept', 'statements', 'but'].includes(key) ? `\n${pad}- ` : '';
  return isList ? `${key}:${below || ' '}` : `${key}:\n${pad}`;
}

function unitKeysOf(kind: Kind | null): readonly Offer[] {
  if (kind === null) return [];
  return [
    ...[...kind.dimensionsOfUnit.keys()].map((label) => ({
      label,
      kind: 'key' as const,
      detail: 'a size of the unit',
      text: `${label}: `,
    })),
    ...[...kind.threadsOfUnit].map((label) => ({
      label,
      kind: 'key' as const,
      detail: 'a thread of the unit',
      text: `${label}: `,
    })),
  ];
}

function sourceOffer(source: Source): Offer {
  const described = [...source.described].map(([key, { value }]) => `${key}: ${scalar(value)}`);
  return {
    label: source.name.value,
    kind: 'source',
    detail: source.title?.value ?? null,
    explain: 'as another sheet of the project lists it',
    text: `${source.name.value}: { ${described.join(', ')} }`,
  };
}

function mustSay({ sheet }: DeskDocument, name: string): readonly string[] {
  return sheet.kind?.settingNamed(name)?.mustSay ?? [];
}

/** The keys that stand under a path already. */
function keysAt({ sheet }: DeskDocument, path: readonly string[]): ReadonlySet<string> {
  let node: { readonly kind: string } | undefined = sheet.front ?? undefined;
  for (const step of path) {
    const here = node as NonNullable<typeof sheet.front> | undefined;
    // Which item of a list it is, no path says.
    if (here?.kind !== 'map' || step === '-') return new Set();
    node = here.entries.get(step)?.value;
  }
  const here = node as NonNullable<typeof sheet.front> | undefined;
  return here?.kind === 'map' ? new Set(here.entries.keys()) : new Set();
}

function valueOffers(document: DeskDocument, cursor: FrontCursor): readonly Offer[] {
  const { sheet, project } = document;
  const { kind } = sheet;
  const path = cursor.path.filter((step) => step !== '-');
  const [top, name = ''] = path;
  const key = path.at(-1) ?? '';
  if (key === 'from' || key === 'follows') return citationOffers(document);
  if (top === 'unit' && name === 'kind') {
    return [...project.context.kinds.values()].map((each) => ({
      label: each.name,
      kind: 'word',
      detail: each.title,
    }));
  }
  if (top === 'unit' && name === 'features') return featureOffers(document);
  if (top === 'based-on' || name === 'interchanges') return sheetOffers(document);
  if (top === 'accept') return acceptOffers(document, key);
  if (top === 'work') {
    const offers = workOffers(kind, path);
    if (offers.length > 0) return offers;
  }
  const words = wordsAt(cursor.path);
  if (words !== null && words.choices.length > 0) {
    return words.choices.map((label) => ({ label, kind: 'word', explain: words.explain }));
  }
  const typed = document.text.slice(cursor.span.start, cursor.span.end);
  if (top === 'settings' && path.length >= 2) {
    const setting = settingAt(document, name);
    const known = setting?.known ?? kind?.settingNamed(name) ?? null;
    const isSize = ['value', 'also', 'gauge', 'go', 'no-go', 'travel', 'pressure'].includes(key);
    if (isSize || path.includes('places')) {
      return sizeCompletions(document, { typed, key, setting, known });
    }
    return [
      ...saidElsewhere(document, name, key),
      ...(words?.examples ?? []).map((label) => ({ label, kind: 'word' as const })),
    ].filter(unlike());
  }
  if (top === 'unit' && (kind?.dimensionsOfUnit.has(name) ?? false)) {
    const dimensions = kind?.dimensionsOfUnit.get(name) ?? [];
    return sizeCompletions(document, { typed, key, setting: null, known: null, dimensions });
  }
  return (words?.examples ?? [])
    .filter((label) => top === 'sources' && key === 'kind' && label !== '')
    .map((label) => ({ label, kind: 'word' as const }));
}

function settingAt({ sheet }: DeskDocument, name: string): Setting | null {
  return sheet.settings.get(name) ?? null;
}

/** A filter that lets each label pass once. */
function unlike(): (offer: Offer) => boolean {
  const seen = new Set<string>();
  return ({ label }) => !seen.has(label) && seen.add(label) !== null;
}

/** What other settings and sheets say under the same key, the same setting's first. */
function saidElsewhere(document: DeskDocument, name: string, key: string): readonly Offer[] {
  const own: Offer[] = [];
  const rest: Offer[] = [];
  const id = document.sheet.settings.get(name)?.id ?? name;
  const gather = (each: DeskDocument) => {
    for (const setting of each.sheet.settings.values()) {
      const said = key === 'at' ? setting.at?.value : setting.said.get(key)?.value;
      if (said === undefined || said === '') continue;
      const offer: Offer = { label: said, kind: 'word', text: scalar(said) };
      (setting.id === id ? own : rest).push(offer);
    }
  };
  for (const other of document.project.others?.() ?? []) gather(other);
  gather(document);
  return [...own, ...rest].filter(unlike()).slice(0, 20);
}

function citationOffers(document: DeskDocument): readonly Offer[] {
  const { sheet } = document;
  const sources = [...sheet.sources.values()];
  const shared = document.project.context.sharedSources ?? new Map();
  const names = new Set(sources.map(({ name }) => name.value));
  const offers: Offer[] = sources.map((source) => ({
    label: source.name.value,
    kind: 'source',
    detail: source.title?.value ?? null,
    explain: sourceWords(source),
    text: source.kind?.value === 'measured' ? source.name.value : `${source.name.value} p. `,
  }));
  for (const [name, described] of shared) {
    if (!names.has(name)) {
      const detail = described.title ?? null;
      offers.push({
        label: name,
        kind: 'source',
        detail,
        explain: 'from `sources.yaml`',
        text: `${name} p. `,
      });
    }
  }
  const pages = citationsOf(sheet).filter(({ page }) => page !== null);
  return [
    ...offers,
    ...pages.map(({ id, page }) => ({
      label: `${id} ${page}`,
      kind: 'source' as const,
      detail: sheet.sources.get(id)?.title?.value ?? null,
    })),
  ].filter(unlike());
}

/** What is said of a source, on one line. */
export function sourceWords(source: Source): string {
  return [...source.described].map(([key, { value }]) => `${key} ${value}`).join('; ');
}

function featureOffers({ sheet }: DeskDocument): readonly Offer[] {
  const { kind, unit } = sheet;
  const there = new Set(unit.features.map(({ id }) => id));
  return [...(kind?.features.values() ?? [])]
    .filter(({ name }) => !there.has(name))
    .map((feature) => {
      const barred = feature.excludes.find((each) => there.has(each));
      return {
        label: feature.name,
        kind: 'feature',
        detail: barred === undefined ? feature.label : `not beside ${barred}`,
        explain: feature.explain,
      };
    });
}

function sheetOffers(document: DeskDocument): readonly Offer[] {
  const own = document.sheet.id?.value;
  const names = document.project.context.family?.names() ?? [];
  return names.filter((name) => name !== own).map((label) => ({ label, kind: 'sheet' }));
}

function acceptOffers(document: DeskDocument, key: string): readonly Offer[] {
  const open = document.findings.filter(
    ({ severity, accepted }) => severity !== 'error' && accepted === null,
  );
  if (key === 'finding') {
    return open
      .map((finding) => ({
        label: finding.check,
        kind: 'finding' as const,
        detail: finding.subject,
        explain: `${finding.message}. ${checkNamed(finding.check)?.explain ?? ''}`,
      }))
      .filter(unlike());
  }
  if (key !== 'at') return [];
  return open
    .flatMap(({ subject, message }): Offer[] =>
      subject === null ? [] : [{ label: subject, kind: 'word', explain: message }],
    )
    .filter(unlike());
}

function workOffers(kind: Kind | null, path: readonly string[]): readonly Offer[] {
  if (kind === null) return [];
  const key = path.at(-1) ?? '';
  const offers = (all: Iterable<{ readonly name: string; readonly label: string }>): Offer[] =>
    [...all].map(({ name, label }) => ({ label: name, kind: 'word', detail: label }));
  if (key === 'after') return offers(kind.operations.values());
  if (key === 'disturbs' || key === 'settings') return offers(kind.settings.values());
  if (key === 'hazards') return offers(kind.hazards.values());
  if (key === 'needs') return offers(kind.parts.values());
  const above = path.at(-2);
  if (above === 'needs' || above === 'leaves') {
    const conditions = [...(kind.parts.get(key)?.conditions.values() ?? [])];
    return conditions.map(({ name, says }) => ({ label: name, kind: 'word', detail: says }));
  }
  return [];
}
