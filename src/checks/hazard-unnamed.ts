import { defineCheck } from './define.ts';

/** A DANGER or WARNING that does not say which hazard it is about. */
export default defineCheck({
  id: 'hazard-unnamed',
  severity: 'note',
  group: 'cautions',
  summary: 'A danger or warning does not name its hazard, so it counts for none.',
  explain:
    'The name in the braces lets the tool see that each hazard of the work is covered, and before ' +
    'the step that meets it. The words alone are printed but not understood. A CAUTION or NOTICE ' +
    'may be about the unit and not the person, and needs no name.',
  messages: {
    unnamed: {
      message: 'this {signal} does not name its hazard',
      fix: 'write it as `:::{signal}{attribute}`, with the name of the hazard',
    },
  },
  run(sheet, _context, report) {
    for (const { signal, hazards, span, operation } of sheet.messages) {
      if (hazards.length > 0 || (signal !== 'danger' && signal !== 'warning')) continue;
      const line = /^[^\r\n]*/.exec(sheet.text.slice(span.start, span.end))?.[0] ?? '';
      report({
        message: 'unnamed',
        span: { start: span.start, end: span.start + line.trimEnd().length },
        values: { signal, attribute: '{hazard=...}' },
        suggest: () => {
          const met = sheet.operations.find(({ index }) => index === operation)?.known?.hazards;
          const all = [...(met ?? []), ...(sheet.kind?.hazards.keys() ?? [])];
          const due = [...new Set(all)].filter(
            (name) => sheet.kind?.hazards.get(name)?.signal === signal,
          );
          return due.slice(0, 6).map((name) => ({ before: '', behind: `{hazard=${name}}` }));
        },
        subject: signal,
      });
    }
  },
  examples: [
    {
      name: 'a warning about something',
      sheet: { body: ':::warning\nNo flame, spark or hot lamp.\n:::\n' },
      expect: [
        {
          at: ':::warning',
          message: 'this warning does not name its hazard',
          fix: 'write it as `:::warning{hazard=...}`, with the name of the hazard',
        },
      ],
    },
    {
      name: 'a warning about gasoline vapor, and a notice about the unit',
      sheet: {
        body: ':::warning{hazard=gasoline-vapor}\nNo flame.\n:::\n\n:::notice\nNever bend the needle tab.\n:::\n',
      },
      expect: [],
    },
  ],
});
