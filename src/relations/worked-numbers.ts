import type { FormulaNames } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import type { Dimension, GaugeBook } from '../quantity/model.ts';
import type { Sheet } from '../sheet/model.ts';
import { oncePer, type Span } from '../text/index.ts';
import { relations } from './formulas/list.ts';
import { filled, inputText, placesOf, textOf, toldText } from './input-text.ts';
import { type Instance, instancesOf } from './instances.ts';
import type { Relation } from './model.ts';
import { type Derived, type Input, propagate, type Refused } from './propagate.ts';
import { Places, type RelationFacts, type StatedPlace } from './stated-place.ts';
import { type Verdict, verdictsOf } from './verdicts.ts';
import type { WorkedText } from './worked-text.ts';

/** A figure that follows from a sheet and that its relation thinks worth showing. */
export interface WorkedFigure {
  readonly relation: Relation;
  /** The setting that it stands beside, by the kind's name. */
  readonly of: string;
  /** `primary`, where the settings that take part are stated by barrel; null otherwise. */
  readonly at: string | null;
  /** The quantity's label: `opening angle`. */
  readonly label: string;
  /** Ready to print; it is worked and must be printed as that. */
  readonly text: WorkedText;
  /** `1-1/4 turns of 10-32 UNF is 0.0391 in`. */
  readonly told: string;
  /** Each input as `label figure`, and what was taken for what nobody says. */
  readonly inputs: readonly {
    readonly label: string;
    readonly text: string;
    readonly from: Input['from'];
  }[];
  /** Where the sheet could state it; null where no sheet does. */
  readonly place: StatedPlace | null;
  readonly derived: Derived;
}

/** A relation that does not hold for the figures at hand. */
export interface UnworkableRelation {
  readonly instance: Instance;
  readonly message: string;
  readonly fix: string;
  /** The places of the figures that take part, the one to look at first in front. */
  readonly places: readonly { readonly span: Span; readonly label: string }[];
}

/** A figure beside a value that a relation needs, and that nobody can read as one. */
export interface UnreadFigure {
  readonly place: StatedPlace;
  readonly dimension: Dimension;
  /** The setting that it stands beside, by the kind's name. */
  readonly of: string;
}

/** All that follows from the figures of one sheet. */
export interface WorkedNumbers {
  readonly instances: readonly Instance[];
  /** Figures worth showing that nobody states. */
  readonly figures: readonly WorkedFigure[];
  /** Every worked figure, also those that only lead to others. */
  readonly derived: readonly Derived[];
  readonly verdicts: readonly Verdict[];
  readonly unworkable: readonly UnworkableRelation[];
  readonly unread: readonly UnreadFigure[];
}

const byId: ReadonlyMap<string, Relation> = new Map(relations.map((each) => [each.id, each]));
const nothing: WorkedNumbers = {
  instances: [],
  figures: [],
  derived: [],
  verdicts: [],
  unworkable: [],
  unread: [],
};

/** The formulas that a kind may bind, with their quantities and those that may be left unsaid. */
export function formulaNames(): FormulaNames {
  return new Map(
    relations.map(({ id, quantities }) => [
      id,
      {
        quantities: quantities.map(({ name }) => name),
        optional: new Set(quantities.filter(({ unsaid }) => unsaid).map(({ name }) => name)),
      },
    ]),
  );
}

/**
 * What follows from the figures of a sheet of a kind. Worked once for a sheet and what its edition says of
 * it. Nothing where the kind is null.
 */
export function workedNumbers(sheet: Sheet, facts: RelationFacts): WorkedNumbers {
  const { kind } = sheet;
  if (!kind || kind.relations.bindings.length === 0) return nothing;
  const { gauges, wireGauge, altitude = null } = facts;
  const known = worked(sheet)(gauges);
  const key = JSON.stringify([wireGauge, altitude]);
  const numbers = known.get(key) ?? workNumbers(sheet, kind, facts, byId);
  known.set(key, numbers);
  return numbers;
}

/** By the sheet, the gauges, and then what the edition says. */
const worked = oncePer((_: Sheet) => oncePer((_: GaugeBook) => new Map<string, WorkedNumbers>()));

/** The same by given relations, and nothing remembered. */
export function workNumbers(
  sheet: Sheet,
  kind: Kind,
  facts: RelationFacts,
  formulas: ReadonlyMap<string, Relation>,
): WorkedNumbers {
  const instances = instancesOf(sheet, kind, new Places(sheet, kind, facts), formulas);
  if (instances.length === 0) return nothing;
  const { derived, proofs, refused } = propagate(instances);
  const verdicts = verdictsOf(proofs, facts.gauges);
  return {
    instances,
    derived,
    figures: derived.filter(({ solution }) => solution.offer).map(figureFrom),
    verdicts,
    unworkable: unworkableOf(refused, verdicts),
    unread: unreadOf(instances),
  };
}

/** One refusal for each figure that takes part, and none where a verdict speaks of it. */
function unworkableOf(
  refused: readonly Refused[],
  verdicts: readonly Verdict[],
): readonly UnworkableRelation[] {
  const told = new Set(
    verdicts.flatMap(({ disparity, place }) => (disparity ? [place.span?.start] : [])),
  );
  return refused.flatMap(({ instance, inputs, unworkable }) => {
    const named = unworkable.of.flatMap((name) => inputs.find((each) => each.name === name) ?? []);
    const places = named.flatMap(placesOf);
    // A number that features say takes part in many relations, and is seldom what is wrong.
    const figures = named
      .filter(({ place }) => place?.bound.is !== 'count')
      .flatMap((input) => placesOf(input).map(({ span }) => span.start));
    if (figures.some((start) => told.has(start))) return [];
    for (const start of figures) told.add(start);
    const { message, fix } = unworkable;
    return [{ instance, message: filled(message, inputs), fix: filled(fix, inputs), places }];
  });
}

/**
 * Keys beside a value that relations are bound to and that read as a size of none of their kinds: what an
 * airflow meter tells may be a volume, a weight or a depression, and each has a relation of its own.
 */
function unreadOf(instances: readonly Instance[]): readonly UnreadFigure[] {
  const found = new Map<string, UnreadFigure>();
  const read = new Set<string>();
  for (const { quantities } of instances) {
    for (const { quantity, place } of quantities.values()) {
      const { dimension } = quantity;
      const isKey = place?.bound.is === 'setting' && place.setting?.said.has(place.key);
      if (!place || !isKey || dimension === 'ratio') continue;
      if (place.statement?.dimension === dimension) read.add(place.id);
      else if (!found.has(place.id)) {
        found.set(place.id, { place, dimension, of: place.setting?.id ?? place.key });
      }
    }
  }
  return [...found.values()].filter(({ place }) => !read.has(place.id));
}

/** Its words are made when they are first asked for: most figures are only looked at. */
function figureFrom(derived: Derived): WorkedFigure {
  const { instance, solution, inputs } = derived;
  const bound = instance.quantities.get(solution.for);
  return {
    relation: instance.relation,
    of: instance.binding.of,
    at: instance.at,
    label: bound?.quantity.label ?? solution.for,
    get text() {
      return textOf(derived);
    },
    get told() {
      return toldText(derived, textOf(derived).text);
    },
    get inputs() {
      return inputs.map((input) => ({
        label: input.quantity.label,
        text: inputText(input),
        from: input.from,
      }));
    },
    place: bound?.place ?? null,
    derived,
  };
}
