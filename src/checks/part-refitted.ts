import type { Kind, KindPart } from '../kinds/model.ts';
import { meets } from '../order/index.ts';
import { defineCheck } from './define.ts';
import { conditionWords, orderProof, stepFor } from './order-proof.ts';

/** A step that puts back what is in its place already. */
export default defineCheck({
  id: 'part-refitted',
  severity: 'warning',
  group: 'order',
  summary: 'A step puts a part back that no step has taken off.',
  explain:
    'Either the step that takes it off is missing, and the restorer searches for it, or the step ' +
    'was carried over from another unit’s sheet. Accept it where the part comes new with the kit.',
  messages: {
    never: {
      message: 'this step leaves the {part} {home}, and no step has had it otherwise',
      fix: 'mark the step that has it {says}: `:state[{name} {away}]`; add one if there is none, or take this one out',
    },
    again: {
      message: 'this step leaves the {part} {home}, and it is so already',
      fix: 'mark the step in between that has it {says}: `:state[{name} {away}]`; add one if there is none, or take this one out',
    },
  },
  run(sheet, _context, report) {
    const found = orderProof(sheet);
    if (found === null) return;
    const { kind, faults } = found;
    for (const fault of faults) {
      const part = fault.kind === 'refit' ? kind.parts.get(fault.part) : undefined;
      if (fault.kind !== 'refit' || part === undefined) continue;
      const { change, was } = fault;
      const away = awayFrom(part, kind);
      report({
        message: was?.span ? 'again' : 'never',
        span: change.span,
        values: {
          part: part.label,
          name: part.name,
          away,
          home: conditionWords(kind, part.name, [change.term.condition]),
          says: conditionWords(kind, part.name, [away]),
        },
        related: was?.span ? [{ span: was.span, label: 'put in its place here' }] : [],
        suggest: () => [
          { step: stepFor(kind, part.name, away), where: 'before', at: fault.at.span },
          { takeOut: 'words' },
        ],
        subject: part.name,
      });
    }
  },
  examples: [
    {
      name: 'refitted and never taken off',
      sheet: {
        body: '## Assembly\n\n1. Reinstall the dust cover. :state[dust-cover on]\n',
      },
      expect: [
        {
          at: ':state[dust-cover on]',
          message: 'this step leaves the dust cover on, and no step has had it otherwise',
          fix: 'mark the step that has it off: `:state[dust-cover off]`; add one if there is none, or take this one out',
        },
      ],
    },
    {
      name: 'refitted twice',
      sheet: {
        body: '## Strip\n\n1. Take off the dust cover. :state[dust-cover off]\n\n## Pump stroke\n\n1. Let the throttle shut. :state[throttle shut]\n2. Measure :value[pump-stroke].\n3. Refit the dust cover. :state[dust-cover on]\n\n## Assembly\n\n1. Refit the dust cover. :state[dust-cover on]\n',
      },
      expect: [
        {
          at: ':state[dust-cover on]',
          message: 'this step leaves the dust cover on, and it is so already',
          fix: 'mark the step in between that has it off: `:state[dust-cover off]`; add one if there is none, or take this one out',
        },
      ],
    },
    {
      name: 'a step that only sees to it',
      sheet: {
        body: '## Assembly\n\n1. See that the dust cover is home. :state[dust-cover on]\n',
      },
      expect: [],
    },
    {
      name: 'taken off first',
      sheet: {
        body: '## Strip\n\n1. Take off the dust cover. :state[dust-cover off]\n\n## Assembly\n\n1. Reinstall the dust cover. :state[dust-cover on]\n',
      },
      expect: [],
    },
  ],
});

/** A condition in which the part is not in its place. */
function awayFrom({ name, home, conditions }: KindPart, kind: Kind): string {
  return [...conditions.keys()].find((each) => !meets(kind, name, each, home)) ?? '';
}
