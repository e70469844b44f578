import { fromNothing } from './interval.ts';
import type {
  Hold,
  Interval,
  Known,
  Relation,
  RelationQuantity,
  Solution,
  Unworkable,
  Worked,
} from './model.ts';

/** One way to turn a relation, as its file writes it. */
interface Way<Name extends string> {
  readonly for: Name;
  readonly from: readonly Name[];
  /** `equals` if unsaid. */
  readonly hold?: Hold;
  /** True if unsaid. */
  readonly offer?: boolean;
  readonly told?: Solution['told'];
  /**
   * Quantities that have to be more than zero. Whatever a rounding reaches below that is cut off, and
   * of the others what it reaches below zero, since none of them can be less than nothing.
   */
  readonly above?: readonly Name[];
  /** Handed finite figures only. A result that is not finite becomes a refusal. */
  readonly solve: (figures: Readonly<Record<Name, Interval>>) => Worked;
}

interface Definition<Name extends string> extends Omit<Relation, 'quantities' | 'solutions'> {
  readonly quantities: Readonly<
    Record<
      Name,
      Omit<RelationQuantity, 'name' | 'unsaid'> & Partial<Pick<RelationQuantity, 'unsaid'>>
    >
  >;
  readonly solutions: readonly Way<Name>[];
}

/** Base units of any dimension beyond which no part of an engine is found, and doubles get thin. */
const REACH = 1e9;

/** A refusal; `of` names the quantities that take part, the one to look at first in front. */
export function refuse(message: string, fix: string, ...of: [string, ...string[]]): Unworkable {
  return { unworkable: { message, fix, of } };
}

/**
 * A relation whose solutions refuse figures below zero, beyond reach, and results that are not
 * finite, before and after its own formulas are asked. Its quantities are never negative.
 */
export function defineRelation<Name extends string>(definition: Definition<Name>): Relation {
  const { quantities, solutions } = definition;
  const names = Object.keys(quantities) as Name[];
  return {
    ...definition,
    quantities: names.map((name) => ({ name, unsaid: null, ...quantities[name] })),
    solutions: solutions.map((way) => ({
      for: way.for,
      from: way.from,
      hold: way.hold ?? 'equals',
      offer: way.offer ?? true,
      ...(way.told === undefined ? {} : { told: way.told }),
      solve: (known) => solveGuarded(way, known, (name) => quantities[name].label),
    })),
  };
}

/** Base units of any dimension that are nothing: as a ratio a smaller double has hundreds of digits. */
const NOTHING = 1e-30;

/** An upper end that is next to nothing, farther up: to zero or to what is small and still handy. */
function awayFromNothing(end: number): number {
  if (Math.abs(end) >= NOTHING || end === 0) return end;
  return end < 0 ? 0 : NOTHING;
}

function solveGuarded<Name extends string>(
  way: Way<Name>,
  known: Known,
  label: (name: Name) => string,
): Worked {
  const figures: Partial<Record<Name, Interval>> = {};
  for (const name of way.from) {
    const figure = known.get(name);
    if (!figure) throw new RangeError(`${name} is not known`);
    const refused = (message: string) =>
      refuse(message, `look at {${name}} again: its point or its unit may have slipped`, name);
    if (!(Math.abs(figure.lo) <= REACH && Math.abs(figure.hi) <= REACH)) {
      return refused(`{${name}} is beyond anything that the ${label(name)} can be`);
    }
    if (way.above?.includes(name)) {
      // `0 s` may be half a second by its rounding; nobody means that, and what it divides has no end.
      if ((figure.lo + figure.hi) / 2 < 1 / REACH) {
        return refused(`the ${label(name)}, {${name}}, is too close to nothing to work with`);
      }
      figures[name] = { lo: Math.max(1 / REACH, figure.lo), hi: figure.hi };
    } else {
      if (figure.hi < 0) return refused(`the ${label(name)}, {${name}}, is less than nothing`);
      figures[name] = fromNothing(figure);
    }
  }
  const worked = way.solve(figures as Record<Name, Interval>);
  if ('unworkable' in worked) return worked;
  if (Number.isFinite(worked.lo) && Number.isFinite(worked.hi)) {
    return { lo: -awayFromNothing(-worked.lo), hi: awayFromNothing(worked.hi) };
  }
  const [first, ...rest] = way.from;
  return refuse(
    `the figures lie too far apart to work the ${label(way.for)}`,
    'look for a slipped point or a wrong unit among them',
    first ?? way.for,
    ...rest,
  );
}
