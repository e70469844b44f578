import { thread, threads } from '../gauges/index.ts';
import { NOT_STATED } from '../quantity/index.ts';
import { isBlank } from './blank.ts';
import { defineCheck } from './define.ts';

/** `10-33 UNF`: a thread that no system knows. */
export default defineCheck({
  id: 'thread-unknown',
  severity: 'warning',
  group: 'sizes',
  summary: 'A thread of the unit is in no system of threads.',
  explain:
    'From turns and a thread the travel of a screw is worked; of a thread that is in no table its pitch ' +
    'is unknown, and nothing is worked or proved. Accept it where a maker cut a thread of his own, and ' +
    'the count of threads was taken from the screw.',
  messages: {
    near: {
      message: '{text} is no thread of any system that Gaugeleaf has',
      fix: 'write {near}, as the source or the screw has it',
    },
    unknown: {
      message: '{text} is no thread of any system that Gaugeleaf has',
      fix: 'write it as `10-32 UNF`, `1/4-20 UNC`, `2 BA`, `M6 x 0.75`',
    },
  },
  run(sheet, _context, report) {
    for (const [key, { value, span }] of sheet.unit.threads) {
      if (isBlank(value) || value.trim() === NOT_STATED || thread(value) !== null) continue;
      const near = nearThreads(value);
      const values = { text: value, near: near.join(' or ') };
      report({ message: near.length > 0 ? 'near' : 'unknown', span, values, subject: key });
    }
  },
  examples: [
    {
      name: 'a pitch that the diameter does not have',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft, pump]\n  idle-needle-thread: 10-33 UNF',
      },
      expect: [
        {
          at: '10-33 UNF',
          message: '10-33 UNF is no thread of any system that Gaugeleaf has',
          fix: 'write 10-32 UNF or 10-24 UNC, as the source or the screw has it',
        },
      ],
    },
    {
      name: 'words for a thread',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft, pump]\n  idle-needle-thread: fine',
      },
      expect: [
        {
          at: 'fine',
          message: 'fine is no thread of any system that Gaugeleaf has',
          fix: 'write it as `10-32 UNF`, `1/4-20 UNC`, `2 BA`, `M6 x 0.75`',
        },
      ],
    },
    {
      name: 'threads as papers write them',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft, pump]\n  idle-needle-thread: No. 10-32 N.F.\n  stop-screw-thread: 2 B.A.\n  jet-nut-thread: M6 × 0.75',
      },
      expect: [],
    },
  ],
});

/** Threads of the same diameter, the nearest pitch first; at most two. */
function nearThreads(text: string): readonly string[] {
  const plain = text.trim().replace(/^(?:no\.?|#) ?/i, '');
  const inch = /^(\d{1,2}(?:\/\d{1,2})?)(?: ?(?:in|"))?[ x×-]+(\d{1,2})\b/i.exec(plain);
  const metric = /^m ?(\d{1,2}(?:\.\d)?)(?: ?[x×] ?(\d?\.\d{1,3}))?/i.exec(plain);
  const association = /^(\d{1,2}) ?b\.? ?a/i.exec(plain);
  const fits = threads().filter(({ name, tpi }) => {
    if (association)
      return (
        name.endsWith(' BA') && Math.abs(Number.parseInt(name, 10) - Number(association[1])) <= 2
      );
    if (metric) return name === `M${metric[1]}` || name.startsWith(`M${metric[1]} `);
    return inch !== null && tpi !== null && name.startsWith(`${inch[1]}-`);
  });
  const wanted = Number(inch?.[2] ?? 0);
  const off = (tpi: number | null): number => Math.abs((tpi ?? 0) - wanted);
  return [...fits]
    .sort((a, b) => off(a.tpi) - off(b.tpi))
    .slice(0, 2)
    .map(({ name }) => name);
}
