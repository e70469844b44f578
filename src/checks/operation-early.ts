import type { OrderMove } from '../order/index.ts';
import type { Operation } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { editsFor } from './move-section.ts';
import { headingsOf, orderProof } from './order-proof.ts';
import { allOf } from './vocabulary.ts';

/** An operation that stands before one that it has to follow. */
export default defineCheck({
  id: 'operation-early',
  severity: 'error',
  group: 'order',
  summary: 'An operation stands before another that it has to follow.',
  explain:
    'Work that is done too early is spoiled by what has to come before it: bending the choke lug ' +
    'moves the fast idle that was set already. If the kind’s rule does not hold for this unit, ' +
    'overrule it under `work:` and say why.',
  messages: {
    one: {
      message: '`{early}` stands before `{first}`, and has to follow it',
      fix: 'move `## {moved}` {side} `## {beside}`',
    },
    many: {
      message: '{earlies} stand before `{first}`, and have to follow it',
      fix: 'move `## {moved}` {side} `## {beside}`',
    },
    several: {
      message: '`{early}` stands before {firsts}, and has to follow them',
      fix: 'move `## {moved}` {side} `## {beside}`',
    },
    start: {
      message: '`{early}` starts the engine before `{first}` is done',
      fix: 'start it only below `## {first}`',
    },
  },
  run(sheet, _context, report) {
    const found = orderProof(sheet);
    if (found === null) return;
    for (const move of found.moves) {
      const pairs = move.reversals.filter(({ byStage }) => !byStage);
      if (pairs.length === 0) continue;
      const earlies = inFile(pairs.map(({ after }) => after));
      const firsts = inFile(pairs.map(({ before }) => before));
      const span = earlies[0]?.heading.span ?? move.operation.heading.span;
      report({
        message: earlies.length > 1 ? 'many' : firsts.length > 1 ? 'several' : 'one',
        span,
        values: {
          early: earlies[0]?.heading.value ?? '',
          first: firsts[0]?.heading.value ?? '',
          earlies: allOf(headingsOf(earlies)),
          firsts: allOf(headingsOf(firsts)),
          ...placeOf(move),
        },
        related: firsts.map(({ heading }) => ({ span: heading.span, label: 'this comes first' })),
        subject: move.operation.known?.name ?? null,
        alsoCalled: [...earlies, ...firsts].flatMap(({ known }) => known?.name ?? []),
        edits: editsFor(sheet, found.kind, found.moves),
      });
    }
    for (const fault of found.faults) {
      if (fault.kind !== 'too-early') continue;
      const { operation, first } = fault;
      report({
        message: 'start',
        span: operation.heading.span,
        values: { early: operation.heading.value, first: first.heading.value },
        related: [{ span: first.heading.span, label: 'this comes first' }],
        subject: operation.known?.name ?? null,
      });
    }
  },
  examples: [
    {
      name: 'fast idle before the unloader that moves it',
      sheet: {
        body: '## Fast idle gap\n\n1. Pass the wire. :state[throttle on-fast-idle]\n\n## Unloader\n\n1. Hold it open and pass the drill. :state[throttle wide-open]\n',
      },
      expect: [
        {
          at: 'Fast idle gap',
          message: '`Fast idle gap` stands before `Unloader`, and has to follow it',
          fix: 'move `## Unloader` above `## Fast idle gap`',
          fixed:
            '## Unloader\n\n1. Hold it open and pass the drill. :state[throttle wide-open]\n\n## Fast idle gap\n\n1. Pass the wire. :state[throttle on-fast-idle]',
        },
      ],
    },
    {
      name: 'one operation put off past two that wait for it',
      sheet: {
        body: '## Choke pull-down\n\n1. Pass the drill.\n\n## Fast idle cam\n\n1. Pass the drill.\n\n## Choke cover index\n\n1. Turn the cover to its mark.\n',
      },
      expect: [
        {
          at: 'Choke pull-down',
          message:
            '`Choke pull-down` and `Fast idle cam` stand before `Choke cover index`, and have to follow it',
          fix: 'move `## Choke cover index` above `## Choke pull-down`',
          fixed:
            '## Choke cover index\n\n1. Turn the cover to its mark.\n\n## Choke pull-down\n\n1. Pass the drill.\n\n## Fast idle cam\n\n1. Pass the drill.',
        },
      ],
    },
    {
      name: 'one operation that was rushed',
      sheet: {
        body: '## Unloader\n\n1. Hold it open. :state[throttle wide-open]\n\n## Choke cover index\n\n1. Turn the cover to its mark.\n\n## Choke pull-down\n\n1. Pass the drill.\n',
      },
      expect: [
        {
          at: 'Unloader',
          message:
            '`Unloader` stands before `Choke cover index` and `Choke pull-down`, and has to follow them',
          fix: 'move `## Unloader` below `## Choke pull-down`',
          fixed:
            '## Choke cover index\n\n1. Turn the cover to its mark.\n\n## Choke pull-down\n\n1. Pass the drill.\n\n## Unloader\n\n1. Hold it open. :state[throttle wide-open]',
        },
      ],
    },
    {
      name: 'the engine started before its baselines are set',
      sheet: {
        body: '## Installation\n\n1. Chock the wheels. :state[wheels chocked] :state[gear neutral]\n2. Bolt it down and start the engine. :state[unit on-engine] :state[engine running]\n3. Stop the engine. :state[engine stopped]\n\n## Initial idle\n\n1. Turn the needle out: :value[idle-mixture].\n',
      },
      expect: [
        {
          at: 'Installation',
          message: '`Installation` starts the engine before `Initial idle` is done',
          fix: 'start it only below `## Initial idle`',
        },
      ],
    },
    {
      name: 'an order of its own that keeps every rule',
      sheet: {
        body: '## Pump stroke\n\n1. Let the throttle shut. :state[throttle shut]\n2. Measure :value[pump-stroke].\n\n## Float level\n\n1. Lift the cover. :state[cover inverted] :state[gasket off]\n2. Measure :value[float-level].\n',
      },
      expect: [],
    },
    {
      name: 'a repeat after what it comes before is a check',
      sheet: {
        body: '## Unloader\n\n1. Hold it open. :state[throttle wide-open]\n\n## Fast idle gap\n\n1. Pass the wire. :state[throttle on-fast-idle]\n\n## Unloader, again {#unloader}\n\n1. Hold it open once more. :state[throttle wide-open]\n',
      },
      expect: [],
    },
  ],
});

function inFile(operations: readonly Operation[]): readonly Operation[] {
  return [...new Set(operations)].sort((a, b) => a.index - b.index);
}

function placeOf({ operation, side, beside }: OrderMove): Record<string, string> {
  return { moved: operation.heading.value, side, beside: beside.heading.value };
}
