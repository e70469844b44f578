import { nearest } from '../vocabulary.ts';
import { defineAcrossCheck } from './define.ts';

/** A sheet said to interchange that is not there, is the sheet itself, or is of another kind. */
export default defineAcrossCheck({
  id: 'interchange-unknown',
  severity: 'error',
  group: 'across',
  summary: 'A unit is said to interchange with a sheet that is not there or cannot be meant.',
  explain:
    'Nothing is compared with a sheet that is not there, so a wrong figure of the other unit passes ' +
    'unseen. It cannot be accepted, only mended.',
  messages: {
    near: { message: 'there is no sheet `{name}`', fix: 'did you mean `{near}`?' },
    missing: {
      message: 'there is no sheet `{name}`',
      fix: "write the other sheet's file name without `.md`",
    },
    itself: { message: '`{name}` is this sheet itself', fix: 'name the other sheet' },
    kind: {
      message: '`{name}` is of the kind `{theirs}`, and this unit of the kind `{own}`',
      fix: 'take it out of `interchanges:`',
    },
  },
  run(sheets, _context, report) {
    const byId = new Map(sheets.map((sheet) => [sheet.id, sheet]));
    for (const sheet of sheets) {
      for (const { text: name, at } of sheet.interchanges) {
        const other = byId.get(name);
        const put = (
          message: 'near' | 'missing' | 'itself' | 'kind',
          values: Readonly<Record<string, string>> = {},
        ) => {
          const others =
            message === 'kind' && other
              ? [{ sheet: other, at: other.at, label: 'that sheet' }]
              : [];
          report({ message, sheet, at, others, values: { name, ...values }, subject: name });
        };
        if (other === undefined) {
          const near = nearest(name, byId.keys());
          if (near === null || near === sheet.id) put('missing');
          else put('near', { near });
        } else if (other === sheet) put('itself');
        else if (other.kind !== null && sheet.kind !== null && other.kind !== sheet.kind) {
          put('kind', { theirs: other.kind, own: sheet.kind });
        }
      }
    }
  },
  examples: [
    {
      name: 'a misspelt sheet, one that nobody wrote, and the sheet itself',
      sheets: {
        'orlo-f27': {
          front:
            'unit: { kind: carburetor, maker: Orlo, model: F27, interchanges: [dunnow-c2, tamsel-9, orlo-f27] }',
        },
        'dunnow-n46': { front: 'unit: { kind: carburetor, maker: Dunnow, model: N46 }' },
      },
      expect: [
        {
          in: 'orlo-f27',
          at: 'dunnow-c2',
          message: 'there is no sheet `dunnow-c2`',
          fix: 'did you mean `dunnow-n46`?',
          see: [],
        },
        {
          in: 'orlo-f27',
          at: 'tamsel-9',
          message: 'there is no sheet `tamsel-9`',
          fix: "write the other sheet's file name without `.md`",
          see: [],
        },
        {
          in: 'orlo-f27',
          at: 'orlo-f27',
          message: '`orlo-f27` is this sheet itself',
          fix: 'name the other sheet',
          see: [],
        },
      ],
    },
    {
      name: 'a distributor in place of a carburetor',
      sheets: {
        'orlo-f27': {
          front: 'unit: { kind: carburetor, maker: Orlo, model: F27, interchanges: [ostrel-n61] }',
        },
        'ostrel-n61': { front: 'unit: { kind: ignition-distributor, maker: Ostrel, model: N61 }' },
      },
      expect: [
        {
          in: 'orlo-f27',
          at: 'ostrel-n61',
          message:
            '`ostrel-n61` is of the kind `ignition-distributor`, and this unit of the kind `carburetor`',
          fix: 'take it out of `interchanges:`',
          see: [['ostrel-n61', 'ostrel-n61']],
        },
      ],
    },
    {
      name: 'a sheet that is there',
      sheets: {
        'orlo-f27': {
          front: 'unit: { kind: carburetor, maker: Orlo, model: F27, interchanges: [dunnow-n46] }',
        },
        'dunnow-n46': { front: 'unit: { kind: carburetor, maker: Dunnow, model: N46 }' },
      },
      expect: [],
    },
  ],
});
