import type { Kind, KindOperation, Stage } from '../../kinds/model.ts';
import { ownRules, stageRank, workingOperations, workOf } from '../../order/index.ts';
import { operationIn, tasksOf } from '../../sheet/index.ts';
import type { Operation, Sheet } from '../../sheet/model.ts';
import { type Pair, transitiveReduction } from './reduction.ts';

/** One operation of a sheet as a box of its picture. */
export interface OrderBox {
  /** The number that every print calls it by; see `tasksOf`. */
  readonly number: number;
  /** The heading's own words. */
  readonly label: string;
  readonly stage: Stage;
  /** The number of the operation that it does again; null for the first standing. */
  readonly again: number | null;
  /** The kind's operation; several boxes share it where one repeats another. */
  readonly operation: KindOperation;
}

/** The work of `from` moves settings that `to` makes. Both are numbers of boxes. */
interface Disturbance extends Pair {
  /** Labels of the settings, in the order of the kind. */
  readonly settings: readonly string[];
  /** `to` stands later and belongs to a later stage: it is made after in any case, and never spoiled. */
  readonly harmless: boolean;
}

/** What must precede what on a sheet, and what disturbs what; arrows go by the boxes' numbers. */
export interface OrderGraph {
  /** The sheet's title, else its file. */
  readonly title: string;
  /** In working order. */
  readonly boxes: readonly OrderBox[];
  /** `from` must come before `to`; what follows from two of these is left out. */
  readonly before: readonly Pair[];
  readonly disturbs: readonly Disturbance[];
}

/**
 * The graph of a sheet's operations by its kind and the sheet's own rules. Headings that are no work,
 * or that the kind does not know, have no box. A repeat comes after what it repeats and after
 * whatever disturbed that in between; otherwise only the first standing of an operation waits and is
 * waited for.
 */
export function orderGraph(sheet: Sheet, usual: Kind): OrderGraph {
  const { kind } = ownRules(sheet, usual);
  const boxes = boxesOf(sheet, kind);
  const disturbs = disturbances(boxes, sheet, kind);
  return {
    title: sheet.title?.value ?? sheet.file,
    boxes,
    before: transitiveReduction([...waits(boxes), ...repeats(boxes, disturbs)]),
    disturbs,
  };
}

function boxesOf(sheet: Sheet, kind: Kind): readonly OrderBox[] {
  const { numberOf } = tasksOf(sheet);
  const first = new Map<string, number>();
  return workingOperations(sheet, kind).flatMap((operation): OrderBox[] => {
    const known = operationIn(kind, operation);
    if (!known || stageRank(known.stage) < 0) return [];
    const number = numberOf(operation.index) ?? 0;
    const again = first.get(known.name) ?? null;
    if (again === null) first.set(known.name, number);
    return [
      { number, label: headingWords(operation), stage: known.stage, again, operation: known },
    ];
  });
}

function headingWords(operation: Operation): string {
  return operation.heading.value
    .replace(/\s*\{#[^}]*\}\s*$/, '')
    .replace(/\s+/g, ' ')
    .trim();
}

function waits(boxes: readonly OrderBox[]): readonly Pair[] {
  const first = new Map(
    boxes.filter(({ again }) => again === null).map((box) => [box.operation.name, box.number]),
  );
  const pairs: Pair[] = [];
  for (const [name, to] of first) {
    const known = boxes.find(({ operation }) => operation.name === name)?.operation;
    for (const { name: earlier, strength } of known?.before.values() ?? []) {
      const from = first.get(earlier);
      // The picture says what must come first: what is merely usual may stand either way round.
      if (from !== undefined && strength !== 'usual') pairs.push({ from, to });
    }
  }
  return pairs.sort(byNumbers);
}

/** A repeat follows the standing before it, and whatever disturbed that one. */
function repeats(boxes: readonly OrderBox[], disturbs: readonly Disturbance[]): readonly Pair[] {
  const pairs: Pair[] = [];
  for (const box of boxes) {
    if (box.again === null) continue;
    const same = boxes.filter(({ operation }) => operation === box.operation);
    const last = same[same.indexOf(box) - 1];
    if (!last) continue;
    pairs.push({ from: last.number, to: box.number });
    for (const { from, to } of disturbs) {
      if (to === last.number && from > to && from < box.number)
        pairs.push({ from, to: box.number });
    }
  }
  return pairs;
}

function disturbances(
  boxes: readonly OrderBox[],
  sheet: Sheet,
  kind: Kind,
): readonly Disturbance[] {
  const found = new Map<string, { from: number; to: number; settings: Set<string> }>();
  const add = (box: OrderBox, name: string, onlyMade: boolean): void => {
    if (box.operation.settings.includes(name)) return;
    const makers = boxes.filter(({ operation }) => operation.settings.includes(name));
    // What was made before is spoiled; what is still to be made shows why it comes later.
    const made = makers.findLast(({ number }) => number < box.number);
    const maker = made ?? (onlyMade ? undefined : makers[0]);
    if (!maker) return;
    const key = `${box.number} ${maker.number}`;
    const one = found.get(key) ?? { from: box.number, to: maker.number, settings: new Set() };
    one.settings.add(kind.settings.get(name)?.label ?? name);
    found.set(key, one);
  };
  const byNumber = new Map(boxes.map((box) => [box.number, box]));
  for (const box of boxes) for (const { name } of box.operation.disturbs) add(box, name, false);
  const { numberOf } = tasksOf(sheet);
  for (const { operation, changes } of workOf(sheet, kind).steps) {
    const box = byNumber.get(numberOf(operation.index) ?? 0);
    if (!box) continue;
    for (const { term, by } of changes) {
      if (by !== 'mark') continue;
      const condition = kind.parts.get(term.part)?.conditions.get(term.condition);
      // A condition that the work passes through harms only what has been made by then.
      for (const { name } of condition?.disturbs ?? []) add(box, name, true);
    }
  }
  const rank = (number: number): number => stageRank(byNumber.get(number)?.stage ?? 'any');
  return [...found.values()]
    .map(({ from, to, settings }) => ({
      from,
      to,
      settings: [...settings],
      harmless: from < to && rank(from) < rank(to),
    }))
    .sort(byNumbers);
}

function byNumbers(one: Pair, two: Pair): number {
  return one.from - two.from || one.to - two.to;
}
