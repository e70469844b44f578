import { thread } from '../gauges/index.ts';
import { NOT_STATED } from '../quantity/index.ts';
import { workedNumbers } from '../relations/index.ts';
import { isBlank } from './blank.ts';
import { defineCheck } from './define.ts';
import { likelyThreads } from './likely-threads.ts';

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
      suggest: [{ write: '{near}' }],
    },
    borne: {
      message: '{text} is no thread of any system that Gaugeleaf has',
      fix: 'write {likely}, which the turns and the travel bear out, after a look at the source or the screw',
      suggest: [{ write: '{likely}' }],
    },
    unknown: {
      message: '{text} is no thread of any system that Gaugeleaf has',
      fix: 'write it as `10-32 UNF`, `1/4-20 UNC`, `2 BA`, `M6 x 0.75`',
    },
  },
  run(sheet, context, report) {
    const numbers = workedNumbers(sheet, context);
    const ofSettings = [...sheet.settings.values()].flatMap(({ id, said }) => {
      const own = said.get('thread');
      return own ? [[id, own] as const] : [];
    });
    for (const [key, { value, span }] of [...sheet.unit.threads, ...ofSettings]) {
      if (isBlank(value) || value.trim() === NOT_STATED || thread(value) !== null) continue;
      const [first, ...others] = likelyThreads(value, span, numbers, context.gauges);
      const rest = others.slice(0, 1).map(({ text }) => text);
      const values = {
        text: value,
        likely: first?.text ?? '',
        near: [first?.text, ...rest].join(' or '),
      };
      const message = !first ? 'unknown' : first.isBorneOut ? 'borne' : 'near';
      report({ message, span, values, subject: key });
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
      name: 'a pitch that turns and travel tell',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft, pump]\n  stop-screw-thread: M6 x 1.5',
        settings:
          'idle-stop: { value: 1-1/2 turns in after contact, travel: 1.5 mm, from: m48 p. 40 }',
      },
      expect: [
        {
          at: 'M6 x 1.5',
          message: 'M6 x 1.5 is no thread of any system that Gaugeleaf has',
          fix: 'write M6 x 1, which the turns and the travel bear out, after a look at the source or the screw',
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
