import { defineAcrossCheck } from './define.ts';
import { counterpart } from './facts.ts';
import { figuresDiffer } from './figures-differ.ts';

/** Units said to interchange whose sheets differ in what the engine asks for. */
export default defineAcrossCheck({
  id: 'interchange-differs',
  severity: 'warning',
  group: 'across',
  summary: 'Two units are said to interchange, and differ in a figure that must then be the same.',
  explain:
    'A reader who fits the other unit keeps the engine, its flange and its fuel pump: what these ask ' +
    'for cannot be two figures. The kind of unit says which settings and sizes they are ' +
    '(`interchange:`). Accept it, on either sheet, where an adapter or another part goes with the ' +
    'exchange, and say so in the reason.',
  messages: {
    differs: {
      message:
        '{setting} is {own} here and {theirs} on `{other}`, with which the unit interchanges{difference}',
      fix: 'correct one of the two, or take the sheet out of `interchanges:`',
    },
  },
  run(sheets, context, report) {
    const differ = figuresDiffer(context);
    const byId = new Map(sheets.map((sheet) => [sheet.id, sheet]));
    const done = new Set<string>();
    for (const sheet of sheets) {
      const kind = context.kinds.get(sheet.kind ?? '');
      for (const { text: id } of sheet.interchanges) {
        const other = byId.get(id);
        if (!kind || !other || other === sheet || other.kind !== sheet.kind) continue;
        // Said on both sheets, it is one claim.
        if (done.has(`${id} ${sheet.id}`)) continue;
        done.add(`${sheet.id} ${id}`);
        for (const figure of sheet.figures) {
          if (!kind.interchange.has(figure.name)) continue;
          const theirs = counterpart(figure, other);
          if (theirs === undefined) continue;
          const difference = differ({ sheet, figure }, { sheet: other, figure: theirs });
          if (difference === null) continue;
          report({
            message: 'differs',
            sheet,
            at: figure.at,
            others: [{ sheet: other, at: theirs.at, label: 'stated there' }],
            values: {
              setting: kind.settings.get(figure.name)?.label ?? `\`${figure.name}\``,
              own: figure.text,
              theirs: theirs.text,
              other: id,
              difference,
            },
            compared: [figure.text, theirs.text],
            subject: figure.name,
          });
        }
      }
    }
  },
  examples: [
    {
      name: 'one idle speed and one bore for each unit of an engine',
      sheets: {
        'orlo-f27': {
          front:
            'unit: { kind: carburetor, maker: Orlo, model: F27, throttle-bore: 1-1/4 in, interchanges: [dunnow-n46] }',
          settings: 'idle-speed: { value: 475 ± 25 rpm, from: m48 p. 41 }',
        },
        'dunnow-n46': {
          front: 'unit: { kind: carburetor, maker: Dunnow, model: N46, throttle-bore: 1-3/8 in }',
          settings: 'idle-speed: { value: 600 ± 25 rpm, from: m48 p. 41 }',
        },
      },
      expect: [
        {
          in: 'orlo-f27',
          at: '1-1/4 in',
          message:
            '`throttle-bore` is 1-1/4 in here and 1-3/8 in on `dunnow-n46`, with which the unit interchanges (0.125 in more there)',
          fix: 'correct one of the two, or take the sheet out of `interchanges:`',
          see: [['dunnow-n46', '1-3/8 in']],
        },
        {
          in: 'orlo-f27',
          at: '475 ± 25 rpm',
          message:
            'Idle speed is 475 ± 25 rpm here and 600 ± 25 rpm on `dunnow-n46`, with which the unit interchanges (125 rpm more there)',
          fix: 'correct one of the two, or take the sheet out of `interchanges:`',
          see: [['dunnow-n46', '600 ± 25 rpm']],
        },
      ],
    },
    {
      name: 'a float level of its own for each unit',
      sheets: {
        'orlo-f27': {
          front: 'unit: { kind: carburetor, maker: Orlo, model: F27, interchanges: [dunnow-n46] }',
        },
        'dunnow-n46': {
          front: 'unit: { kind: carburetor, maker: Dunnow, model: N46 }',
          settings: 'idle-mixture: { value: 2 turns out, from: m48 p. 40 }',
        },
      },
      expect: [],
    },
  ],
});
