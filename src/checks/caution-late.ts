import { defineCheck } from './define.ts';
import { hazardsMet } from './hazards.ts';

/** A message that stands only after the work it is about. */
export default defineCheck({
  id: 'caution-late',
  severity: 'warning',
  group: 'cautions',
  summary: 'A safety message stands only after the first step that meets its hazard.',
  explain:
    'Steps are read one at a time with both hands busy: a warning below the step it is about is ' +
    'read when the fuel is on the floor. Accept it where the earlier step cannot meet the hazard.',
  messages: {
    late: {
      message:
        'the message about {hazard} stands only after the first step that meets it, in `{operation}`',
      fix: 'move it above step {step} of `{operation}`',
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    if (kind === null) return;
    for (const { hazard, operation, from, messages } of hazardsMet(sheet, kind)) {
      const first = messages[0];
      if (first === undefined || first.span.start < from) continue;
      const step = operation.steps[0];
      report({
        message: 'late',
        span: openingLine(sheet.text, first.span),
        values: {
          hazard: (kind.hazards.get(hazard)?.label ?? hazard).toLowerCase(),
          operation: operation.heading.value,
          step: String(step?.number ?? 1),
        },
        related: [
          { span: step?.span ?? operation.heading.span, label: 'the first step that meets it' },
        ],
        suggest: () => (step === undefined ? [] : [{ at: first.span, lift: step.span }]),
        subject: hazard,
        alsoCalled: operation.known ? [operation.known.name] : [],
      });
    }
  },
  examples: [
    {
      name: 'gasoline vapor, after the bowl is open',
      sheet: {
        body: '## Float level\n\n1. Take off the cover.\n\n:::warning{hazard=gasoline-vapor}\nNo flame.\n:::\n',
      },
      expect: [
        {
          at: ':::warning{hazard=gasoline-vapor}',
          message:
            'the message about gasoline vapor stands only after the first step that meets it, in `Float level`',
          fix: 'move it above step 1 of `Float level`',
        },
      ],
    },
    {
      name: 'before step 1',
      sheet: {
        body: '## Float level\n\n:::warning{hazard=gasoline-vapor}\nNo flame.\n:::\n\n1. Take off the cover.\n',
      },
      expect: [],
    },
    {
      name: 'before all work, once for the whole sheet',
      sheet: {
        body: ':::warning{hazard=gasoline-vapor}\nNo flame.\n:::\n\n## Float level\n\n1. Take off the cover.\n',
      },
      expect: [],
    },
  ],
});

/** The line that opens a message: a whole message underlined would hide the place. */
function openingLine(
  text: string,
  span: { readonly start: number; readonly end: number },
): { readonly start: number; readonly end: number } {
  const line = /^[^\r\n]*/.exec(text.slice(span.start, span.end))?.[0] ?? '';
  return { start: span.start, end: span.start + line.trimEnd().length };
}
