import { keyWords } from '../desk/index.ts';
import type { DeskDocument } from '../desk/model.ts';
import { planDraft } from '../import/index.ts';
import { type KeyBeside, keysBeside } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import { withEquivalents } from '../sheet/index.ts';
import type { PlacedSize, Setting } from '../sheet/model.ts';
import { capitalized, nodeAt, type PlacedMap, type PlacedNode } from '../text/index.ts';
import type { FormField, FormGroup, FormModel, FormPath } from './form-model.ts';

/** The front matter of a sheet as a form; null where it has none that can be read. */
export function formModel(document: DeskDocument): FormModel | null {
  const { front, kind } = document.sheet;
  if (front === null) return null;
  const form = new Form(document, front);
  return {
    sheet: form.sheet(),
    unit: form.unit(kind),
    sources: form.sources(),
    nextSource: form.nextSource(),
    settings: form.settings(kind),
    more: form.more(kind),
  };
}

type SettingPath = (key: string | number, ...more: (string | number)[]) => FormPath;

const statuses = ['draft', 'proof', 'released'];

class Form {
  readonly #document: DeskDocument;
  readonly #front: PlacedMap;

  constructor(document: DeskDocument, front: PlacedMap) {
    this.#document = document;
    this.#front = front;
  }

  sheet(): FormGroup {
    return {
      id: 'sheet',
      title: 'The sheet',
      explain: null,
      there: true,
      fields: [
        this.#field(['title'], 'Title', 'words', { asked: true }),
        this.#field(['status'], 'Status', 'choice', { choices: statuses, asked: true }),
        this.#field(['revision'], 'Revision', 'number', { asked: true }),
        this.#field(['date'], 'Date', 'words', { asked: true }),
      ],
    };
  }

