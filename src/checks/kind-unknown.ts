import { defineCheck } from './define.ts';
import { eitherOf, nearest } from './vocabulary.ts';

/** `unit: kind:` names a kind that no data file describes. */
export default defineCheck({
  id: 'kind-unknown',
  severity: 'error',
  group: 'reading',
  summary: 'Nobody has described the kind of unit that the sheet names.',
  explain:
    'The kind says which settings there are, what they are sizes of and which hazards the work ' +
    'meets. Without it most checks have nothing to hold the sheet against. It cannot be accepted.',
  messages: {
    near: {
      message: 'there is no kind of unit `{kind}`',
      fix: 'write `kind: {near}`',
      suggest: [{ write: '{near}' }],
    },
    unknown: {
      message: 'there is no kind of unit `{kind}`',
      fix: 'write {kinds}; a new kind needs a data file of its own',
    },
  },
  run(sheet, context, report) {
    const named = sheet.unit.kind;
    if (named === null || sheet.kind !== null) return;
    const near = nearest(named.value, context.kinds.keys());
    if (near !== null) {
      report({ message: 'near', span: named.span, values: { kind: named.value, near } });
      return;
    }
    const kinds = eitherOf([...context.kinds.keys()].sort());
    report({
      message: 'unknown',
      span: named.span,
      values: { kind: named.value, kinds },
      suggest: () => [...context.kinds.keys()].sort().map((write) => ({ write })),
    });
  },
  examples: [
    {
      name: 'a misspelt kind',
      sheet: { front: 'unit: { kind: carburettor, maker: Orlo, model: F27, features: [pump] }' },
      expect: [
        {
          at: 'carburettor',
          message: 'there is no kind of unit `carburettor`',
          fix: 'write `kind: carburetor`',
        },
      ],
    },
    {
      name: 'a kind that nobody has described, in a project with a kind of its own',
      sheet: { front: 'unit: { kind: wiper-motor, maker: Orlo, model: M19 }' },
      expect: [
        {
          at: 'wiper-motor',
          message: 'there is no kind of unit `wiper-motor`',
          fix: 'write `carburetor`, `fuel-pump`, `generator`, `ignition-distributor` or `magneto`; a new kind needs a data file of its own',
        },
      ],
    },
    {
      name: 'the kind `carburetor`',
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, downdraft, pump] }',
      },
      expect: [],
    },
  ],
});
