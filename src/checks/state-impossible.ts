import { defineCheck } from './define.ts';
import { conditionWords, orderProof, partLabel } from './order-proof.ts';

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
      message: 'the {part} cannot be {condition} with the {other} at its {otherCondition}',
      fix: 'move the {other} first, in this step or before it, and mark that: `:state[{example}]`',
    },
  },
  run(sheet, _context, report) {
    const found = orderProof(sheet);
    if (found === null) return;
    const { kind, faults } = found;
    for (const fault of faults) {
      if (fault.kind !== 'forbidden') continue;
      const { change, other, was } = fault;
      const starts = kind.parts.get(other.part)?.starts ?? '';
      report({
        message: 'impossible',
        span: change.span,
        values: {
          part: partLabel(kind, change.term.part),
          condition: conditionWords([change.term.condition]),
          other: partLabel(kind, other.part),
          otherCondition: conditionWords([other.condition]),
          example: `${other.part} ${starts}`,
        },
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
          message: 'the throttle cannot be shut with the fast idle cam at its highest step',
          fix: 'move the fast idle cam first, in this step or before it, and mark that: `:state[cam slow-notch]`',
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
