import type { OrderMove } from '../order/index.ts';
import type { OrderFault, Weight } from '../order/model.ts';
import type { Operation } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { editsFor } from './move-section.ts';
import { headingsOf, orderProof, orOverrule, overruling } from './order-proof.ts';
import { allOf } from './vocabulary.ts';

/** An operation that stands before one that it has to follow. */
export default defineCheck({
  id: 'operation-early',
  severity: 'error',
  group: 'order',
  summary: 'An operation stands before another that it has to follow.',
  explain:
    'Work that is done too early is spoiled by what has to come before it: bending the choke lug ' +
    'moves the fast idle that was set already. It is told where the walk through the work finds a ' +
    'state that is not there, or a setting that is moved and not made again, and the right order mends ' +
    'it; what is only custom is a note (`order-unusual`). If the kind’s rule does not hold for this unit, ' +
    'overrule it under `work:` and say why.',
  messages: {
    one: {
      message: '`{early}` stands before `{first}`, and has to follow it: {because}',
      fix: 'move `## {moved}` {side} `## {beside}`{overrule}',
    },
    many: {
      message: '{earlies} stand before `{first}`, and have to follow it: {because}',
      fix: 'move `## {moved}` {side} `## {beside}`{overrule}',
    },
    several: {
      message: '`{early}` stands before {firsts}, and has to follow them: {because}',
      fix: 'move `## {moved}` {side} `## {beside}`{overrule}',
    },
    start: {
      message: '`{early}` starts the engine before `{first}` is done: {because}',
      fix: 'start it only below `## {first}`',
    },
  },
  run(sheet, _context, report) {
    const found = orderProof(sheet);
    if (found === null) return;
    for (const move of found.moves) {
      const pairs = move.reversals;
      const earlies = inFile(pairs.map(({ after }) => after));
      const firsts = inFile(pairs.map(({ before }) => before));
      const span = earlies[0]?.heading.span ?? move.operation.heading.span;
      const rule = overruling(move.mends, found.kind);
      report({
        message: earlies.length > 1 ? 'many' : firsts.length > 1 ? 'several' : 'one',
        span,
        severity: gravest(move.mends),
        values: {
          early: earlies[0]?.heading.value ?? '',
          first: firsts[0]?.heading.value ?? '',
          earlies: allOf(headingsOf(earlies)),
          firsts: allOf(headingsOf(firsts)),
          because: [...new Set(pairs.map((pair) => pair.rule.because))].slice(0, 2).join('; '),
          overrule: orOverrule(rule),
          ...placeOf(move),
        },
        related: firsts.map(({ heading }) => ({ span: heading.span, label: 'this comes first' })),
        subject: move.operation.known?.name ?? null,
        alsoCalled: [...earlies, ...firsts].flatMap(({ known }) => known?.name ?? []),
        suggest: () => [{ at: move.operation.span, move: move.side, beside: move.beside.span }],
        edits: editsFor(sheet, found.kind, found.moves),
      });
    }
    for (const fault of found.faults) {
      if (fault.kind !== 'too-early' && fault.kind !== 'misplaced') continue;
      const { operation, first, because, weight } = fault;
      const [early, late] = [operation.heading.value, first.heading.value];
      report({
        message: fault.kind === 'too-early' ? 'start' : 'one',
        span: operation.heading.span,
        severity: weight,
        values: {
          early,
          first: late,
          because,
          moved: late,
          side: 'above',
          beside: early,
          overrule: orOverrule(null),
        },
        related: [{ span: first.heading.span, label: 'this comes first' }],
        suggest: () => [{ at: first.span, move: 'above', beside: operation.span }],
        subject: operation.known?.name ?? null,
      });
    }
  },
  examples: [
    {
      name: 'fast idle before the unloader that moves it',
      sheet: {
        settings: 'fast-idle-gap: { value: 0.022 in wire, from: m48 p. 33 }',
        body: '## Fast idle gap\n\n1. Pass the wire: :value[fast-idle-gap]. :state[cam named-step]\n\n## Unloader\n\n1. Hold it open and pass the drill. :state[throttle wide-open]\n',
      },
      expect: [
        {
          at: 'Fast idle gap',
          severity: 'warning',
          message:
            '`Fast idle gap` stands before `Unloader`, and has to follow it: bending the lug moves the lever that the cam holds',
          fix: 'move `## Unloader` above `## Fast idle gap`; or, where it does not hold on this unit, add under `work:` `unloader: { without: { disturbs: [fast-idle-gap] }, because: ... }`',
          fixed:
            '## Unloader\n\n1. Hold it open and pass the drill. :state[throttle wide-open]\n\n## Fast idle gap\n\n1. Pass the wire: :value[fast-idle-gap]. :state[cam named-step]',
        },
      ],
    },
    {
      name: 'one operation put off past two that it moves',
      sheet: {
        settings:
          'fast-idle-gap: { value: 0.022 in wire, from: m48 p. 33 }\nunloader: { value: 3/16 drill, from: m48 p. 33 }',
        body: '## Unloader\n\n1. Pass the drill: :value[unloader]. :state[throttle wide-open]\n\n## Fast idle gap\n\n1. Pass the wire: :value[fast-idle-gap]. :state[cam named-step]\n\n## Fast idle cam\n\n1. Pass the leaf. :state[cam named-step]\n',
      },
      expect: [
        {
          at: 'Unloader',
          severity: 'warning',
          message:
            '`Unloader` and `Fast idle gap` stand before `Fast idle cam`, and have to follow it: bending the choke rod moves the plate that is measured here; bending the choke rod turns the cam under its screw',
          fix: 'move `## Fast idle cam` above `## Unloader`; or, where it does not hold on this unit, add under `work:` `fast-idle-cam: { without: { disturbs: [unloader, fast-idle-gap] }, because: ... }`',
          fixed:
            '## Fast idle cam\n\n1. Pass the leaf. :state[cam named-step]\n\n## Unloader\n\n1. Pass the drill: :value[unloader]. :state[throttle wide-open]\n\n## Fast idle gap\n\n1. Pass the wire: :value[fast-idle-gap]. :state[cam named-step]',
        },
      ],
    },
    {
      name: 'one operation that was rushed',
      sheet: {
        settings:
          'fast-idle-gap: { value: 0.022 in wire, from: m48 p. 33 }\nunloader: { value: 3/16 drill, from: m48 p. 33 }',
        body: '## Fast idle gap\n\n1. Pass the wire: :value[fast-idle-gap]. :state[cam named-step]\n\n## Fast idle cam\n\n1. Pass the leaf. :state[cam named-step]\n\n## Unloader\n\n1. Pass the drill: :value[unloader]. :state[throttle wide-open]\n',
      },
      expect: [
        {
          at: 'Fast idle gap',
          severity: 'warning',
          message:
            '`Fast idle gap` stands before `Fast idle cam` and `Unloader`, and has to follow them: bending the choke rod turns the cam under its screw; bending the lug moves the lever that the cam holds',
          fix: 'move `## Fast idle gap` below `## Unloader`; or, where it does not hold on this unit, add under `work:` `unloader: { without: { disturbs: [fast-idle-gap] }, because: ... }`',
          fixed:
            '## Fast idle cam\n\n1. Pass the leaf. :state[cam named-step]\n\n## Unloader\n\n1. Pass the drill: :value[unloader]. :state[throttle wide-open]\n\n## Fast idle gap\n\n1. Pass the wire: :value[fast-idle-gap]. :state[cam named-step]',
        },
      ],
    },
    {
      name: 'a rule of the sheet that no order of these headings keeps without harm',
      sheet: {
        front: 'work:\n  bowl-vent: { after: [dashpot], because: the dashpot carries the vent }',
        settings:
          'bowl-vent: { value: 1/16 in, from: m48 p. 40 }\ndashpot: { value: 1/16 in, from: m48 p. 40 }',
        body: '## Unloader\n\n1. Hold it open. :state[throttle wide-open]\n\n## Bowl vent\n\n1. Let it come to its stop. :state[throttle on-idle-stop]\n2. Measure :value[bowl-vent].\n\n## Dashpot\n\n1. Measure :value[dashpot].\n',
      },
      expect: [
        {
          at: 'Bowl vent',
          message:
            '`Bowl vent` stands before `Dashpot`, and has to follow it: the dashpot carries the vent',
          fix: 'move `## Dashpot` above `## Unloader`; or overrule it under `work:`, with what is different on this unit',
          fixed:
            '## Dashpot\n\n1. Measure :value[dashpot].\n\n## Unloader\n\n1. Hold it open. :state[throttle wide-open]\n\n## Bowl vent\n\n1. Let it come to its stop. :state[throttle on-idle-stop]\n2. Measure :value[bowl-vent].',
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
          message:
            '`Installation` starts the engine before `Initial idle` is done: the engine starts and idles on these baselines',
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

function gravest(faults: readonly OrderFault[]): Weight {
  const weights = faults.map(({ weight }) => weight);
  return (['error', 'warning'] as const).find((each) => weights.includes(each)) ?? 'note';
}
