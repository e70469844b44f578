import type { MappingData } from '../generated/mapping-data.ts';

/** What a column of a list says of a unit besides its settings. */
export const fieldNames = [
  'maker',
  'model',
  'part-numbers',
  'features',
  'title',
  'marque',
  'fits-model',
  'years',
  'note',
  'source',
  'source-year',
  'page',
] as const;
export type Field = (typeof fieldNames)[number];

/** What a column says where every row is one setting. */
export const rowFieldNames = ['setting', 'value', 'also', 'measure'] as const;
export type RowField = (typeof rowFieldNames)[number];

/** Where a column's cells go. */
export type Target =
  | { readonly to: 'nothing' }
  | { readonly to: 'field'; readonly field: Field }
  | { readonly to: 'value' | 'also'; readonly setting: string }
  /** Words beside the value, under a key of the setting. */
  | { readonly to: 'said'; readonly setting: string; readonly key: string }
  /** A size or thread of the unit itself. */
  | { readonly to: 'unit'; readonly key: string }
  /** Yes or no: whether the unit has a feature. */
  | { readonly to: 'feature'; readonly feature: string }
  | { readonly to: 'row'; readonly field: RowField }
  /** Words beside the value of the row's setting. */
  | { readonly to: 'row-said'; readonly key: string };

export interface ColumnMapping {
  /** 1-based. */
  readonly column: number;
  /** The head as it stood when the mapping was made; another one there later is refused. */
  readonly head: string;
  readonly to: Target;
  /** Written behind a bare number, or around it where it has `{}`; null where cells carry their own. */
  readonly unit: string | null;
}

/** How a list is read: proposed by the tool, settled by the editor. */
export interface Mapping {
  /** The tab; null for a CSV file, and for the first of a spreadsheet that is not hidden. */
  readonly table: string | null;
  /** The row of heads, 1-based. */
  readonly heads: number;
  /** First and last row that is read; null for the one below the heads, and for the end. */
  readonly first: number | null;
  readonly last: number | null;
  readonly layout: MappingData['layout'];
  readonly kind: string;
  /** Of all units, where no column says it. */
  readonly maker: string | null;
  /** Of all units, besides what columns say. */
  readonly features: readonly string[];
  /** The list as a source; a null title stands for the names of file and tab. */
  readonly source: {
    readonly title: string | null;
    readonly kind: string | null;
    readonly year: string | null;
  };
  /** Whether a merged cell holds for all that it covers, or is listed. */
  readonly merged: NonNullable<MappingData['merged']>;
  readonly hidden: NonNullable<MappingData['hidden']>;
  /** Words beside a setting that hold for every unit, by setting and key. */
  readonly says: ReadonlyMap<string, ReadonlyMap<string, string>>;
  readonly columns: readonly ColumnMapping[];
}

/** Whether several columns may go there: any number of them say features, or nothing. */
export function isShared(target: Target): boolean {
  return target.to === 'nothing' || (target.to === 'field' && target.field === 'features');
}

/** A target as the mapping file writes it: `maker`, `float-level also`, `unit throttle-bore`. */
export function targetText(target: Target): string {
  switch (target.to) {
    case 'nothing':
      return 'nothing';
    case 'field':
    case 'row':
      return target.field;
    case 'value':
      return target.setting;
    case 'also':
      return `${target.setting} also`;
    case 'said':
      return `${target.setting} ${target.key}`;
    case 'unit':
      return `unit ${target.key}`;
    case 'feature':
      return `has ${target.feature}`;
    case 'row-said':
      return `says ${target.key}`;
  }
}
