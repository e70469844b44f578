import { defineCheck } from './define.ts';
import { orderProof } from './order-proof.ts';

/** A rule of the kind that the sheet overrules without a reason. */
export default defineCheck({
  id: 'work-rule-unreasoned',
  severity: 'error',
  group: 'order',
  summary: 'The sheet overrules a rule of the order of work and does not say why.',
  explain:
    'The rules of the order guard what goes wrong unseen. Whoever edits the next edition has to ' +
    'know what on this unit makes one of them needless.',
  messages: {
    unreasoned: {
      message: '`{operation}` overrules the kind under `without`, and gives no reason',
      fix: 'add `because:` beside `without:`, with what is different on this unit',
      suggest: [{ say: 'because', as: null }],
    },
    changed: {
      message: '`{operation}` says another {what} than the kind, and gives no reason',
      fix: 'add `because:` beside it, with what is different on this unit',
      suggest: [{ say: 'because', as: null }],
    },
    own: {
      message: '`{operation}` is the sheet’s own, and gives no reason',
      fix: 'add `because:`, with what it is for on this unit',
      suggest: [{ say: 'because', as: null }],
    },
  },
  run(sheet, _context, report) {
    for (const fault of orderProof(sheet)?.ruleFaults ?? []) {
      if (fault.kind !== 'unreasoned') continue;
      const { operation } = fault.rule;
      report({
        message: fault.what === 'without' ? 'unreasoned' : fault.what === 'own' ? 'own' : 'changed',
        span: operation.span,
        values: {
          operation: operation.value,
          what: fault.what === 'hazards' ? 'list of hazards' : 'stage',
        },
        subject: operation.value,
      });
    }
  },
  examples: [
    {
      name: 'no reason',
      sheet: { front: 'work:\n  fast-idle-gap: { without: { after: [unloader] } }' },
      expect: [
        {
          at: 'fast-idle-gap',
          message: '`fast-idle-gap` overrules the kind under `without`, and gives no reason',
          fix: 'add `because:` beside `without:`, with what is different on this unit',
        },
      ],
    },
    {
      name: 'with its reason',
      sheet: {
        front:
          'work:\n  fast-idle-gap: { without: { after: [unloader] }, because: the lug stands on the other lever }',
      },
      expect: [],
    },
    {
      name: 'another stage, and no reason',
      sheet: { front: 'work:\n  dashpot: { stage: running }' },
      expect: [
        {
          at: 'dashpot',
          message: '`dashpot` says another stage than the kind, and gives no reason',
          fix: 'add `because:` beside it, with what is different on this unit',
        },
      ],
    },
    {
      name: 'an operation of the sheet’s own, and no reason',
      sheet: { front: 'work:\n  jet-centering: { label: Jet centering, stage: bench }' },
      expect: [
        {
          at: 'jet-centering',
          message: '`jet-centering` is the sheet’s own, and gives no reason',
          fix: 'add `because:`, with what it is for on this unit',
        },
      ],
    },
    {
      name: 'a rule added needs none',
      sheet: { front: 'work:\n  dashpot: { after: [pump-stroke] }' },
      expect: [],
    },
  ],
});
