import { defineAcrossCheck } from './define.ts';
import type { Fact, SheetFacts } from './facts.ts';
import { partKey } from './same-unit.ts';

/** One part number on two sheets. */
export default defineAcrossCheck({
  id: 'part-number-repeated',
  severity: 'warning',
  group: 'across',
  summary: 'A part number of one maker stands on two sheets of one kind.',
  explain:
    'Whoever looks a unit up by the number on its tag finds two sheets and follows the first: one of ' +
    'them is then the wrong one, or the number was copied with the sheet. Accept it, on either sheet, ' +
    'where one part really left the works in two settings, and say in the titles which is which.',
  messages: {
    repeated: {
      message: '`{number}` is also a part number of `{other}`, where it is written `{written}`',
      fix: 'take it off one of the two sheets, or make one sheet of them',
    },
    inherited: {
      message:
        '`{number}` is the part number of `{other}`, on which this sheet is based; it states none of its own',
      fix: 'state `part-numbers:` under `unit:`, or `part-numbers: none` where none is known',
    },
    same: {
      message: '`{number}` is also a part number of `{other}`',
      fix: 'take it off one of the two sheets, or make one sheet of them',
    },
  },
  run(sheets, _context, report) {
    const told = new Set<SheetFacts>();
    const known = new Map<string, { readonly sheet: SheetFacts; readonly number: Fact }>();
    for (const sheet of sheets) {
      if (sheet.kind === null) continue;
      for (const number of sheet.partNumbers) {
        const key = partKey(sheet, number);
        const first = known.get(key);
        if (first === undefined) known.set(key, { sheet, number });
        if (first === undefined || first.sheet === sheet) continue;
        const { text: written } = first.number;
        const values = { number: number.text, other: first.sheet.id, written };
        if (number.at.file !== sheet.file && number.at.file === first.number.at.file) {
          // One entry of one file: the variant took it from its base.
          if (told.has(sheet)) continue;
          told.add(sheet);
          const others = [{ sheet: first.sheet, at: number.at, label: 'stated there' }];
          report({
            message: 'inherited',
            sheet,
            at: sheet.at,
            others,
            values,
            subject: number.text,
          });
          continue;
        }
        report({
          message: written === number.text ? 'same' : 'repeated',
          sheet,
          at: number.at,
          others: [{ sheet: first.sheet, at: first.number.at, label: 'the same number there' }],
          values,
          subject: number.text,
        });
      }
    }
  },
  examples: [
    {
      name: 'a number that was copied with the sheet',
      sheets: {
        'orlo-f27': {
          front:
            'unit: { kind: carburetor, maker: Orlo, model: F27, part-numbers: [F27-20, F27-21] }',
        },
        'orlo-l83': {
          front:
            'unit: { kind: carburetor, maker: Orlo, model: L83, part-numbers: [F27-21, L83-30] }',
        },
      },
      expect: [
        {
          in: 'orlo-l83',
          at: 'F27-21',
          message: '`F27-21` is also a part number of `orlo-f27`',
          fix: 'take it off one of the two sheets, or make one sheet of them',
          see: [['orlo-f27', 'F27-21']],
        },
      ],
    },
    {
      name: 'the same number without its hyphen',
      sheets: {
        'orlo-f27': {
          front: 'unit: { kind: carburetor, maker: Orlo, model: F27, part-numbers: [F27-21] }',
        },
        'orlo-l83': {
          front: 'unit: { kind: carburetor, maker: orlo, model: L83, part-numbers: [f27 21] }',
        },
      },
      expect: [
        {
          in: 'orlo-l83',
          at: 'f27 21',
          message: '`f27 21` is also a part number of `orlo-f27`, where it is written `F27-21`',
          fix: 'take it off one of the two sheets, or make one sheet of them',
          see: [['orlo-f27', 'F27-21']],
        },
      ],
    },
    {
      name: 'a variant that states no part number',
      sheets: {
        'orlo-f27': {
          front:
            'unit: { kind: carburetor, maker: Orlo, model: F27, part-numbers: [F27-20, F27-21] }',
        },
        'orlo-l83': { front: 'based-on: orlo-f27\nunit: { model: L83 }' },
      },
      expect: [
        {
          in: 'orlo-l83',
          at: 'orlo-l83',
          message:
            '`F27-20` is the part number of `orlo-f27`, on which this sheet is based; it states none of its own',
          fix: 'state `part-numbers:` under `unit:`, or `part-numbers: none` where none is known',
          see: [['orlo-f27', 'F27-20']],
        },
      ],
    },
    {
      name: 'two parts, and the same number of another maker',
      sheets: {
        'orlo-f27': {
          front: 'unit: { kind: carburetor, maker: Orlo, model: F27, part-numbers: [F27-21] }',
        },
        'orlo-l83': {
          front: 'unit: { kind: carburetor, maker: Orlo, model: L83, part-numbers: [F27-21A] }',
        },
        'dunnow-r35': {
          front: 'unit: { kind: carburetor, maker: Dunnow, model: R35, part-numbers: [F27-21] }',
        },
      },
      expect: [],
    },
  ],
});
