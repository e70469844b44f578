import { likelySlips, type RankedMisprint, wireGaugeNamed } from '../quantity/index.ts';
import type { Statement } from '../quantity/model.ts';
import {
  type StatedPlace,
  type Suspect,
  suspectsOf,
  type Verdict,
  type WorkedNumbers,
  wouldAgree,
} from '../relations/index.ts';
import type { Sheet } from '../sheet/model.ts';
import type { CheckContext } from './define.ts';
import { goesWith, isUnitOfSheet } from './likely-misprint.ts';
import { restatements } from './statement-pairs.ts';
import { sideOutside } from './usual-range.ts';

/** Figures that do not fit together, by the one figure that all of them rest on. */
export interface Root {
  /** The disagreement to tell. */
  readonly verdict: Verdict;
  /** What else is apart by the same figure. */
  readonly further: readonly Verdict[];
  /** The single slips that would bring all of them together, the likeliest first. */
  readonly slips: readonly { readonly slip: RankedMisprint; readonly of: Suspect }[];
}

/**
 * The disagreements of a sheet, each with those that follow from it: a figure that takes part in
 * several is told once. One in a relation that holds is the last to be doubted.
 */
export function relationRoots(
  numbers: WorkedNumbers,
  sheet: Sheet,
  context: CheckContext,
): readonly Root[] {
  const suspects = new Map<Verdict, readonly Suspect[]>();
  const cleared = new Set<string>();
  for (const verdict of numbers.verdicts) {
    const of = suspectsOf(verdict);
    if (verdict.disparity && verdict.place.span) suspects.set(verdict, of);
    else if (verdict.proof.solution.hold === 'equals')
      for (const { place } of of) cleared.add(place.id);
  }
  let left = [...suspects.keys()];
  const roots: Root[] = [];
  while (left.length > 0) {
    const held = left;
    const touching = (id: string): readonly Verdict[] =>
      held.filter((verdict) => suspects.get(verdict)?.some(({ place }) => place.id === id));
    const ids = [
      ...new Set(held.flatMap((each) => suspects.get(each) ?? []).map(({ place }) => place.id)),
    ];
    const weight = (id: string): number => touching(id).length - (cleared.has(id) ? 0.5 : 0);
    const root = ids.reduce((best, id) => (weight(id) > weight(best) ? id : best));
    const together = touching(root);
    // What two formulas come to says more than a bound that is passed.
    const inOrder = [...together].sort((one, two) => plainness(one) - plainness(two));
    const plainest = inOrder.filter((each) => plainness(each) === plainness(inOrder[0] as Verdict));
    const verdict = plainest.find(({ place }) => place.id === root) ?? (plainest[0] as Verdict);
    const further = together.filter((each) => each !== verdict);
    const shared = (suspects.get(verdict) ?? []).filter(({ place }) =>
      together.every((each) => suspects.get(each)?.some((other) => other.place.id === place.id)),
    );
    const found = shared
      .flatMap((of) => slipsAt(of, together, numbers, sheet, context))
      .sort((one, two) => one.slip.rank - two.slip.rank);
    const likely = found.filter(({ slip }) => !slip.isUnlikely);
    const slips = likely.length > 0 ? likely : found;
    roots.push({ verdict, further, slips });
    left = held.filter((each) => !together.includes(each));
  }
  return roots;
}

function plainness({ disparity }: Verdict): number {
  return ['apart', 'limits', 'loose', 'beyond'].indexOf(disparity?.kind ?? 'beyond');
}

const OFTEN: ReadonlySet<string> = new Set(['swapped-digits', 'slipped-point', 'wrong-unit']);

/** The likeliest slip of one figure that would bring some verdicts together. */
function slipsAt(
  of: Suspect,
  verdicts: readonly Verdict[],
  numbers: WorkedNumbers,
  sheet: Sheet,
  context: CheckContext,
): Root['slips'] {
  const { place } = of;
  const { statement, text, bound } = place;
  if (!statement || text === null || bound.is === 'count') return [];
  const known = place.setting?.known;
  const others = restatedBeside(place);
  const swg = sheet.wireGauge?.value ?? context.wireGauge;
  // Past a bound nearly every other figure would do: only what is often mistaken says anything.
  const isBound = verdicts.every(({ disparity }) => disparity?.kind === 'beyond');
  const options = {
    gauges: context.gauges,
    expect: [statement.dimension],
    swg: wireGaugeNamed(swg),
    jets: place.setting?.jets,
  } as const;
  const slip = likelySlips(text, statement, null, options, (candidate) => {
    if ((candidate.low?.base.s ?? 1n) < 0n) return 'wrong';
    if (!others.every((other) => goesWith(other, candidate))) return 'wrong';
    if (!wouldAgree(numbers, verdicts, place, candidate, context.gauges)) return 'wrong';
    if (isBound && !isUnitOfSheet(candidate, statement, sheet)) return 'unlikely';
    const range = known?.usual.find(({ dimension }) => dimension === candidate.dimension);
    return bound.is === 'setting' && bound.key === null && range && sideOutside(candidate, range)
      ? 'unlikely'
      : 'right';
  }).find(({ kind: slipKind, isUnlikely }) => !isBound || (OFTEN.has(slipKind) && !isUnlikely));
  return slip ? [{ slip, of }] : [];
}

/** What else a setting says of the same size, which an edit of it has to go with as well. */
export function restatedBeside({ setting, span, bound }: StatedPlace): readonly Statement[] {
  if (!setting || bound.is !== 'setting' || bound.key !== null) return [];
  const all = restatements(setting);
  const isOwn = ({ stated }: (typeof all)[number]): boolean =>
    stated.size.span.start === span?.start;
  // `24° crank` beside `12° distributor` restates nothing: a formula holds the two together.
  if (!all.some(isOwn)) return [];
  return all.flatMap((each) => (isOwn(each) ? [] : [each.statement]));
}
