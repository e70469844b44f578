import type { PlacedSize, Setting, Sheet } from './model.ts';

/** What a sheet says of itself and its unit, as plain data. */
export interface PlainHead {
  readonly id: string;
  readonly title: string;
  /** The kind's own name, or as written where there is no such kind. */
  readonly kind: string | null;
  readonly revision: number | null;
  readonly status: string | null;
  readonly date: string | null;
  readonly maker: string | null;
  readonly model: string | null;
  readonly partNumbers: readonly string[];
  /** By the kind's names. */
  readonly features: readonly string[];
}

/** A size of a setting, and where it holds: `primary`, `left` ..., a curve's station `800 rpm`; null where one value serves all. */
export interface PlainSize {
  readonly place: string | null;
  readonly size: PlacedSize;
}

/** What a sheet says of a setting: texts as written, nothing converted, no place in the file but in its sizes. */
export interface PlainSetting {
  readonly name: string;
  readonly label: string;
  /** The value, then those of its places. */
  readonly sizes: readonly PlainSize[];
  readonly also: readonly string[];
  /** Everything else that is said beside it, key to words: what the format names first, then the rest. */
  readonly said: Readonly<Record<string, string>>;
  readonly from: readonly string[];
  readonly but: readonly PlainDissent[];
  readonly note: string | null;
}

/** What another source says and the sheet does not follow. */
export interface PlainDissent {
  readonly value: PlacedSize | null;
  readonly from: string | null;
  readonly ruling: string | null;
}

/** What a sheet says of itself and its unit. A sheet without a name goes by its file. */
export function plainHead(sheet: Sheet): PlainHead {
  const { unit } = sheet;
  return {
    id: sheet.id?.value ?? sheet.file,
    title: sheet.title?.value ?? '',
    revision: sheet.revision?.value ?? null,
    status: sheet.status?.value ?? null,
    kind: sheet.kind?.name ?? unit.kind?.value ?? null,
    date: sheet.date?.value ?? null,
    maker: unit.maker?.value ?? null,
    model: unit.model?.value ?? null,
    partNumbers: unit.partNumbers.map((part) => part.value),
    features: unit.features.map(({ id }) => id),
  };
}

/** What a sheet says of a setting: comparison, export and the checks across sheets read it here. */
export function plainSetting(setting: Setting): PlainSetting {
  const named = {
    gauge: setting.gauge?.text,
    go: setting.go?.text,
    'no-go': setting.noGo?.text,
    travel: setting.travel?.text,
    at: setting.at?.value,
    'places-differ': setting.placesDiffer?.value,
    rounding: setting.rounding?.value,
  };
  const free = [...setting.said].map(([key, text]) => [key, text.value] as const);
  const said = [...Object.entries(named), ...free].filter(([, text]) => text !== undefined);
  return {
    name: setting.id,
    label: setting.known?.label ?? setting.id,
    sizes: [
      ...(setting.value ? [{ place: null, size: setting.value }] : []),
      ...[...setting.places].map(([place, size]) => ({ place, size })),
      ...setting.rows.flatMap(({ station, value }) =>
        value ? [{ place: station?.text ?? '', size: value }] : [],
      ),
    ],
    also: setting.also.map(({ text }) => text),
    said: Object.fromEntries(said) as Record<string, string>,
    from: setting.from.map(citationText),
    but: setting.but.map(({ value, from, ruling }) => ({
      value,
      from: from && citationText(from),
      ruling: ruling?.value ?? null,
    })),
    note: setting.note?.value ?? null,
  };
}

/** A source with its page, as the sheet names both: `m48 p. 31`. */
function citationText({ id, page }: Setting['from'][number]): string {
  return page === null ? id : `${id} ${page}`;
}
