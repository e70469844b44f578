import type { Kind } from '../kinds/model.ts';
import type { Operation, Sheet } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { nearest, ofTheKind, oneUnit, wordsOf } from './vocabulary.ts';

/** A heading with steps under it that names no operation of the kind. */
export default defineCheck({
  id: 'operation-unknown',
  severity: 'warning',
  group: 'reading',
  summary: 'A heading names no operation that the kind of unit knows.',
  explain:
    'What an operation needs, what it disturbs and which hazards it meets come from the kind, by ' +
    'the name in the heading. Steps under an unknown heading are printed, but no caution is asked ' +
    'for and no order proved. A heading without steps is taken as prose. Accept it for work of the ' +
    "club's own that meets no hazard.",
  messages: {
    near: {
      message: '{kind} has no operation `{heading}`',
      fix: 'write `{near}`, or name the operation after the heading: `## {heading} {id}`',
      suggest: [{ write: '{near}' }, { before: '', behind: ' {id}' }],
    },
    unknown: {
      message: '{kind} has no operation `{heading}`',
      fix: 'write `## {heading} {#name}`, with the name of the operation that the work belongs to {names}',
    },
    made: {
      message: '{kind} has no operation `{heading}`',
      fix: 'write `## {heading} {id}`, since its steps make `{setting}`',
      suggest: [{ before: '', behind: ' {id}' }],
    },
    id: {
      message: '{kind} has no operation `{given}`, which the heading names in braces',
      fix: 'write `{cure}`',
      suggest: [{ write: '{cure}' }],
    },
    strange: {
      message: '{kind} has no operation `{given}`, which the heading names in braces',
      fix: 'write the name of the operation that the work belongs to {names}',
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    if (kind === null) return;
    for (const operation of sheet.operations) {
      if (operation.known !== null) continue;
      const { heading, id } = operation;
      const words = wordsOf(kind.operations);
      const subject = id?.value ?? heading.value;
      const alsoCalled = [heading.value];
      if (id !== null) {
        const near = nearest(id.value, words);
        if (near === null && !isWork(operation)) continue;
        const values = { kind: oneUnit(kind), given: id.value };
        const at = { span: id.span, subject, alsoCalled };
        if (near === null) {
          const names = ofTheKind(id.value, kind.operations.values(), kind);
          report({ ...at, message: 'strange', values: { ...values, names } });
        } else report({ ...at, message: 'id', values: { ...values, cure: `{#${near}}` } });
        continue;
      }
      const near = nearest(heading.value, words);
      if (near === null && !isWork(operation)) continue;
      const known = near === null ? null : kind.operationNamed(near);
      const { span } = heading;
      const values = { kind: oneUnit(kind), heading: heading.value };
      const made = known === null ? makes(operation, sheet, kind) : null;
      if (made !== null) {
        const named = { ...values, id: `{#${made.operation}}`, setting: made.setting };
        report({ message: 'made', span, values: named, subject, alsoCalled });
      } else if (known === null) {
        const names = ofTheKind(heading.value, kind.operations.values(), kind);
        report({ message: 'unknown', span, values: { ...values, names }, subject, alsoCalled });
      } else {
        const named = { ...values, id: `{#${known.name}}`, near: known.label };
        report({ message: 'near', span, values: named, subject, alsoCalled });
      }
    }
  },
  examples: [
    {
      name: 'two letters swapped',
      sheet: { body: '## Flaot level\n\n1. Set the float: :value[float-level].\n' },
      expect: [
        {
          at: 'Flaot level',
          message: 'a carburetor has no operation `Flaot level`',
          fix: 'write `Float level`, or name the operation after the heading: `## Flaot level {#float-level}`',
        },
      ],
    },
    {
      name: 'work that the kind has no word for',
      sheet: { body: '## Heater jacket\n\n1. Blank off the jacket.\n' },
      expect: [
        {
          at: 'Heater jacket',
          message: 'a carburetor has no operation `Heater jacket`',
          fix: 'write `## Heater jacket {#name}`, with the name of the operation that the work belongs to (`gaugeleaf kind carburetor` lists all)',
        },
      ],
    },
    {
      name: 'a word of its own for work whose setting is known',
      sheet: { body: '## Rise and fall\n\n1. Measure at the free end: :value[float-level].\n' },
      expect: [
        {
          at: 'Rise and fall',
          message: 'a carburetor has no operation `Rise and fall`',
          fix: 'write `## Rise and fall {#float-level}`, since its steps make `float-level`',
        },
      ],
    },
    {
      name: 'a name in braces that shares a word with some',
      sheet: { body: '## Ball and arm {#pump-lever-pin}\n\n1. Set it: :value[float-level].\n' },
      expect: [
        {
          at: 'pump-lever-pin',
          message:
            'a carburetor has no operation `pump-lever-pin`, which the heading names in braces',
          fix: 'write the name of the operation that the work belongs to (perhaps `pump-stroke`, `lever-clearance` or `pump-delivery`; `gaugeleaf kind carburetor` lists all)',
        },
      ],
    },
    {
      name: 'a misspelt name in braces',
      sheet: { body: '## Ball and arm {#flaot-level}\n\n1. Set it: :value[float-level].\n' },
      expect: [
        {
          at: 'flaot-level',
          message: 'a carburetor has no operation `flaot-level`, which the heading names in braces',
          fix: 'write `{#float-level}`',
        },
      ],
    },
    {
      name: "a heading of one's own that names its operation, and one without steps",
      sheet: {
        body: '## Setting the float {#float-level}\n\n1. Set it: :value[float-level].\n\n## A word of thanks\n\nTo all who measured.\n',
      },
      expect: [],
    },
  ],
});

/** The first setting that an operation's steps use and the kind's operation that makes it. */
function makes(
  { index }: Operation,
  sheet: Sheet,
  kind: Kind,
): { readonly setting: string; readonly operation: string } | null {
  for (const { id: setting, operation } of sheet.values) {
    if (operation !== index) continue;
    for (const known of kind.operations.values()) {
      if (known.settings.includes(setting)) return { setting, operation: known.name };
    }
  }
  return null;
}

function isWork(operation: Operation): boolean {
  return operation.steps.length > 0;
}
