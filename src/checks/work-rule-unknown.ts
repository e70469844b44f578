import type { Kind } from '../kinds/model.ts';
import { defineCheck } from './define.ts';
import { orderProof } from './order-proof.ts';
import { nearest, wordsOf } from './vocabulary.ts';

/** A name in the sheet's own rules that the kind does not know, or a rule that it does not have. */
export default defineCheck({
  id: 'work-rule-unknown',
  severity: 'error',
  group: 'order',
  summary: 'A rule under `work:` names something that the kind of unit does not have.',
  explain:
    'A rule that names nothing rules nothing, and the order is proved without it. A rule overruled ' +
    'that the kind does not have is harmless, and a sign that another one was meant.',
  messages: {
    near: {
      message: 'the kind has no {what} `{name}`',
      fix: 'write `{near}`',
      suggest: [{ write: '{near}' }],
    },
    absent: {
      message: 'the kind has no {what} `{name}`',
      fix: 'write one that it has (`gaugeleaf kind {kind}` lists all), or take it out',
      suggest: [{ takeOut: 'entry' }],
    },
    idle: {
      message: '`{name}` is overruled for `{operation}`, and the kind has no such rule',
      fix: 'take it out, or name the rule that is meant',
      suggest: [{ takeOut: 'entry' }],
    },
  },
  run(sheet, _context, report) {
    const found = orderProof(sheet);
    if (found === null) return;
    for (const fault of found.ruleFaults) {
      if (fault.kind === 'unknown') {
        const { what, name } = fault;
        const near = nearest(name.value, choices(what, found.kind));
        const values = { what, name: name.value };
        const at = { span: name.span, subject: name.value };
        if (near === null)
          report({ ...at, message: 'absent', values: { ...values, kind: found.kind.name } });
        else report({ ...at, message: 'near', values: { ...values, near } });
      } else if (fault.kind === 'idle') {
        report({
          message: 'idle',
          span: fault.name.span,
          severity: 'note',
          values: { name: fault.name.value, operation: fault.rule.operation.value },
          subject: fault.name.value,
        });
      }
    }
  },
  examples: [
    {
      name: 'an operation misspelt',
      sheet: { front: 'work:\n  dashpot: { after: [pump-stoke] }' },
      expect: [
        {
          at: 'pump-stoke',
          message: 'the kind has no operation `pump-stoke`',
          fix: 'write `pump-stroke`',
        },
      ],
    },
    {
      name: 'a part that the kind does not follow',
      sheet: { front: 'work:\n  dashpot: { needs: { heat-tube: unhooked } }' },
      expect: [
        {
          at: 'heat-tube',
          message: 'the kind has no part `heat-tube`',
          fix: 'write one that it has (`gaugeleaf kind carburetor` lists all), or take it out',
        },
      ],
    },
    {
      name: 'a rule overruled that there is not',
      sheet: {
        front:
          'work:\n  dashpot: { without: { after: [unloader] }, because: it hangs on the cover }',
      },
      expect: [
        {
          at: 'unloader',
          severity: 'note',
          message: '`unloader` is overruled for `dashpot`, and the kind has no such rule',
          fix: 'take it out, or name the rule that is meant',
        },
      ],
    },
    {
      name: 'names and conditions that the kind has',
      sheet: {
        front:
          'work:\n  dashpot: { after: [accelerator pump], needs: { throttle plates: on its stop }, disturbs: [idle-stop], leaves: { choke: open } }',
      },
      expect: [],
    },
  ],
});

function choices(
  what: 'operation' | 'part' | 'condition' | 'setting' | 'hazard',
  kind: Kind,
): readonly string[] {
  if (what === 'operation') return wordsOf(kind.operations);
  if (what === 'setting') return wordsOf(kind.settings);
  if (what === 'hazard') return wordsOf(kind.hazards);
  if (what === 'part') return wordsOf(kind.parts);
  return [...kind.parts.values()].flatMap(({ conditions }) => wordsOf(conditions));
}