  unit(kind: Kind | null): FormGroup {
    const { unit } = this.#document.sheet;
    const sizes = [...(kind?.dimensionsOfUnit.keys() ?? [])];
    const threads = [...(kind?.threadsOfUnit ?? [])];
    const own = new Set([...sizes, ...threads]);
    const there = [...unit.sizes.keys(), ...unit.threads.keys()].filter((key) => !own.has(key));
    const features = [...(kind?.features.values() ?? [])];
    return {
      id: 'unit',
      title: 'The unit',
      explain: null,
      there: true,
      fields: [
        this.#field(['unit', 'kind'], 'Kind', 'shown', { asked: true }),
        this.#field(['unit', 'maker'], 'Maker', 'words', { asked: true }),
        this.#field(['unit', 'model'], 'Model', 'words', { asked: true }),
        {
          ...this.#field(['unit', 'features'], 'Features', 'flags', { asked: true }),
          choices: features.map(({ name, label }) => ({ value: name, label })),
        },
        ...[...sizes, ...there].map((key) =>
          this.#field(['unit', key], spoken(key), 'size', { size: unit.sizes.get(key) ?? null }),
        ),
        ...threads.map((key) => this.#field(['unit', key], spoken(key), 'words', {})),
      ],
    };
  }

  sources(): readonly FormGroup[] {
    const node = this.#front.entries.get('sources')?.value;
    if (node?.kind !== 'map') return [];
    return [...node.entries.keys()].map((name) => ({
      id: `source-${name}`,
      title: name,
      explain: null,
      there: true,
      fields: [
        this.#field(['sources', name, 'title'], 'Title', 'words', { asked: true }),
        this.#field(['sources', name, 'kind'], 'Kind', 'choice', {
          choices: ['manual', 'bulletin', 'leaflet', 'parts-list', 'book', 'letter', 'measured'],
        }),
        this.#field(['sources', name, 'year'], 'Year', 'number', {}),
        this.#field(['sources', name, 'units'], 'Units measured', 'number', {}),
      ],
    }));
  }

  nextSource(): string {
    const { sources } = this.#document.sheet;
    let number = 1;
    while (sources.has(`s${number}`)) number += 1;
    return `s${number}`;
  }

  settings(kind: Kind | null): readonly FormGroup[] {
    const { sheet } = this.#document;
    const there = new Map([...sheet.settings.values()].map((each) => [each.id, each]));
    const features = sheet.unit.features.flatMap(({ known }) => known?.name ?? []);
    const asked = kind === null ? [] : planDraft(kind, features, [...there.keys()]).settings;
    const names = [...new Set([...asked, ...there.keys()])];
    return names.map((name) => this.#setting(name, there.get(name), kind));
  }

  more(kind: Kind | null): FormModel['more'] {
    const shown = new Set(this.settings(kind).map(({ id }) => id));
    const features = this.#document.sheet.unit.features.flatMap(({ known }) => known ?? []);
    const left = [...(kind?.settings.values() ?? [])]
      .filter(({ name }) => !shown.has(`setting-${name}`))
      .map(({ name, label }) => {
        const of = features.find(({ settings }) => settings.flat().includes(name));
        return { name, label: of === undefined ? label : `${label} (goes with ${of.label})`, of };
      });
    // What the unit's own features speak of comes first.
    return [...left.filter(({ of }) => of), ...left.filter(({ of }) => !of)].map(
      ({ name, label }) => ({ name, label }),
    );
  }

  #setting(id: string, setting: Setting | undefined, kind: Kind | null): FormGroup {
    const known = kind?.settings.get(id);
    const beside = kind && known ? keysBeside(kind, known) : [];
    const hints = new Map(beside.map(({ key, words }) => [key, words.join(' or ') || null]));
    const name = setting?.name.value ?? id;
    const at = (key: string | number, ...more: (string | number)[]): FormPath => [
      'settings',
      name,
      key,
      ...more,
    ];
    const must = (known?.mustSay ?? []).filter(
      (key) => !(known?.saidBy.get(key) ?? []).some((other) => setting?.said.has(other)),
    );
    const said = [...(setting?.said.keys() ?? [])].filter(
      (key) => !must.includes(key) && key !== 'at' && key !== 'note',
    );
    const conditions = known?.conditions ?? [];
    const also = setting?.also ?? [];
    const inList = nodeAt(this.#front, at('from'))?.kind === 'list';
    const from = setting?.from ?? [];
    const cited = inList ? from.map((_, index) => at('from', index)) : [at('from')];
    return {
      id: `setting-${id}`,
      title: known?.label ?? spoken(name),
      explain: known?.explain ?? null,
      there: setting !== undefined,
      fields: [
        this.#field(at('value'), 'Value', 'size', {
          asked: true,
          size: setting?.value ?? null,
          choices: [...conditions, 'not stated'],
        }),
        ...also.map((size, index) =>
          this.#field(at('also', index), 'Also written', 'size', { size }),
        ),
        ...must.map((key) =>
          this.#field(at(key), spoken(key), 'words', { asked: true, hint: hints.get(key) }),
        ),
        ...(must.includes('at') || setting?.at == null
          ? []
          : [this.#field(at('at'), 'Measured at', 'words', {})]),
        ...(setting?.gauge
          ? [this.#field(at('gauge'), 'Gauge', 'size', { size: setting.gauge })]
          : []),
        ...said.map((key) => this.#field(at(key), spoken(key), 'words', { hint: hints.get(key) })),
        ...cited.map((path) =>
          this.#field(path, 'Source', 'citation', {
            asked: true,
            choices: [...this.#document.sheet.sources.keys()],
          }),
        ),
        ...this.#dissents(at, setting),
        ...(setting === undefined ? [] : this.#offered(at, setting, beside)),
        this.#field(at('note'), 'Note', 'words', {}),
      ],
    };
  }

  /** What other papers say of it. */
  #dissents(at: SettingPath, setting: Setting | undefined): readonly FormField[] {
    const node = nodeAt(this.#front, at('but'));
    const count = node?.kind === 'list' ? node.items.length : 0;
    if (setting === undefined || (node !== null && node.kind !== 'list')) return [];
    if (setting.statements.length > 0) return [];
    const sources = [...this.#document.sheet.sources.keys()];
    return Array.from({ length: count + 1 }, (_, index) => {
      const offer = index < count ? null : 'what another paper says';
      const size = setting.but[index]?.value ?? null;
      return [
        this.#field(at('but', index, 'value'), 'Another paper says', 'size', { size, offer }),
        this.#field(at('but', index, 'from'), 'Where it says so', 'citation', {
          choices: sources,
          offer,
        }),
      ];
    }).flat();
  }

  /** What may be said of it besides and is not. */
  #offered(at: SettingPath, setting: Setting, beside: readonly KeyBeside[]): readonly FormField[] {
    const more = beside.filter(({ key, needed }) => !needed && !setting.said.has(key));
    const sources = [...this.#document.sheet.sources.keys()];
    const cited = setting.from.length;
    return [
      this.#field(at('also', setting.also.length), 'Also written', 'size', {
        offer: 'how it is also written',
      }),
      ...(setting.gauge === null && setting.go === null
        ? [this.#field(at('gauge'), 'Gauge', 'size', { offer: 'its gauge' })]
        : []),
      ...more.map(({ key, words }) =>
        this.#field(at(key), spoken(key), 'words', {
          hint: words.join(' or ') || null,
          offer: spoken(key).toLowerCase(),
        }),
      ),
      ...(setting.at === null && !beside.some(({ key }) => key === 'at')
        ? [this.#field(at('at'), 'Measured at', 'words', { offer: 'where it is measured' })]
        : []),
      ...(cited === 0
        ? []
        : [
            this.#field(at('from', cited), 'Source too', 'citation', {
              choices: sources,
              offer: 'one more source that says the same',
            }),
          ]),
    ];
  }

  #field(
    path: FormPath,
    label: string,
    entry: FormField['entry'],
    more: {
      asked?: boolean;
      choices?: readonly string[];
      size?: PlacedSize | null;
      hint?: string | null | undefined;
      offer?: string | null;
    },
  ): FormField {
    const node = nodeAt(this.#front, path);
    const isText = node === null || node.kind === 'scalar' || node.kind === 'null';
    const isFlags =
      entry === 'flags' && (node === null || (node.kind === 'list' && node.items.every(isScalar)));
    const readAs = more.size == null ? '' : inOtherForms(more.size);
    return {
      path,
      label,
      explain: keyWords(path)?.explain ?? null,
      entry: isText || isFlags ? entry : 'shown',
      value: node === null || node.kind === 'null' ? null : textOf(node, this.#document.text),
      values: node?.kind === 'list' ? node.items.filter(isScalar).map(({ text }) => text) : [],
      choices: (more.choices ?? []).map((value) => ({ value, label: value })),
      asked: more.asked === true,
      hint: more.hint ?? exampleOf(path, entry),
      offer: more.offer ?? null,
      readAs: readAs === '' ? null : readAs,
      span: node?.span ?? null,
    };
  }
}

/** An entry as the schema has it for an example; null for sizes, which say what they are read as. */
function exampleOf(path: FormPath, entry: FormField['entry']): string | null {
  if (entry !== 'words') return null;
  const [example] = keyWords(path)?.examples ?? [];
  return example === undefined ? null : `such as ${example}`;
}

/** A size in inches and millimeters, as far as they are not what is written. */
function inOtherForms(size: PlacedSize): string {
  return withEquivalents(size)
    .slice(size.text.length)
    .trim()
    .replace(/^\((.*)\)$/, '$1');
}

function isScalar(node: PlacedNode): node is PlacedNode & { kind: 'scalar' } {
  return node.kind === 'scalar';
}

function textOf(node: PlacedNode, text: string): string {
  return node.kind === 'scalar' ? node.text : text.slice(node.span.start, node.span.end);
}

/** A key as words: `cam-step` is `Cam step`. */
function spoken(key: string): string {
  const words = key.replaceAll('-', ' ');
  return capitalized(words);
}
