import type { Kind } from '../../src/kinds/model.ts';
import { walkSheet } from '../../src/order/walk.ts';
import type { Sheet } from '../../src/sheet/model.ts';

/** How the states that words say compare with what the marks of the same sheet say. */
export interface Figures {
  steps: number;
  /** States that marks say. */
  marked: number;
  /** Of those, the ones that the words say too, or that follow from what they say. */
  recalled: number;
  /** Of the marked ones, those that change something, and the ones of them that the words say. */
  changes: number;
  changesRecalled: number;
  /** States that words say in any step. */
  read: number;
  /** Of those, the ones that hold after the step by the marks. */
  right: number;
  missed: string[];
  wrong: string[];
}

/** Reads a sheet with its marks passed over and compares each step with the walk of the marks. */
export function compareReading(sheet: Sheet, kind: Kind, figures: Figures): void {
  const marked = walkSheet(sheet, kind);
  const plain = walkSheet(sheet, kind, { ignoreMarks: true });
  const byPlace = new Map(marked.steps.map((each) => [each.step.span.start, each]));
  const before = new Map<string, string>();
  for (const { step } of plain.steps) {
    const known = byPlace.get(step.span.start);
    if (step.index < 0 || !known) continue;
    figures.steps++;
    const place = `${sheet.file}:${sheet.lines.place(step.span.start).line}`;
    const read = new Map(step.changes.map(({ term }) => [term.part, term.condition]));
    const said = new Map(read);
    for (const [part, condition] of read) {
      for (const follows of kind.parts.get(part)?.conditions.get(condition)?.follows ?? [])
        if (!said.has(follows.part)) said.set(follows.part, follows.condition);
    }
    for (const { term, by } of known.step.changes) {
      if (by !== 'mark') continue;
      const isSaid = said.get(term.part) === term.condition;
      const isChange = before.get(term.part) !== term.condition;
      figures.marked++;
      if (isChange) figures.changes++;
      if (isSaid) figures.recalled++;
      if (isSaid && isChange) figures.changesRecalled++;
      if (!isSaid) figures.missed.push(`${place} ${term.part} ${term.condition}`);
    }
    for (const [part, condition] of read) {
      figures.read++;
      if (known.after.get(part)?.condition === condition) figures.right++;
      else figures.wrong.push(`${place} ${part} ${condition}`);
    }
    for (const [part, { condition }] of known.after) before.set(part, condition);
  }
}

export function noFigures(): Figures {
  return {
    steps: 0,
    marked: 0,
    recalled: 0,
    changes: 0,
    changesRecalled: 0,
    read: 0,
    right: 0,
    missed: [],
    wrong: [],
  };
}
