import type { SignalWord } from '../kinds/model.ts';
import { defineCheck } from './define.ts';

/** Rising harm; ANSI Z535.6 as OASIS DITA 1.3 describes its words, `notice` from memory. */
const rank: Readonly<Record<SignalWord, number>> = { notice: 0, caution: 1, warning: 2, danger: 3 };

/** A signal word that says less harm than the hazard can do. */
export default defineCheck({
  id: 'signal-too-mild',
  severity: 'warning',
  group: 'cautions',
  summary: 'The signal word of a safety message says less harm than its hazard can do.',
  explain:
    'DANGER is what will kill or maim, WARNING what could, CAUTION what hurts a little, NOTICE ' +
    'what hurts only the machine. A fire announced with CAUTION is read as a wet sleeve. Accept it ' +
    'where the work as described can do no more harm than the word says.',
  messages: {
    mild: {
      message: '`{given}` is too mild for {hazard}, which calls for `{due}`',
      fix: 'write `:::{due}`',
      suggest: [{ write: '{due}' }],
    },
  },
  run(sheet, _context, report) {
    for (const { signal, hazards, span } of sheet.messages) {
      for (const { known } of hazards) {
        if (known === null || rank[signal] >= rank[known.signal]) continue;
        const colons = /^:*/.exec(sheet.text.slice(span.start, span.end))?.[0].length ?? 0;
        report({
          message: 'mild',
          span: { start: span.start + colons, end: span.start + colons + signal.length },
          values: { given: signal, due: known.signal, hazard: known.label.toLowerCase() },
          compared: [signal, known.signal],
          subject: known.name,
        });
      }
    }
  },
  examples: [
    {
      name: 'a fire announced with caution',
      sheet: { body: ':::caution{hazard=gasoline-vapor}\nNo flame.\n:::\n' },
      expect: [
        {
          at: 'caution',
          message: '`caution` is too mild for gasoline vapor, which calls for `warning`',
          fix: 'write `:::warning`',
        },
      ],
    },
    {
      name: 'the word that is due',
      sheet: {
        body: ':::warning{hazard=gasoline-vapor}\nNo flame.\n:::\n\n## Float level\n\n1. Take off the cover: :value[float-level].\n',
      },
      expect: [],
    },
    {
      name: 'a graver word than is due',
      sheet: { body: ':::danger{hazard=gasoline-vapor}\nNo flame.\n:::\n' },
      expect: [],
    },
  ],
});
