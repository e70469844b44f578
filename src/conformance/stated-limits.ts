import type { Limit, Statement } from '../quantity/model.ts';
import type { PlacedSize, Setting } from '../sheet/model.ts';

/** What a sheet asks of a setting, and the limits that it states for it. */
export interface Wanted {
  /** As the sheet writes it; `—` where it states nothing. */
  readonly text: string;
  /** Null where the sheet's figure cannot be read. */
  readonly statement: Statement | null;
  /** Base values; both null where the sheet states no limits. */
  readonly low: Limit['base'] | null;
  readonly high: Limit['base'] | null;
  /** Base value of the figure itself; null where the sheet has only limits or words. */
  readonly nominal: Limit['base'] | null;
  /** Where limits that are not the value's own were taken from; null otherwise. */
  readonly limitsFrom: string | null;
  /** From where to where the figures were carried, and by which formula; null where they stand as stated. */
  readonly carried: string | null;
}

/** How the figures of a setting are carried to where a record was taken. */
export interface CarriedFigures {
  /** Null where nothing is left of it there. */
  carry(base: Limit['base']): Limit['base'] | null;
  readonly from: string;
  readonly to: string;
  readonly formula: string;
  readonly relation: string;
}

/** What is wanted where a record was taken: nominal and limits carried there, by the formula named. */
export function wantedThere(wanted: Wanted, by: CarriedFigures): Wanted {
  const carry = (base: Limit['base'] | null) => (base === null ? null : by.carry(base));
  return {
    ...wanted,
    nominal: carry(wanted.nominal),
    low: carry(wanted.low),
    high: carry(wanted.high),
    carried: `from ${by.from} to ${by.to} by ${by.formula} (${by.relation})`,
  };
}

/**
 * What a sheet wants of a setting, at a place of it or (null) of the whole. Limits are those of the
 * value; failing these the first that `also` states, or the sheet's own go and no-go gauges. None
 * are ever made up. Null for a place that the sheet does not tell apart, or a whole that it does.
 */
export function wantedOf(setting: Setting, place: string | null): Wanted | null {
  const own = place === null ? undefined : setting.places.get(place);
  if (setting.places.size > 0 && own === undefined && setting.value === null) return null;
  if (place !== null && setting.places.size > 0 && own === undefined) return null;
  const size = own ?? setting.value;
  const statement = statementOf(size);
  const nominal = statement?.nominal?.base ?? null;
  const wanted = { text: size?.text ?? '—', statement, nominal, limitsFrom: null, carried: null };
  if (statement === null) return { ...wanted, low: null, high: null };
  const limits = limitsOf(statement);
  if (limits !== null) return { ...wanted, ...limits };
  if (own === undefined) {
    for (const other of setting.also) {
      const stated = statementOf(other);
      if (stated === null || stated.dimension !== statement.dimension) continue;
      const found = limitsOf(stated);
      if (found !== null) return { ...wanted, ...found, limitsFrom: other.text };
    }
    const go = statementOf(setting.go)?.nominal ?? null;
    const noGo = statementOf(setting.noGo)?.nominal ?? null;
    if (statement.dimension === 'length' && go !== null && noGo !== null) {
      const limitsFrom = `go ${setting.go?.text}, no-go ${setting.noGo?.text}`;
      return { ...wanted, low: go.base, high: noGo.base, limitsFrom };
    }
  }
  return { ...wanted, low: null, high: null };
}

function statementOf(size: PlacedSize | null): Statement | null {
  return size?.reading.ok ? size.reading.statement : null;
}

function limitsOf({ low, high }: Statement): Pick<Wanted, 'low' | 'high'> | null {
  return low === null && high === null
    ? null
    : { low: low?.base ?? null, high: high?.base ?? null };
}
