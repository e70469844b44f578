import type { Kind, KindPart } from '../kinds/model.ts';
import { type Proof, proveOrder, stateNamed } from '../order/index.ts';
import type { Operation, Sheet } from '../sheet/model.ts';

const known = new WeakMap<Sheet, Proof | null>();

/** The proof of a sheet's order; null where its kind is unknown. Made once a sheet, for all its checks. */
export function orderProof(sheet: Sheet): Proof | null {
  const before = known.get(sheet);
  if (before !== undefined) return before;
  const { kind } = sheet;
  const proof = kind === null ? null : proveOrder(sheet, kind);
  known.set(sheet, proof);
  return proof;
}

/** `on-fast-idle` as people say it: `on fast idle`. */
export function conditionWords(conditions: readonly string[]): string {
  return conditions.map((each) => each.replaceAll('-', ' ')).join(' or ');
}

/** A part's label; its name where the kind does not know it. */
export function partLabel(kind: Kind, part: string): string {
  return kind.parts.get(part)?.label ?? part;
}

/**
 * A mark as an editor types it: `:state[throttle shut]`. By the part's label where that is one plain
 * word and means the same: `:state[engine hot]`, not the temperature.
 */
export function markFor(kind: Kind, part: string, condition: string): string {
  const label = partLabel(kind, part);
  const meant = /^\p{L}+$/u.test(label) ? stateNamed(`${label} ${condition}`, kind) : null;
  const isSame = meant?.part === part && meant.condition === condition;
  return `:state[${isSame ? label : part} ${condition}]`;
}

/** The part whose coming into one of its conditions is the start; null for a kind without one. */
export function startingPart(kind: Kind): KindPart | null {
  for (const part of kind.parts.values()) {
    for (const { startsUp } of part.conditions.values()) if (startsUp) return part;
  }
  return null;
}

/** `Unloader`, `Fast idle gap` and so on: headings in backticks, for people. */
export function headingsOf(operations: readonly Operation[]): readonly string[] {
  return operations.map(({ heading }) => heading.value);
}

/** The number that a step added at the end of an operation has. */
export function nextStep({ steps }: Operation): string {
  return String((steps.at(-1)?.number ?? 0) + 1);
}
