import type { UsualRange } from '../kinds/model.ts';
import type { GaugeBook, Rational, Statement } from '../quantity/model.ts';
import type { Span } from '../text/index.ts';
import { disparity } from './disparity.ts';
import { exactFigure, figureOf } from './figure.ts';
import { type BoundQuantity, type Instance, unsaidOf } from './instances.ts';
import { propagate } from './propagate.ts';
import type { StatedPlace } from './stated-place.ts';
import { type Suspect, suspectsOf } from './suspects.ts';
import { type Verdict, verdictsOf } from './verdicts.ts';
import type { WorkedNumbers } from './worked-numbers.ts';

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
