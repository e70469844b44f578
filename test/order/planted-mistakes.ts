import type { Kind } from '../../src/kinds/model.ts';
import { proveOrder, workingOperations } from '../../src/order/index.ts';
import type { OrderFault } from '../../src/order/model.ts';
import type { Sheet } from '../../src/sheet/model.ts';
import type { Span } from '../../src/text/span.ts';

/** A sheet with one mistake of order planted by machine. */
export interface Planting {
  readonly what: string;
  readonly sheet: Sheet;
}

/** Every swap of two neighboring operations, and every removal of a step that carries a mark. */
export function* plantings(
  sheet: Sheet,
  kind: Kind,
  read: (text: string) => Sheet,
): Generator<Planting> {
  const working = workingOperations(sheet, kind);
  for (const [i, first] of working.entries()) {
    const second = working[i + 1];
    if (second?.index !== first.index + 1) continue;
    const what = `${second.heading.value} before ${first.heading.value}`;
    yield { what, sheet: read(swapped(sheet.text, first.span, second.span)) };
  }
  for (const operation of working) {
    for (const { span } of operation.steps) {
      if (!sheet.states.some((mark) => isInside(mark.span, span))) continue;
      const words = sheet.text.slice(span.start, span.end).split('\n')[0] ?? '';
      yield { what: `${operation.heading.value} without "${words}"`, sheet: without(sheet, span) };
    }
  }
}

function swapped(text: string, first: Span, second: Span): string {
  const one = text.slice(first.start, first.end);
  const two = text.slice(second.start, second.end);
  return `${text.slice(0, first.start)}${two}${one}${text.slice(second.end)}`;
}

/** A sheet as if one step did not stand there: the same parsed sheet without it and what is in it. */
function without(sheet: Sheet, span: Span): Sheet {
  return {
    ...sheet,
    states: sheet.states.filter((mark) => !isInside(mark.span, span)),
    values: sheet.values.filter((value) => !isInside(value.span, span)),
    operations: sheet.operations.map((operation) => ({
      ...operation,
      steps: operation.steps.filter((step) => step.span !== span),
    })),
  };
}

function isInside(inner: Span, outer: Span): boolean {
  return inner.start >= outer.start && inner.end <= outer.end;
}

/** What is wrong with the order of a sheet, by names, so that two states of one sheet compare. */
export function orderFaults(
  sheet: Sheet,
  kind: Kind,
  ignoreMarks: boolean,
): { readonly all: ReadonlySet<string>; readonly errors: ReadonlySet<string> } {
  const { moves, faults } = proveOrder(sheet, kind, { ignoreMarks });
  const told = moves.map((move) => `move ${move.operation.heading.value}`);
  const errors = new Set(told);
  const all = new Set(told);
  for (const fault of faults) {
    all.add(nameOf(fault));
    if (!('doubtful' in fault && fault.doubtful)) errors.add(nameOf(fault));
  }
  return { all, errors };
}

function nameOf(fault: OrderFault): string {
  switch (fault.kind) {
    case 'unmet':
      return `unmet ${fault.need.part} at ${fault.operation.heading.value}`;
    case 'left-open':
      return `left open ${fault.part} before ${fault.before}`;
    case 'disturbed':
      return `disturbed ${fault.setting} by ${fault.by.heading.value}`;
    case 'refit':
    case 'forbidden':
      return `${fault.kind} ${fault.part} at ${fault.at.operation.heading.value}`;
    default:
      return `${fault.kind} ${fault.operation.heading.value}`;
  }
}

/** Whether a set has anything that another has not. */
export function hasMore(found: ReadonlySet<string>, known: ReadonlySet<string>): boolean {
  return [...found].some((each) => !known.has(each));
}
