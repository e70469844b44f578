import type { Figure } from './figure.ts';
import { type BoundQuantity, type Instance, unsaidOf } from './instances.ts';
import type { Interval, Solution, Unworkable } from './model.ts';
import { type Solved, solve } from './solve.ts';
import type { StatedPlace } from './stated-place.ts';

/** One quantity that a result was worked from. */
export interface Input {
  readonly name: string;
  readonly quantity: BoundQuantity['quantity'];
  readonly place: StatedPlace | null;
  readonly figure: Figure;
  /** `stated` on the sheet, by the edition or by the kind; `worked` before; or taken as `unsaid`. */
  readonly from: 'stated' | 'worked' | 'unsaid';
  /** The result that it was worked as. */
  readonly derived: Derived | null;
}

/** A figure worked from others. */
export interface Derived {
  readonly instance: Instance;
  readonly solution: Solution;
  readonly figure: Figure;
  readonly reach: Interval | null;
  readonly inputs: readonly Input[];
  /** Ids of the stated places that it rests on, at any remove. */
  readonly support: ReadonlySet<string>;
  /** Indexes of the relations that it came by. */
  readonly by: ReadonlySet<number>;
}

/** A relation that its figures do not fit. */
export interface Refused {
  readonly instance: Instance;
  readonly inputs: readonly Input[];
  readonly unworkable: Unworkable['unworkable'];
}

/** All that follows from a sheet's figures. */
export interface Consequences {
  /** Figures for places that state none, in the order in which they were found. */
  readonly derived: readonly Derived[];
  /** What stated figures should be by the others; the sheet's own are compared with these. */
  readonly proofs: readonly Derived[];
  readonly refused: readonly Refused[];
}

/** Rounds after which no further chains are followed. */
const ROUNDS = 8;
/** Ways in which one place may be worked. */
const WAYS = 3;

/**
 * Works every relation for each quantity whose others are known, again and again until nothing new
 * comes of it. No relation serves twice in a chain of figures, and no figure proves itself.
 */
export function propagate(instances: readonly Instance[]): Consequences {
  const ways = new Map<string, Derived[]>();
  const derived: Derived[] = [];
  const refused = new Map<string, Refused>();
  const tried = new Set<string>();

  const attempt = (instance: Instance, solution: Solution, mayBeUnsaid = true): Derived | null => {
    const target = instance.quantities.get(solution.for)?.place?.id ?? null;
    const inputs = gather(instance, solution, { target, ways, mayBeUnsaid });
    if (!inputs) return null;
    const figures = new Map(inputs.map(({ name, figure }) => [name, figure]));
    const { figure, reach, unworkable }: Solved = solve(solution, figures);
    if (unworkable) {
      const key = `${instance.index} ${unworkable.message}`;
      if (!refused.has(key)) refused.set(key, { instance, inputs, unworkable });
    }
    if (!figure) return null;
    const support = new Set(inputs.flatMap(supportOf));
    const by = new Set([
      instance.index,
      ...inputs.flatMap((each) => [...(each.derived?.by ?? [])]),
    ]);
    return { instance, solution, figure, reach, inputs, support, by };
  };

  // What is taken as unsaid must not stand in for a figure that the sheet's others give.
  for (const mayBeUnsaid of [false, true]) {
    for (let round = 0; round < ROUNDS; round++) {
      let isNew = false;
      for (const instance of instances) {
        for (const solution of instance.relation.solutions) {
          const place = instance.quantities.get(solution.for)?.place ?? null;
          if (!place || !mayBeWorked(place) || solution.hold !== 'equals') continue;
          const known = ways.get(place.id) ?? [];
          const key = `${instance.index} ${solution.for} ${solution.from.join(' ')}`;
          if (known.length >= WAYS || tried.has(key)) continue;
          const result = attempt(instance, solution, mayBeUnsaid);
          if (!result) continue;
          tried.add(key);
          if (known.some(({ support }) => isSubset(support, result.support))) continue;
          ways.set(place.id, [...known, result]);
          derived.push(result);
          isNew = true;
        }
      }
      if (!isNew) break;
    }
  }

  const proofs = instances.flatMap((instance) =>
    instance.relation.solutions.flatMap((solution) => {
      const place = instance.quantities.get(solution.for)?.place;
      return place?.status === 'stated' && isOwn(place) ? (attempt(instance, solution) ?? []) : [];
    }),
  );
  return { derived, proofs, refused: [...refused.values()] };
}

function mayBeWorked({ status, bound }: StatedPlace): boolean {
  return (
    status === 'absent' && (bound.is === 'setting' || bound.is === 'unit' || bound.is === 'worked')
  );
}

/** Whether a place is the sheet's own figure, and not a name or a figure that holds for all. */
function isOwn({ bound }: StatedPlace): boolean {
  return bound.is === 'setting' || bound.is === 'unit';
}

interface Knowledge {
  /** The place that is being worked, and that nothing may rest on. */
  readonly target: string | null;
  readonly ways: ReadonlyMap<string, readonly Derived[]>;
  readonly mayBeUnsaid: boolean;
}

/** The inputs of a solution, none resting on the place itself; null where one is not known. */
function gather(
  instance: Instance,
  solution: Solution,
  knowledge: Knowledge,
): readonly Input[] | null {
  const inputs: Input[] = [];
  for (const name of solution.from) {
    const bound = instance.quantities.get(name);
    if (!bound) return null;
    const { quantity, place } = bound;
    if (place?.figure && place.status === 'stated') {
      if (place.id === knowledge.target) return null;
      const { figure } = place;
      inputs.push({ name, quantity, place, figure, from: 'stated', derived: null });
      continue;
    }
    const derived =
      place?.status === 'absent'
        ? usable(place.id, solution.hold === 'equals' ? instance : null, knowledge)
        : null;
    const unsaid = knowledge.mayBeUnsaid ? unsaidOf(bound) : null;
    if (derived) {
      inputs.push({ name, quantity, place, figure: derived.figure, from: 'worked', derived });
    } else if (unsaid) {
      inputs.push({ name, quantity, place, figure: unsaid.figure, from: 'unsaid', derived: null });
    } else return null;
  }
  return inputs;
}

/**
 * A way to a place that does not rest on the target. A bound may use what its own relation worked; a
 * figure would only come back to where it started.
 */
function usable(id: string, without: Instance | null, { target, ways }: Knowledge): Derived | null {
  const found = ways
    .get(id)
    ?.find(
      ({ by, support }) => !(without && by.has(without.index)) && !(target && support.has(target)),
    );
  return found ?? null;
}

function supportOf({ place, derived }: Input): readonly string[] {
  if (derived) return [...derived.support];
  return place?.status === 'stated' ? [place.id] : [];
}

function isSubset(one: ReadonlySet<string>, other: ReadonlySet<string>): boolean {
  return [...one].every((id) => other.has(id));
}
