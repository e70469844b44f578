import type { Kind, StateTerm } from '../kinds/model.ts';
import { defineCheck } from './define.ts';
import { conditionWords, orderProof, partLabel, stepFor } from './order-proof.ts';

/** A marked state that the condition of another part shuts out. */
export default defineCheck({
  id: 'state-impossible',
  severity: 'error',
  group: 'order',
  summary: 'A marked state cannot be while another part is as an earlier step left it.',
  explain:
    'The throttle cannot shut while a step of the cam stands under its screw. The step reads well ' +
    'and cannot be done, and the measurement that follows is taken somewhere between.',
  messages: {
    impossible: {
      message: 'the {part} cannot be {condition} with the {other} {otherCondition}: {because}',
      fix: 'move the {other} first, in this step or before it, and mark that: `{example}`',
    },
  },
  run(sheet, _context, report) {
    const found = orderProof(sheet);
    if (found === null) return;
    const { kind, faults } = found;
    for (const fault of faults) {
      if (fault.kind !== 'forbidden') continue;
      const { change, other, was } = fault;
      report({
        message: 'impossible',
        span: change.span,
        values: {
          part: partLabel(kind, change.term.part),
          condition: conditionWords(kind, change.term.part, [change.term.condition]),
          other: partLabel(kind, other.part),
          otherCondition: conditionWords(kind, other.part, [other.condition]),
          because: fault.because,
          example: stepFor(kind, other.part, clearOf(other, change.term, kind)),
        },
        severity: fault.weight,
        suggest: () => [
          {
            step: stepFor(kind, other.part, clearOf(other, change.term, kind)),
            where: 'before',
            at: fault.at.span,
          },
        ],
        subject: change.term.part,
        related: was.span
          ? [{ span: was.span, label: `the ${partLabel(kind, other.part)} was moved here` }]
          : [],
      });
    }
  },
  examples: [
    {
      name: 'the throttle shut with the cam under its screw',
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, downdraft, pump, fast-idle-cam, metering-rods] }',
        body: '## Fast idle cam\n\n1. Turn the cam up. :state[cam highest-step]\n\n## Pump stroke\n\n1. Let the throttle shut. :state[throttle shut]\n2. Measure the travel: :value[pump-stroke].\n',
      },
      expect: [
        {
          at: ':state[throttle shut]',
          message:
            'the throttle cannot be shut with the fast idle cam on its highest step: the cam stands under its screw and holds the throttle open',
          fix: 'move the fast idle cam first, in this step or before it, and mark that: `Let the fast idle cam fall clear of its screw. :state[cam slow-notch]`',
        },
      ],
    },
    {
      name: 'the throttle shut on a stop screw that is set',
      sheet: {
        body: '## Initial idle\n\n1. Turn the screw in further. :state[stop-screw set]\n\n## Pump stroke\n\n1. Let the throttle shut. :state[throttle shut]\n2. Measure the travel: :value[pump-stroke].\n',
      },
      expect: [
        {
          at: ':state[throttle shut]',
          message:
            'the throttle cannot be shut with the idle stop screw set: the screw holds the throttle off its seat',
          fix: 'move the idle stop screw first, in this step or before it, and mark that: `Back the idle stop screw off until it is clear of its lever. :state[stop-screw backed-off]`',
        },
      ],
    },
    {
      name: 'the cam swung clear in the same step',
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, downdraft, pump, fast-idle-cam, metering-rods] }',
        body: '## Fast idle cam\n\n1. Turn the cam up. :state[cam highest-step]\n\n## Pump stroke\n\n1. Swing the cam clear and let the throttle shut. :state[cam slow-notch] :state[throttle shut]\n2. Measure the travel: :value[pump-stroke].\n',
      },
      expect: [],
    },
  ],
});

/**
 * A condition of a part that shuts a state out no more: where it starts, else the first that does. One that
 * is only come into from elsewhere is none: a screw that is set is backed off, not turned in to first contact.
 */
function clearOf(other: StateTerm, wanted: StateTerm, kind: Kind): string {
  const part = kind.parts.get(other.part);
  const isClear = (condition: string): boolean =>
    (part?.conditions.get(condition)?.comesFrom?.anyOf.includes(other.condition) ?? true) &&
    !part?.conditions
      .get(condition)
      ?.bars.some((bar) => bar.part === wanted.part && bar.anyOf.includes(wanted.condition));
  const names = [...(part?.conditions.keys() ?? [])];
  return [part?.starts ?? '', ...names].find((each) => each !== '' && isClear(each)) ?? '';
}
