import type { Rational, Statement } from '../quantity/model.ts';
import type { HouseTolerance, PlacedSize, Setting } from './model.ts';

/** The limits that hold for a setting, in base units, and whose they are. */
export interface HeldLimits {
  /** Null where that side has none. */
  readonly low: Rational | null;
  readonly high: Rational | null;
  /**
   * `value`: the figure's own; `also`: another statement's; `gauges`: those of go and no-go; `house`: the
   * edition's, where no source states any.
   */
  readonly by: 'value' | 'also' | 'gauges' | 'house';
  /** As written, where they are not the value's own. */
  readonly text: string | null;
}

/** The limits that the sources of a setting state, at a place of it or (null) of the whole; null for none. */
export function statedLimits(setting: Unlimited, place: string | null): HeldLimits | null {
  const own = place === null ? undefined : setting.places.get(place);
  const statement = statementOf(own ?? setting.value);
  if (statement === null) return null;
  const limits = limitsOf(statement);
  if (limits !== null) return { ...limits, by: 'value', text: null };
  if (own !== undefined) return null;
  for (const other of setting.also) {
    const stated = statementOf(other);
    if (stated === null || stated.dimension !== statement.dimension) continue;
    const found = limitsOf(stated);
    if (found !== null) return { ...found, by: 'also', text: other.text };
  }
  const go = statementOf(setting.go)?.nominal ?? null;
  const noGo = statementOf(setting.noGo)?.nominal ?? null;
  if (statement.dimension !== 'length' || go === null || noGo === null) return null;
  const text = `go ${setting.go?.text}, no-go ${setting.noGo?.text}`;
  return { low: go.base, high: noGo.base, by: 'gauges', text };
}

/** The limits that hold for a setting: those that its sources state, else the house's; null for none. */
export function heldLimits(setting: Setting, place: string | null): HeldLimits | null {
  const stated = statedLimits(setting, place);
  if (stated !== null || setting.house === null) return stated;
  const own = place === null ? undefined : setting.places.get(place);
  const base = houseFigure(statementOf(own ?? setting.value), setting.house.dimension);
  if (base === null) return null;
  const { plus, minus, text } = setting.house;
  return { low: base.sub(minus), high: base.add(plus), by: 'house', text };
}

/** Whether a house tolerance comes to bear on a setting: on one of its figures that has no limits. */
function wantsLimits(setting: Unlimited, dimension: Statement['dimension']): boolean {
  const places = setting.places.size === 0 ? [null] : [...setting.places.keys()];
  return places.some((place) => {
    const own = place === null ? setting.value : (setting.places.get(place) ?? null);
    return (
      houseFigure(statementOf(own), dimension) !== null && statedLimits(setting, place) === null
    );
  });
}

type Unlimited = Pick<Setting, 'value' | 'also' | 'go' | 'noGo' | 'places'>;

/** Settings with the house's tolerances where they come to bear. */
export function withHouse(
  settings: ReadonlyMap<string, Setting>,
  tolerances: ReadonlyMap<string, HouseTolerance>,
): ReadonlyMap<string, Setting> {
  if (tolerances.size === 0) return settings;
  return new Map(
    [...settings].map(([name, setting]) => {
      const house = tolerances.get(setting.id);
      return house !== undefined && wantsLimits(setting, house.dimension)
        ? [name, { ...setting, house }]
        : [name, setting];
    }),
  );
}

/** The figure that a tolerance is laid about: one that its source gives for exact. */
function houseFigure(
  statement: Statement | null,
  dimension: Statement['dimension'],
): Rational | null {
  if (statement === null || statement.dimension !== dimension || statement.about) return null;
  return statement.form === 'exact' ? (statement.nominal?.base ?? null) : null;
}

function statementOf(size: PlacedSize | null): Statement | null {
  return size?.reading.ok ? size.reading.statement : null;
}

function limitsOf({ low, high }: Statement): Pick<HeldLimits, 'low' | 'high'> | null {
  return low === null && high === null
    ? null
    : { low: low?.base ?? null, high: high?.base ?? null };
}
