import type { OrderFault } from './model.ts';

/** What a fault is about, whatever step tells it first. */
export function faultKey(fault: OrderFault): string {
  switch (fault.kind) {
    case 'unmet':
      return `unmet ${fault.need.part}`;
    case 'misplaced':
      return `misplaced ${fault.first.index} ${fault.operation.index}`;
    case 'too-early':
      return `too-early ${fault.first.index}`;
    case 'disturbed':
      return `disturbed ${fault.setting}`;
    case 'left-open':
      return `left-open ${fault.part}`;
    case 'refit':
      return `refit ${fault.part} ${fault.change.span.start}`;
    case 'forbidden':
      return `forbidden ${fault.part} ${fault.change.span.start}`;
  }
}
