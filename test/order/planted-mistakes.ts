import type { Kind } from '../../src/kinds/model.ts';
import { type OrderFault, proveOrder, workingOperations } from '../../src/order/index.ts';
import type { Sheet } from '../../src/sheet/model.ts';

/** A sheet with one mistake of order planted by machine. */
export interface Planting {
  readonly what: string;
  readonly text: string;
}

/** Every swap of two neighboring operations, and every removal of a step that carries a mark. */
export function plantings(sheet: Sheet, kind: Kind): readonly Planting[] {
  const { text } = sheet;
  const found: Planting[] = [];
  const working = workingOperations(sheet, kind);
  working.forEach((first, i) => {
    const second = working[i + 1];
    if (second?.index !== first.index + 1) return;
    const one = text.slice(first.span.start, first.span.end);
    const two = text.slice(second.span.start, second.span.end);
    found.push({
      what: `${second.heading.value} before ${first.heading.value}`,
      text: `${text.slice(0, first.span.start)}${two}${one}${text.slice(second.span.end)}`,
    });
  });
  for (const operation of working) {
    for (const { span } of operation.steps) {
      const isMarked = sheet.states.some(
        (mark) => mark.span.start >= span.start && mark.span.end <= span.end,
      );
      if (!isMarked) continue;
      const words = text.slice(span.start, span.end).split('\n')[0] ?? '';
      found.push({
        what: `${operation.heading.value} without "${words}"`,
        text: `${text.slice(0, span.start)}${text.slice(span.end).replace(/^\n/, '')}`,
      });
    }
  }
  return found;
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
