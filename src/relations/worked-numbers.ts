import type { FormulaNames } from '../kinds/index.ts';
import type { Kind, UsualRange } from '../kinds/model.ts';
import type { Dimension, GaugeBook, Rational, Statement } from '../quantity/model.ts';
import type { Sheet } from '../sheet/model.ts';
import { oncePer, type Span } from '../text/index.ts';
import { disparity } from './disparity.ts';
import { exactFigure, figureOf } from './figure.ts';
import { relations } from './formulas/list.ts';
import { filled, inputText, placesOf, textOf, toldText } from './input-text.ts';
import { type BoundQuantity, type Instance, instancesOf, unsaidOf } from './instances.ts';
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

/**
 * Whether all that some verdicts rest on would agree if one of their places said something else.
 * Only the relations that led to them are worked again.
 */
export function wouldAgree(
  numbers: WorkedNumbers,
  verdicts: readonly Verdict[],
  place: StatedPlace,
  instead: Statement,
  gauges: GaugeBook,
): boolean {
  const figure = figureOf(instead);
  if (!figure) return false;
  const by = new Set(verdicts.flatMap(({ proof }) => [...proof.by]));
  const changed: StatedPlace = { ...place, text: instead.text, statement: instead, figure };
  const held = heldWith(
    numbers.instances.filter(({ index }) => by.has(index)),
    changed,
    gauges,
  );
  return held?.every(({ disparity }) => disparity === null) ?? false;
}

/** Whether all that some verdicts rest on would agree if one of their places came to another figure. */
export function wouldAgreeAt(
  numbers: WorkedNumbers,
  verdicts: readonly Verdict[],
  place: StatedPlace,
  value: Rational,
  gauges: GaugeBook,
): boolean {
  const by = new Set(verdicts.flatMap(({ proof }) => [...proof.by]));
  const instances = numbers.instances.filter(({ index }) => by.has(index));
  const changed: StatedPlace = { ...place, status: 'stated', figure: exactFigure(value) };
  const held = heldWith(instances, changed, gauges);
  return held !== null && held.length > 0 && held.every(({ disparity }) => disparity === null);
}

/** A size of the unit that nobody stated, and what it is on ordinary units. */
export interface Unstated {
  readonly key: string;
  readonly range: UsualRange;
}

/** How many sizes of an ordinary range are tried; each is worked by itself. */
const TRIED = 40;

/**
 * The size of the unit that was taken as unsaid, and with which, anywhere in its ordinary range, all that
 * some verdicts rest on would agree: a thick plate, where a thin one was reckoned with. Null for none.
 */
export function explainedByUnstated(
  numbers: WorkedNumbers,
  verdicts: readonly Verdict[],
  usual: ReadonlyMap<string, UsualRange>,
  gauges: GaugeBook,
): Unstated | null {
  const by = new Set(verdicts.flatMap(({ proof }) => [...proof.by]));
  const instances = numbers.instances.filter(({ index }) => by.has(index));
  for (const bound of instances.flatMap(({ quantities }) => [...quantities.values()])) {
    const { place } = bound;
    const range = place?.bound.is === 'unit' ? usual.get(place.bound.name) : undefined;
    const [low, high] = [range?.low.nominal?.base, range?.high.nominal?.base];
    if (!place || !range || !low || !high || !unsaidOf(bound)) continue;
    const step = high.sub(low).div(TRIED);
    for (let i = 0; i <= TRIED; i++) {
      const figure = exactFigure(low.add(step.mul(i)));
      const held = heldWith(instances, { ...place, status: 'stated', figure }, gauges);
      if (held?.every(({ disparity }) => disparity === null)) return { key: place.key, range };
    }
  }
  return null;
}

/** The figure that one stated place would have to be, the others being right. */
export interface OtherWay {
  readonly of: Suspect;
  /** In its own words where it is a single figure: `14° distributor`. */
  readonly text: string;
}

/**
 * What the other figure of a verdict would have to be, where there is just one and it is of the same
 * kind of size: of two degrees that do not go together either may be wrong. Null elsewhere.
 */
