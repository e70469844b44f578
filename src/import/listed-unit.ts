/** A paper that a row of a list names. */
export interface NamedPaper {
  readonly title: string;
  readonly year: string | null;
  readonly page: string | null;
}

/** One setting as a list gives it. */
export interface GivenSetting {
  /** The kind's name. */
  readonly name: string;
  /** As the cell has it, with its column's unit where it was bare; null where it is to be filled in. */
  value: string | null;
  /** Why it is to be filled in; null where it is not, or where the list says nothing of it. */
  unread: string | null;
  /** The cell of the value: `D17`; null where the list has none. */
  cell: string | null;
  readonly also: string[];
  /** Words beside the value, by key. */
  readonly says: Map<string, string>;
  paper: NamedPaper | null;
}

/** One unit as a list gives it. */
export interface ListedUnit {
  /** The rows that speak of it, 1-based. */
  readonly rows: number[];
  /** The cell of its model. */
  readonly cell: { readonly row: number; readonly column: number };
  readonly maker: string;
  readonly model: string;
  readonly title: string | null;
  readonly partNumbers: readonly string[];
  /** In the kind's order. */
  readonly features: readonly string[];
  readonly fits: {
    readonly marque: string;
    readonly model: string | null;
    readonly years: string | null;
  } | null;
  /** Sizes and threads of the unit itself, by key, as written. */
  readonly facts: ReadonlyMap<string, string>;
  readonly note: string | null;
  readonly settings: Map<string, GivenSetting>;
}

/** The setting of a unit, made where it is not there yet. */
export function givenSetting(unit: ListedUnit, name: string): GivenSetting {
  const known = unit.settings.get(name);
  if (known !== undefined) return known;
  const made: GivenSetting = {
    name,
    value: null,
    unread: null,
    cell: null,
    also: [],
    says: new Map(),
    paper: null,
  };
  unit.settings.set(name, made);
  return made;
}
