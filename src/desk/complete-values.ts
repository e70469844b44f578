import { checkNamed } from '../checks/index.ts';
import type { Kind } from '../kinds/model.ts';
import type { Setting, Source } from '../sheet/model.ts';
import { scalar } from '../text/index.ts';
import { sizeCompletions } from './complete-sizes.ts';
import type { FrontCursor } from './front-cursor.ts';
import { type Offer, wordsAt } from './front-words.ts';
import type { DeskDocument } from './model.ts';
import { citationsOf } from './used.ts';

/** What may stand at the cursor as a value, before it is put in its place. */
export function valueOffers(document: DeskDocument, cursor: FrontCursor): readonly Offer[] {
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
