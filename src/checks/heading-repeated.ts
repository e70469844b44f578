import type { Operation } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { plainName } from './vocabulary.ts';

/** Two headings that say the same. */
export default defineCheck({
  id: 'heading-repeated',
  severity: 'warning',
  group: 'reading',
  summary: 'Two headings of the sheet have the same words, or the same name in braces.',
  explain:
    'A heading that stands twice is mostly a passage that was copied and not rewritten, and the ' +
    'restorer who turns back to it finds the wrong one. Work that is done again, such as the idle ' +
    'speed after the mixture, gets a heading that says so: `## Idle speed, once more {#idle-speed}`. ' +
    'Accept it where the same words are right in both places.',
  messages: {
    words: {
      message: 'the heading `{heading}` stands a second time',
      fix: 'say what is different in it, such as `## {heading}, once more {id}`, or join the two',
      suggest: [{ write: '{heading}, once more {id}' }],
    },
    id: {
      message: 'a second heading is named `{id}`, and no operation of the kind has that name',
      fix: 'give it a name of its own',
    },
  },
  run(sheet, _context, report) {
    const words = new Map<string, Operation>();
    const ids = new Map<string, Operation>();
    for (const operation of sheet.operations) {
      const { heading, id, known } = operation;
      const plain = plainName(heading.value);
      const same = words.get(plain);
      if (same === undefined) words.set(plain, operation);
      else {
        report({
          message: 'words',
          span: heading.span,
          values: { heading: heading.value, id: `{#${known?.name ?? id?.value ?? plain}}` },
          related: [{ span: same.heading.span, label: 'the first' }],
          subject: known?.name ?? heading.value,
          alsoCalled: [heading.value],
        });
        continue;
      }
      // Two headings may well name one operation of the kind: that is how it is done again.
      if (id === null || known !== null) continue;
      const first = ids.get(id.value);
      if (first === undefined) ids.set(id.value, operation);
      else {
        report({
          message: 'id',
          span: id.span,
          values: { id: id.value },
          suggest: () => [{ write: `{#${id.value}-again}` }],
          related: [{ span: first.id?.span ?? first.heading.span, label: 'the first' }],
          subject: id.value,
        });
      }
    }
  },
  examples: [
    {
      name: 'a heading copied',
      sheet: {
        body: '## Float level\n\n1. Set it: :value[float-level].\n\n## Float level\n\n1. Set it again.\n',
      },
      expect: [
        {
          at: 'Float level',
          message: 'the heading `Float level` stands a second time',
          fix: 'say what is different in it, such as `## Float level, once more {#float-level}`, or join the two',
        },
      ],
    },
    {
      name: 'a name in braces copied',
      sheet: {
        body: '## Heater jacket {#heater}\n\n1. Fit it.\n\n## Heater flap {#heater}\n\n1. Fit it.\n',
      },
      expect: [
        {
          at: 'heater',
          message: 'a second heading is named `heater`, and no operation of the kind has that name',
          fix: 'give it a name of its own',
        },
      ],
    },
    {
      name: 'an operation done again, and said so',
      sheet: {
        body: '## Idle speed\n\n1. Set it.\n\n## Idle mixture\n\n1. Set it.\n\n## Idle speed, once more {#idle-speed}\n\n1. Set it again.\n',
      },
      expect: [],
    },
  ],
});
