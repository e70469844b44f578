import { provedFigures, readCount } from '../rereading/index.ts';
import { defineCheck } from './define.ts';
import { allOf } from './vocabulary.ts';

/** More are counted and not named. */
const mostNamed = 8;

/** A sheet of an edition that asks for a second reading has figures that were read once. */
export default defineCheck({
  id: 'figure-read-once',
  severity: 'error',
  group: 'provenance',
  summary: 'The edition asks for a second reading, and figures of the sheet were read once.',
  explain:
    'A figure that is stated once and plausible can be wrong unseen; only a second look at its source proves ' +
    'every digit. `second-reading:` of edition.yaml says which sheets are to have one: `released`, or `proof` for ' +
    'those in proof as well. `gaugeleaf reread` writes the blank and compares what comes back; docs/reread.md shows ' +
    'it. A figure that was changed since it was read has lost its second reading. Figures that were measured ' +
    'are not asked for. It cannot be accepted, only mended.',
  messages: {
    once: {
      message: '{count} of {all} read once, and this edition asks for two readings: {names}',
      fix: 'have somebody else read them: gaugeleaf reread {sheet}, or leave the sheet at `status: {less}` until then',
    },
  },
  run(sheet, { secondReading = null, readings = null }, report) {
    const { status } = sheet;
    const word = status?.value.trim().toLowerCase();
    const isAsked = word === 'released' || (word === 'proof' && secondReading === 'proof');
    if (secondReading === null || !status || !isAsked) return;
    const figures = provedFigures(sheet, readings);
    const once = figures.filter(({ proof }) => proof === 'once');
    if (once.length === 0) return;
    const names = [...new Set(once.map(({ setting }) => setting.id))];
    const more = names.length - mostNamed;
    const all = readCount(figures).figures;
    report({
      message: 'once',
      span: status.span,
      values: {
        count: String(once.length),
        all: all === 1 ? '1 figure was' : `${all} figures were`,
        names: more > 0 ? `${names.slice(0, mostNamed).join(', ')} and ${more} more` : allOf(names),
        sheet: sheet.id?.value ?? 'SHEET',
        less: secondReading === 'proof' ? 'draft' : 'proof',
      },
      related: once
        .slice(0, mostNamed)
        .map(({ setting }) => ({ span: setting.name.span, label: 'read once' })),
    });
  },
  examples: [
    {
      name: 'a released sheet that nobody has read a second time',
      sheet: { front: 'status: released' },
      expect: [
        {
          at: 'released',
          message:
            '3 of 3 figures were read once, and this edition asks for two readings: `float-level`, `pump-stroke` and `idle-mixture`',
          fix: 'have somebody else read them: gaugeleaf reread orlo-f27, or leave the sheet at `status: proof` until then',
        },
      ],
    },
    {
      name: 'a sheet in proof, of which the edition does not ask it yet',
      sheet: {},
      expect: [],
    },
    {
      name: 'a released sheet of figures that were measured',
      sheet: {
        front:
          'status: released\nsources:\n  m48: { title: Three units measured, kind: measured, units: 3 }',
      },
      expect: [],
    },
  ],
});
