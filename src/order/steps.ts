import type { Kind } from '../kinds/model.ts';
import { operationIn } from '../sheet/index.ts';
import type { Operation, Sheet, StateMark } from '../sheet/model.ts';
import { oncePer, plainWords, type Span } from '../text/index.ts';
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
export function workOf(
  sheet: Sheet,
  kind: Kind,
  ignoreMarks = false,
  /** The kind by which marks are understood: with the sheet's own parts. */
  own: Kind = kind,
): Work {
  const steps: WorkStep[] = [];
  const unknownMarks: UnknownMark[] = [];
  const marks = ignoreMarks ? [] : [...sheet.states].sort((a, b) => a.span.start - b.span.start);
  const values = sheet.values;
  for (const operation of sheet.operations) {
    const placed = marks.filter((mark) => mark.operation === operation.index);
    const used = values.filter((value) => value.operation === operation.index);
    const told = new Set<StateMark>();
    const found: WorkStep[] = [];
    const texts = operation.steps.map(({ span }) => sheet.text.slice(span.start, span.end));
    const readings = readSteps(texts, kind);
    operation.steps.forEach((step, index) => {
      const inside = placed.filter((mark) => isInside(mark.span, step.span));
      for (const mark of inside) told.add(mark);
      const marked = markedChanges(inside, own, unknownMarks);
      const read = readChanges(readings[index] ?? [], step.span);
      const printed = used.filter((value) => isInside(value.span, step.span));
      found.push({
        operation,
        index,
        span: step.span,
        changes: merged(marked, read),
        says: read.map(({ term }) => term),
        seesTo: seesTo(sheet.text, step.span, kind),
        values: printed.map(({ id }) => id),
        inPassing: new Set(
          printed
            .filter((value) => isInPassing(sheet.text, step.span, value.span, kind))
            .map(({ id }) => id),
        ),
        valueAt: printed[0]?.span.start ?? null,
      });
    });
    for (const mark of placed) {
      if (told.has(mark)) continue;
      const changes = markedChanges([mark], own, unknownMarks);
      if (changes.length > 0)
        found.push({
          operation,
          index: -1,
          span: mark.span,
          changes,
          says: [],
          seesTo: false,
          values: [],
          inPassing: nothing,
          valueAt: null,
        });
    }
    for (const value of used) {
      if (operation.steps.some((step) => isInside(value.span, step.span))) continue;
      const name = value.id;
      found.push({
        operation,
        index: -1,
        span: value.span,
        changes: [],
        says: [],
        seesTo: false,
        values: [name],
        // Beside numbered steps a figure is told, and nobody measures it there.
        inPassing: operation.steps.length > 0 ? new Set([name]) : nothing,
        valueAt: value.span.start,
      });
    }
    steps.push(...found.sort((a, b) => a.span.start - b.span.start));
  }
  return { steps, unknownMarks };
}

const nothing: ReadonlySet<string> = new Set();

function seesTo(text: string, { start, end }: Span, kind: Kind): boolean {
  if (kind.seenTo.length === 0) return false;
  const words = ` ${plainWords(text.slice(start, end))} `;
  return wholeWords(kind).some((each) => words.includes(each));
}

/** The phrases of `seen-to` between blanks. */
const wholeWords = oncePer(({ seenTo }: Kind): readonly string[] =>
  seenTo.map((each) => ` ${each} `),
);

/** Whether the words before a printed setting, in its own sentence, say that it is left as it is. */
function isInPassing(text: string, step: Span, value: Span, kind: Kind): boolean {
  if (kind.inPassing.length === 0) return false;
  const before = text.slice(step.start, value.start).toLowerCase();
  const sentence = before.slice(Math.max(before.lastIndexOf('. '), before.lastIndexOf('; ')) + 1);
  const words = sentence.replace(/\s+/g, ' ');
  return kind.inPassing.some((each) => words.includes(each));
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
    const term = kind.stateNamed(text);
    if (term) changes.push({ term, by: 'mark', span, verb: null, saidAt: null });
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
    saidAt: span.start + start,
  }));
}

/** Marks as they stand, with the verb that the words give them, then what only the words say. */
function merged(
  marked: readonly StateChange[],
  read: readonly StateChange[],
): readonly StateChange[] {
  const parts = new Set(marked.map(({ term }) => term.part));
  const withVerbs = marked.map((change) => {
    const same = read.filter(
      ({ term }) => term.part === change.term.part && term.condition === change.term.condition,
    );
    const words = same.find(({ verb }) => verb !== null) ?? same[0];
    return words ? { ...change, verb: words.verb, saidAt: words.saidAt } : change;
  });
  return [...read.filter(({ term }) => !parts.has(term.part)), ...withVerbs];
}

/** The operations that a sheet works through, without headings that are no work. */
export function workingOperations(sheet: Sheet, kind: Kind): readonly Operation[] {
  return sheet.operations.filter((operation) => {
    const here = operationIn(kind, operation);
    return here !== null && here.stage !== 'any';
  });
}

/**
 * Whether a sheet marks its work throughout, so that what is not said is not there: a third at least of
 * the operations that have steps carry marks, and there are four marks or more.
 */
export function isMarkedThroughout(steps: readonly WorkStep[]): boolean {
  const worked = new Set<Operation>();
  const marked = new Set<Operation>();
  let marks = 0;
  for (const { operation, changes } of steps) {
    worked.add(operation);
    for (const { by } of changes) {
      if (by !== 'mark') continue;
      marks++;
      marked.add(operation);
    }
  }
  return marks >= 4 && marked.size * 3 >= worked.size;
}
