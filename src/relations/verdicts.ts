import type { GaugeBook } from '../quantity/model.ts';
import { type Disparity, disparity } from './disparity.ts';
import { isExact } from './figure.ts';
import { toldText } from './input-text.ts';
import type { Derived } from './propagate.ts';
import type { StatedPlace } from './stated-place.ts';

/** A stated figure held against what the others come to. */
export interface Verdict {
  /** What the others come to. */
  readonly proof: Derived;
  /** The stated figure. */
  readonly place: StatedPlace;
  readonly kind: 'agrees' | Disparity['kind'];
  /** Null where they agree. */
  readonly disparity: Disparity | null;
  /** `1-1/4 turns of 10-32 UNF is 0.0391 in`; empty where they agree. */
  readonly told: string;
}

/**
 * Holds every stated figure against its proofs. Of proofs that rest on the same figures by the same
 * relations only the first is taken: turned around, it says the same once more. A bound is held from
 * both of its sides, and told from one.
 */
export function verdictsOf(proofs: readonly Derived[], gauges: GaugeBook): readonly Verdict[] {
  const seen = new Set<string>();
  const passed = new Set<string>();
  const verdicts: Verdict[] = [];
  const inOrder = [...proofs].sort(
    (one, two) => rank(one) - rank(two) || one.instance.index - two.instance.index,
  );
  for (const proof of inOrder) {
    const { instance, solution } = proof;
    const place = instance.quantities.get(solution.for)?.place;
    if (!place?.statement || !place.figure) continue;
    const figures = [...proof.support, place.id].sort().join('; ');
    const bound = solution.hold === 'equals' ? '' : `${solution.hold} ${place.id}`;
    const key = `${figures} by ${[...proof.by].sort((a, b) => a - b).join(' ')} ${bound}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const { figure, reach } = proof;
    const size = { figure, reach, hold: solution.hold, isSingle: isSingle(proof) };
    const found = disparity(size, place.statement, place.figure, gauges);
    if (found?.kind === 'beyond') {
      if (passed.has(figures)) continue;
      passed.add(figures);
    }
    const told = found ? toldText(proof, found.worked) : '';
    verdicts.push({ proof, place, kind: found?.kind ?? 'agrees', disparity: found, told });
  }
  return verdicts.sort((one, two) => one.proof.instance.index - two.proof.instance.index);
}

/** The direction of a relation that is written first goes first. */
function rank({ instance, solution }: Derived): number {
  return instance.relation.solutions.indexOf(solution);
}

/** Whether one stated figure at most is inexact; a chain of several relations counts by its ends. */
function isSingle(proof: Derived): boolean {
  return inexact(proof) <= 1;
}

function inexact({ inputs }: Derived): number {
  return inputs.reduce(
    (sum, { figure, derived }) => sum + (derived ? inexact(derived) : isExact(figure) ? 0 : 1),
    0,
  );
}
