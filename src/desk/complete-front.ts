import type { KeyWords } from '../generated/sheet-words.ts';
import { type KeyBeside, keysBeside, keysOfKind } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import type { Source } from '../sheet/model.ts';
import { scalar } from '../text/index.ts';
import { valueOffers } from './complete-values.ts';
import type { FrontCursor } from './front-cursor.ts';
import { type Offer, wordsAt } from './front-words.ts';
import type { Completion, DeskDocument } from './model.ts';
import { otherSources } from './used.ts';

/** What may stand at the cursor in the front matter, the likeliest first. */
export function frontCompletions(
  document: DeskDocument,
  cursor: FrontCursor,
): readonly Completion[] {
  const here = { ...cursor, part: isBareItem(cursor, wordsAt) ? ('value' as const) : cursor.part };
  const offers = here.part === 'key' ? keyOffers(document, here) : valueOffers(document, here);
  return offers.map((offer) => placed(document.text, here, offer));
}

/** An item of a list of names, which by its looks could be a key as well. */
export function isBareItem(
  { path, part, hasColon }: FrontCursor,
  wordsOf: (path: readonly string[]) => KeyWords | null,
): boolean {
  if (part !== 'key' || hasColon || path.at(-1) !== '-') return false;
  const words = wordsOf(path);
  return words !== null && words.any === null && Object.keys(words.keys).length === 0;
}

/** What is offered, in its place at the cursor. */
export function placed(text: string, cursor: FrontCursor, offer: Offer): Completion {
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
  const isSetting = path[0] === 'settings' && path.length === 2;
  const beside = isSetting ? besideSetting(document, path[1] ?? '') : [];
  const must = beside.map(({ key }) => key);
  const strange = isSetting ? keysOfOthers(document) : new Set<string>();
  const named = path[0] === 'unit' && path.length === 1 ? unitKeysOf(kind) : [];
  const known = Object.entries(words.keys).map(([key, { explain, keys, items, any }]) => ({
    label: key,
    kind: 'key' as const,
    detail: words.required.includes(key) ? 'needed' : null,
    explain,
    text: keyText(key, inFlow, pad, Object.keys(keys).length > 0 || any !== null, items !== null),
  }));
  const first = beside.map(
    ({ key, needed, words: said }): Offer => ({
      label: key,
      kind: 'key',
      detail: needed ? 'needed for this setting' : 'this setting is worked with it',
      explain:
        words.keys[key]?.explain ?? (said.length === 0 ? null : `such as ${said.join(', ')}`),
      text: `${key}: `,
    }),
  );
  const rest = known.filter(({ label }) => !must.includes(label) && !strange.has(label));
  return left([
    ...first,
    ...rest.filter(({ detail }) => detail !== null),
    ...named.filter(({ label }) => !Object.hasOwn(words.keys, label)),
    ...rest.filter(({ detail }) => detail === null),
  ]);
}

/** A key with its colon, and where mappings stand below keys, the start of the next line. */
export function keyText(
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

function besideSetting({ sheet: { kind } }: DeskDocument, name: string): readonly KeyBeside[] {
  const setting = kind?.settingNamed(name);
  return kind && setting ? keysBeside(kind, setting) : [];
}

/** Keys that some kind has use for, and the sheet's own has not. */
function keysOfOthers({ sheet: { kind }, project }: DeskDocument): ReadonlySet<string> {
  if (kind === null) return new Set();
  const own = keysOfKind(kind);
  const all = [...project.context.kinds.values()].flatMap((each) => [...keysOfKind(each)]);
  return new Set(all.filter((key) => !own.has(key)));
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
