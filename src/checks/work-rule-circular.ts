import { defineCheck } from './define.ts';
import { orderProof } from './order-proof.ts';

/** Operations that wait for one another by the sheet's own rules. */
export default defineCheck({
  id: 'work-rule-circular',
  severity: 'error',
  group: 'order',
  summary: 'By a rule of the sheet, operations wait for one another in a circle.',
  explain:
    'No order of headings keeps such rules, so this one is left out of the proof. Take it out, or ' +
    'overrule the other half of the circle with `without` and a reason.',
  messages: {
    circle: {
      message: 'these wait for one another: {circle}',
      fix: 'take this `after` out, or overrule the other way round: `{early}: { without: { after: [{late}] }, because: ... }`',
      suggest: [{ takeOut: 'entry' }],
    },
  },
  run(sheet, _context, report) {
    for (const fault of orderProof(sheet)?.ruleFaults ?? []) {
      if (fault.kind !== 'circle') continue;
      const [late = '', early = ''] = fault.circle;
      report({
        message: 'circle',
        span: fault.name.span,
        values: { circle: fault.circle.map((each) => `\`${each}\``).join(' after '), late, early },
        subject: late,
      });
    }
  },
  examples: [
    {
      name: 'against the kind',
      sheet: { front: 'work:\n  unloader: { after: [fast-idle-gap] }' },
      expect: [
        {
          at: 'fast-idle-gap',
          message: 'these wait for one another: `unloader` after `fast-idle-gap` after `unloader`',
          fix: 'take this `after` out, or overrule the other way round: `fast-idle-gap: { without: { after: [unloader] }, because: ... }`',
        },
      ],
    },
    {
      name: 'among the rules of the sheet',
      sheet: {
        front: 'work:\n  dashpot: { after: [bowl-vent] }\n  bowl-vent: { after: [dashpot] }',
      },
      expect: [
        {
          at: 'dashpot',
          message: 'these wait for one another: `bowl-vent` after `dashpot` after `bowl-vent`',
          fix: 'take this `after` out, or overrule the other way round: `dashpot: { without: { after: [bowl-vent] }, because: ... }`',
        },
      ],
    },
    {
      name: 'the other way round, with the kind overruled',
      sheet: {
        front:
          'work:\n  unloader: { after: [fast-idle-gap] }\n  fast-idle-gap: { without: { after: [unloader] }, because: the lug stands on the other lever }',
      },
      expect: [],
    },
  ],
});