export function otherWay(
  numbers: WorkedNumbers,
  verdict: Verdict,
  gauges: GaugeBook,
): OtherWay | null {
  const { place, proof } = verdict;
  const [other, ...more] = suspectsOf(verdict).filter(
    ({ place: { id, bound } }) => id !== place.id && bound.is !== 'count',
  );
  const statement = other?.place.statement;
  if (!other || more.length > 0 || statement?.dimension !== place.statement?.dimension) return null;
  const by = numbers.instances.filter(({ index }) => proof.by.has(index));
  const back = propagate(by).proofs.find(
    ({ instance, solution }) =>
      instance.quantities.get(solution.for)?.place?.id === other.place.id &&
      solution.hold === 'equals',
  );
  const { figure } = other.place;
  if (!back || !statement || !figure) return null;
  const size = { figure: back.figure, reach: back.reach, hold: back.solution.hold, isSingle: true };
  const worked = disparity(size, statement, figure, gauges)?.worked;
  return worked ? { of: other, text: inWordsOf(statement, worked) } : null;
}

/** A worked figure in the words of a statement that is a single figure: `28° crank` as `56° crank`. */
export function inWordsOf({ text, form, nominal }: Statement, worked: string): string {
  if (form !== 'exact' || !nominal) return worked;
  const figure = /^[\d.,]+/.exec(worked)?.[0] ?? '';
  const own = /^[\d.,]+/.exec(nominal.text)?.[0];
  return own && text.includes(own) ? text.replace(own, plainFigure(figure)) : worked;
}

/** `56` for `56.0`. */
function plainFigure(figure: string): string {
  return figure.includes('.') ? figure.replace(/\.?0+$/, '') : figure;
}

/** What a thread with another pitch in its place comes to on the sheet that states it. */
export type ThreadVerdict = 'borne-out' | 'refuted' | 'silent';

/** Whether turns and travel of a sheet bear out that the thread at a place has a pitch, in mm. */
export function threadVerdict(
  numbers: WorkedNumbers,
  { start }: Span,
  pitchMm: Rational,
  gauges: GaugeBook,
): ThreadVerdict {
  const isHere = ({ place }: BoundQuantity): boolean => place?.span?.start === start;
  const instances = numbers.instances.filter(({ quantities }) =>
    [...quantities.values()].some(isHere),
  );
  const place = instances.flatMap(({ quantities }) => [...quantities.values()].filter(isHere))[0]
    ?.place;
  if (!place) return 'silent';
  const changed: StatedPlace = { ...place, status: 'stated', figure: exactFigure(pitchMm) };
  const held = heldWith(instances, changed, gauges);
  if (!held || held.some(({ disparity }) => disparity !== null)) return 'refuted';
  return held.length > 0 ? 'borne-out' : 'silent';
}

/** The verdicts of some instances with a place that says something else; null where one does not hold. */
function heldWith(
  instances: readonly Instance[],
  changed: StatedPlace,
  gauges: GaugeBook,
): readonly Verdict[] | null {
  const replaced = instances.map((instance) => ({
    ...instance,
    quantities: new Map(
      [...instance.quantities].map(([name, bound]) => [
        name,
        bound.place?.id === changed.id ? { ...bound, place: changed } : bound,
      ]),
    ),
  }));
  const { proofs, refused } = propagate(replaced);
  return refused.length > 0 ? null : verdictsOf(proofs, gauges);
}

/** The stated places that a verdict rests on, its own first, each with what it is called. */
export function suspectsOf({ place, proof }: Verdict): readonly Suspect[] {
  const found = new Map<string, Suspect>([[place.id, { place, label: `\`${place.key}\`` }]]);
  const visit = ({ inputs }: Derived): void => {
    for (const { derived, place: stated, quantity } of inputs) {
      if (derived) visit(derived);
      else if (stated?.span && !found.has(stated.id))
        found.set(stated.id, { place: stated, label: `the ${quantity.label}` });
    }
  };
  visit(proof);
  return [...found.values()];
}

/** A stated figure that takes part in a verdict. */
export interface Suspect {
  readonly place: StatedPlace;
  /** `the turns`; of the figure that was held against the others its key: `` `travel` ``. */
  readonly label: string;
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

/** Keys beside a value that a relation is bound to and that do not read as a size of its kind. */
function unreadOf(instances: readonly Instance[]): readonly UnreadFigure[] {
  const found = new Map<string, UnreadFigure>();
  for (const { quantities } of instances) {
    for (const { quantity, place } of quantities.values()) {
      const { dimension } = quantity;
      const isKey = place?.bound.is === 'setting' && place.setting?.said.has(place.key);
      if (!place || !isKey || dimension === 'ratio' || found.has(place.id)) continue;
      const isRead = place.statement?.dimension === dimension;
      if (isRead) continue;
      found.set(place.id, { place, dimension, of: place.setting?.id ?? place.key });
    }
  }
  return [...found.values()];
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
