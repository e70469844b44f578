import type { Kind } from '../kinds/model.ts';
import type { Operation, Sheet, StateMark } from '../sheet/model.ts';
import type { Span } from '../text/span.ts';
import { stateNamed } from './marks.ts';
import type { StateChange, UnknownMark, WorkStep } from './model.ts';
import { type ReadState, readSteps } from './reading.ts';

/** The work of a sheet as steps with what each changes, in the order of the file. */
export interface Work {
  readonly steps: readonly WorkStep[];
  readonly unknownMarks: readonly UnknownMark[];
}

/**
 * Every step of a sheet with the changes that its marks state and its words say. A mark outranks
 * what the words say of the same part; marks that stand outside the numbered steps make steps of
 * their own. `ignoreMarks` reads as if there were none.
 */
export function workOf(sheet: Sheet, kind: Kind, ignoreMarks = false): Work {
  const steps: WorkStep[] = [];
  const unknownMarks: UnknownMark[] = [];
  const marks = ignoreMarks ? [] : [...sheet.states].sort((a, b) => a.span.start - b.span.start);
  const values = sheet.values;
  for (const operation of sheet.operations) {
    const own = marks.filter((mark) => mark.operation === operation.index);
    const used = values.filter((value) => value.operation === operation.index);
    const told = new Set<StateMark>();
    const found: WorkStep[] = [];
    const texts = operation.steps.map(({ span }) => sheet.text.slice(span.start, span.end));
    const readings = readSteps(texts, kind);
    operation.steps.forEach((step, index) => {
      const inside = own.filter((mark) => isInside(mark.span, step.span));
      for (const mark of inside) told.add(mark);
      const marked = markedChanges(inside, kind, unknownMarks);
      const read = readChanges(readings[index] ?? [], step.span);
      found.push({
        operation,
        index,
        span: step.span,
        changes: merged(marked, read),
        values: used.filter((value) => isInside(value.span, step.span)).map(({ id }) => id),
      });
    });
    for (const mark of own) {
      if (told.has(mark)) continue;
      const changes = markedChanges([mark], kind, unknownMarks);
      if (changes.length > 0)
        found.push({ operation, index: -1, span: mark.span, changes, values: [] });
    }
    for (const value of used) {
      if (operation.steps.some((step) => isInside(value.span, step.span))) continue;
      found.push({
        operation,
        index: -1,
        span: value.span,
        changes: [],
        values: [value.id],
      });
    }
    steps.push(...found.sort((a, b) => a.span.start - b.span.start));
  }
  return { steps, unknownMarks };
}

function isInside(inner: Span, outer: Span): boolean {
  return inner.start >= outer.start && inner.end <= outer.end;
}

function markedChanges(
  marks: readonly StateMark[],
  kind: Kind,
  unknown: UnknownMark[],
): StateChange[] {
  const changes: StateChange[] = [];
  for (const { text, span, operation } of marks) {
    const term = stateNamed(text, kind);
    if (term) changes.push({ term, by: 'mark', span, verb: null });
    else unknown.push({ text, span, operation });
  }
  return changes;
}

function readChanges(read: readonly ReadState[], span: Span): StateChange[] {
  return read.map(({ term, start, end, verb }) => ({
    term,
    by: 'reading',
    span: { start: span.start + start, end: span.start + end },
    verb,
  }));
}

/** Marks as they stand, with the verb that the words give them, then what only the words say. */
function merged(
  marked: readonly StateChange[],
  read: readonly StateChange[],
): readonly StateChange[] {
  const parts = new Set(marked.map(({ term }) => term.part));
  const withVerbs = marked.map((change) => {
    const words = read.find(
      ({ term, verb }) =>
        verb !== null && term.part === change.term.part && term.condition === change.term.condition,
    );
    return words ? { ...change, verb: words.verb } : change;
  });
  return [...read.filter(({ term }) => !parts.has(term.part)), ...withVerbs];
}

/** The operations that a sheet works through, without headings that are no work. */
export function workingOperations(sheet: Sheet, kind: Kind): readonly Operation[] {
  return sheet.operations.filter(({ known }) => {
    const here = kind.operations.get(known?.name ?? '');
    return here !== undefined && here.stage !== 'any';
  });
}
