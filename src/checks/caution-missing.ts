import { defineCheck } from './define.ts';
import { hazardsMet } from './hazards.ts';

/** Work that meets a hazard on a sheet that has no message about it. */
export default defineCheck({
  id: 'caution-missing',
  severity: 'warning',
  group: 'cautions',
  summary: 'The work meets a hazard that no safety message of the sheet is about.',
  explain:
    'Who works from a card in the vise does not fetch a second paper to learn that the bowl still ' +
    'holds gasoline. Accept it where the hazard cannot arise on this unit, and say why. What the kind calls ' +
    'a danger kills: without its message the sheet is wrong, and what the work meets instead on this unit is ' +
    'said by `hazards:` of the operation under `work:`.',
  messages: {
    missing: {
      message: '`{operation}` meets a hazard, {hazard}, and no message of the sheet is about it',
      fix: 'above step 1 put a line `:::{signal}{attribute}` and a line `:::`, with words between them or none: then the words of the kind are printed',
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    if (kind === null) return;
    for (const { hazard, operation, from, messages } of hazardsMet(sheet, kind)) {
      if (messages.length > 0) continue;
      const known = kind.hazards.get(hazard);
      if (known === undefined) continue;
      const unnamed = sheet.messages.filter(
        ({ signal, hazards, span }) =>
          hazards.length === 0 && signal !== 'notice' && span.start < from,
      );
      report({
        message: 'missing',
        severity: known.signal === 'danger' ? 'error' : 'warning',
        span: operation.heading.span,
        values: {
          operation: operation.heading.value,
          hazard: known.label.toLowerCase(),
          signal: known.signal,
          attribute: `{hazard=${hazard}}`,
        },
        suggest: () => [{ caution: hazard, at: operation.heading.span }],
        related: unnamed.map(({ span }) => ({
          span,
          label: 'this message names no hazard',
        })),
        subject: hazard,
        alsoCalled: operation.known ? [operation.known.name] : [],
      });
    }
  },
  examples: [
    {
      name: 'fuel, and not a word about it',
      sheet: { body: '## Float level\n\n1. Take off the cover: :value[float-level].\n' },
      expect: [
        {
          at: 'Float level',
          message:
            '`Float level` meets a hazard, gasoline vapor, and no message of the sheet is about it',
          fix: 'above step 1 put a line `:::warning{hazard=gasoline-vapor}` and a line `:::`, with words between them or none: then the words of the kind are printed',
        },
      ],
    },
    {
      name: 'an engine that runs, and not a word about its exhaust',
      sheet: {
        body: ':::warning{hazard="gasoline-vapor, backfire, moving-parts, hot-surface, vehicle-movement"}\nNo flame.\n:::\n\n## First start\n\n1. Start it. :state[wheels chocked] :state[gear neutral] :state[engine running]\n',
      },
      expect: [
        {
          at: 'First start',
          severity: 'error',
          message:
            '`First start` meets a hazard, carbon monoxide, and no message of the sheet is about it',
          fix: 'above step 1 put a line `:::danger{hazard=carbon-monoxide}` and a line `:::`, with words between them or none: then the words of the kind are printed',
        },
      ],
    },
    {
      name: 'a message about each hazard of the work',
      sheet: {
        body: ':::warning{hazard=gasoline-vapor}\nNo flame.\n:::\n\n## Float level\n\n1. Take off the cover: :value[float-level].\n',
      },
      expect: [],
    },
    {
      name: 'work that meets none',
      sheet: { body: '## Metering rods\n\n1. Press them down and clamp the arm.\n' },
      expect: [],
    },
  ],
});
