import type { Kind } from '../kinds/model.ts';
import { nearestName, plainWords } from '../text/index.ts';
import { isBrokenMark } from './broken-marks.ts';
import { defineCheck } from './define.ts';
import { markFor, orderProof } from './order-proof.ts';
import { eitherOf, ofTheKind } from './vocabulary.ts';

/** `:state[...]` that names no part of the unit, or no condition of the part. */
export default defineCheck({
  id: 'state-unknown',
  severity: 'error',
  group: 'order',
  summary: 'A state mark names a part or a condition that the kind of unit does not have.',
  explain:
    'A mark that is not understood proves nothing: the cover it takes off is never missed. Accept ' +
    'it where the mark is of a part that the kind does not follow, and is there for readers only.',
  messages: {
    near: {
      message: '`{text}` is no state that is known',
      fix: 'write `:state[{near}]`',
      suggest: [{ write: ':state[{near}]' }],
    },
    condition: {
      message: '`{text}` names the {part}, but none of its conditions',
      fix: 'write one of them: {choices}',
    },
    other: {
      message: '`{text}` is a state of the kind `{other}`, and this unit is of the kind `{kind}`',
      fix: 'write a state of this unit, or correct `kind:` under `unit:`',
      suggest: [{ takeOut: 'words' }],
    },
    unknown: {
      message: '`{text}` names no part of this kind of unit',
      fix: 'write a part and its condition, such as `:state[{example}]`, or take the mark out {names}',
      suggest: [{ takeOut: 'words' }],
    },
    empty: {
      message: '`:state` names no part',
      fix: 'write a part and its condition: `:state[{example}]`',
    },
  },
  run(sheet, context, report) {
    const found = orderProof(sheet);
    if (found === null) return;
    const { kind, walk } = found;
    const example = firstMark(kind);
    for (const { text, span } of walk.unknownMarks) {
      if (isBrokenMark(span, sheet)) continue;
      const plain = plainWords(text);
      if (plain === '') {
        report({
          message: 'empty',
          span,
          values: { example },
          suggest: () => [{ takeOut: 'words' }],
        });
        continue;
      }
      const other = [...context.kinds.values()].find(
        (each) => each.name !== kind.name && each.stateNamed(text) !== null,
      );
      const near = nearestName(plain, kind.stateNames());
      const part = kind.partBegun(text);
      if (near !== null) report({ message: 'near', span, values: { text, near }, subject: plain });
      else if (part !== null) {
        const choices = eitherOf([...part.conditions.keys()].map((each) => `${part.name} ${each}`));
        const values = { text, part: part.label, choices };
        report({
          message: 'condition',
          span,
          values,
          subject: part.name,
          suggest: () =>
            [...part.conditions.keys()].map((each) => ({ write: markFor(kind, part.name, each) })),
        });
      } else if (other !== undefined)
        report({
          message: 'other',
          span,
          values: { text, other: other.name, kind: kind.name },
          subject: plain,
        });
      else if (kind.parts.size > 0)
        report({
          message: 'unknown',
          span,
          values: { text, example, names: ofTheKind(text, kind.parts.values(), kind) },
          subject: plain,
          severity: 'warning',
        });
    }
  },
  examples: [
    {
      name: 'two letters swapped',
      sheet: { body: '## Float level\n\n1. Lift away the gasket. :state[gaskte off]\n' },
      expect: [
        {
          at: ':state[gaskte off]',
          message: '`gaskte off` is no state that is known',
          fix: 'write `:state[gasket off]`',
        },
      ],
    },
    {
      name: 'a part that is known, in no condition of it',
      sheet: { body: '## Float level\n\n1. Lift the cover. :state[cover dangling by its chain]\n' },
      expect: [
        {
          at: ':state[cover dangling by its chain]',
          message: '`cover dangling by its chain` names the bowl cover, but none of its conditions',
          fix: 'write one of them: `cover on`, `cover off`, `cover inverted` or `cover upright`',
        },
      ],
    },
    {
      name: 'a part of another kind of unit',
      sheet: {
        front:
          'unit: { kind: fuel-pump, maker: Orlo, model: P29 }\nsettings: { pump-pressure: { value: 4 psi, from: m48 p. 50 } }',
        body: '## Diaphragm\n\n1. Back the screw off. :state[stop-screw backed-off]\n',
      },
      expect: [
        {
          at: ':state[stop-screw backed-off]',
          message:
            '`stop-screw backed-off` is a state of the kind `carburetor`, and this unit is of the kind `fuel-pump`',
          fix: 'write a state of this unit, or correct `kind:` under `unit:`',
        },
      ],
    },
    {
      name: 'a part that nobody follows',
      sheet: { body: '## Strip\n\n1. Unhook the heat tube. :state[heat-tube unhooked]\n' },
      expect: [
        {
          at: ':state[heat-tube unhooked]',
          severity: 'warning',
          message: '`heat-tube unhooked` names no part of this kind of unit',
          fix: 'write a part and its condition, such as `:state[unit on-bench]`, or take the mark out (`gaugeleaf kind carburetor` lists all)',
        },
      ],
    },
    {
      name: 'nothing in the brackets',
      sheet: { body: '## Strip\n\n1. Unhook the rod. :state[]\n' },
      expect: [
        {
          at: ':state[]',
          message: '`:state` names no part',
          fix: 'write a part and its condition: `:state[unit on-bench]`',
        },
      ],
    },
    {
      name: 'other names of parts and conditions, whatever the case',
      sheet: {
        body: '## Strip\n\n1. Take it down. :state[Carburetor on the bench] :state[lid removed] :state[fast idle cam: highest step]\n',
      },
      expect: [],
    },
  ],
});

function firstMark(kind: Kind): string {
  const [part] = kind.parts.values();
  return `${part?.name ?? ''} ${[...(part?.conditions.keys() ?? [])][0] ?? ''}`;
}
