import type { OrderFault } from './model.ts';

/** What a fault is about, whatever step tells it first. */
export function faultKey(fault: OrderFault): string {
  switch (fault.kind) {
    case 'unmet':
      return `unmet ${fault.need.part}`;
    case 'too-early':
      return `too-early ${fault.first.index}`;
    case 'stage':
      return `stage ${fault.operation.index}`;
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
