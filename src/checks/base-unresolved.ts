import { defineCheck } from './define.ts';
import { meantAt } from './problem-cures.ts';

/** A sheet whose base is not there, cannot be read, or is based on it in turn. */
export default defineCheck({
  id: 'base-unresolved',
  severity: 'error',
  group: 'reading',
  summary:
    'The sheet is based on one that is not there, cannot be read, or is based on it in turn.',
  explain:
    'A variant states only what differs, so without its base most of it is missing. The other checks ' +
    'wait until the base is found. It cannot be accepted, only mended.',
  unread: true,
  messages: {
    mendable: { message: '{problem}', fix: '{cure}' },
  },
  run(sheet, _context, report) {
    for (const { kind, span, message, fix, write } of sheet.problems) {
      if (kind !== 'base') continue;
      report({
        message: 'mendable',
        span,
        values: { problem: message, cure: fix ?? '' },
        suggest: () => meantAt(write),
      });
    }
  },
  examples: [
    {
      name: 'a misspelt base',
      sheet: { front: 'based-on: orlo-bsae' },
      expect: [
        {
          at: 'orlo-bsae',
          message: 'there is no sheet `orlo-bsae`',
          fix: 'did you mean `orlo-base`?',
        },
      ],
    },
    {
      name: 'a base that nobody wrote',
      sheet: { front: 'based-on: tamsel-9' },
      expect: [
        {
          at: 'tamsel-9',
          message: 'there is no sheet `tamsel-9`',
          fix: "write the other sheet's file name without `.md`",
        },
      ],
    },
    {
      name: 'two sheets based on one another',
      sheet: { front: 'based-on: orlo-circle' },
      expect: [
        {
          at: 'orlo-circle',
          message: 'sheets are based on one another: `orlo-f27` on `orlo-circle` on `orlo-f27`',
          fix: 'take `based-on:` out of the one that is stated in full',
        },
      ],
    },
    {
      name: 'a sheet based on itself',
      sheet: { front: 'based-on: orlo-f27' },
      expect: [
        {
          at: 'orlo-f27',
          message: 'the sheet is based on itself',
          fix: 'take `based-on:` out of the one that is stated in full',
        },
      ],
    },
    {
      name: 'a base whose front matter is broken',
      sheet: { front: 'based-on: orlo-broken' },
      expect: [
        {
          at: 'orlo-broken',
          message: '`orlo-broken` cannot be read, so nothing can be taken from it',
          fix: 'mend it first: `gaugeleaf check` says what is wrong with it',
        },
      ],
    },
    { name: 'a base that is there', sheet: { front: 'based-on: orlo-base' }, expect: [] },
  ],
});
