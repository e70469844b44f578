import { test } from 'vitest';
import { type Case, runCase } from './case.ts';

/** What the fuzzer once found, each with what was wrong then. */
const found: readonly (readonly [string, Case])[] = [
  [
    'a list that nests deeper than the parser comes was cut off at another place each time',
    {
      name: 'edition.yaml',
      made: [
        { name: 'yamlValue', at: 0.571574, to: 0.907013, pick: 32327 },
        { name: 'cr', at: 0.231017, to: 0.973259, pick: 35348 },
        { name: 'many', at: 0.264835, to: 0.860409, pick: 16611 },
        { name: 'character', at: 0.787188, to: 0.652846, pick: 43745 },
      ],
      byte: 94844,
    },
  ],
  [
    'JSON handed a terminal a control character',
    {
      name: 'sheets/orlo-t71-wexcombe-six.md',
      made: [{ name: 'crlf', at: 0, to: 0, pick: 20273 }],
      byte: 99984,
    },
  ],
  [
    'a list in no known letters put its first odd sign into a message',
    { name: 'list.csv', made: [{ name: 'digit', at: 0, to: 0, pick: 66538 }], byte: 99985 },
  ],
  [
    'a word that is none where a template has the name of a helper ended the check',
    {
      name: 'templates/pages/unit.hbs',
      made: [
        { name: 'size', at: 0.681729, to: 0, pick: 94108 },
        { name: 'yamlWord', at: 0, to: 0, pick: 0 },
      ],
      byte: null,
    },
  ],
  [
    'a control character of the second block stood in the title of a drawing',
    {
      name: 'sheets/variant.md',
      made: [{ name: 'digit', at: 0, to: 0, pick: 66451 }],
      byte: 3716,
    },
  ],
  [
    'a control character in a heading reached whoever the list of the order was handed to',
    {
      name: 'sheets/bassen-g47-skerrow-two.md',
      made: [{ name: 'yamlWord', at: 0.01185, to: 0, pick: 0 }],
      byte: 48006,
    },
  ],
  [
    'a table handed a terminal a control character',
    {
      name: 'sheets/pellow-p44-ravensgarth-sports.md',
      made: [{ name: 'size', at: 0.464048, to: 0.460241, pick: 4704 }],
      byte: 46528,
    },
  ],
];

test.each(found)('%s', async (_, each) => {
  await runCase(each);
});
