import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { validate as validateKind } from '../../src/generated/validate-kind.js';
import { validate } from '../../src/generated/validate-sheet.js';
import { schemaWords } from '../../src/text/schema-words.ts';

function sheet(changes: Record<string, unknown> = {}): Record<string, unknown> {
  return {
    gaugeleaf: 1,
    sheet: 'orlo-t71',
    title: 'Orlo T71',
    unit: { kind: 'carburetor', maker: 'Orlo', model: 'T71' },
    revision: 1,
    date: '2026-10-03',
    status: 'proof',
    sources: { m48: { title: 'Manual', year: 1948 } },
    settings: { unloader: { value: 'No. 29 drill', from: 'm48 p. 33' } },
    ...changes,
  };
}

function words(data: unknown): (string | boolean | null)[][] {
  validate(data);
  return schemaWords(validate.errors, data).map((word) => [
    word.path.join('/'),
    word.onKey,
    word.message,
    word.fix,
  ]);
}

function setting(unloader: unknown): Record<string, unknown> {
  return sheet({ settings: { unloader } });
}

test('a good sheet has nothing told of', () => {
  expect(words(sheet())).toEqual([]);
  expect(schemaWords(null, {})).toEqual([]);
});

const cases: [string, unknown, [string, boolean, string, string | null]][] = [
  [
    'required, at the top',
    sheet({ status: undefined }),
    ['', true, 'there is no `status`', 'add `status:` with draft, proof or released'],
  ],
  [
    'required, lower down',
    sheet({ unit: { kind: 'carburetor', maker: 'Orlo' } }),
    ['unit', true, '`unit` has no `model`', 'add `model:`, such as `model: T71`'],
  ],
  [
    'required, but there misspelt where free keys may stand',
    sheet({ unit: { kind: 'carburetor', makr: 'Orlo', model: 'T71' } }),
    ['unit', true, '`unit` has no `maker`', 'did you mean `maker` where `makr` stands?'],
  ],
  [
    'additionalProperties, near a key',
    sheet({ statsu: 'x' }),
    ['statsu', true, '`statsu` is no key that is known here', 'did you mean `status`?'],
  ],
  [
    'additionalProperties, near none',
    sheet({ fits: [{ marque: 'Wexcombe', color: 'red' }] }),
    [
      'fits/0/color',
      true,
      '`fits › item 1 › color` is no key that is known here',
      'known here: marque, model, years, engine and note',
    ],
  ],
  [
    'type, of a free key that is a misspelt one',
    sheet({ unit: { kind: 'carburetor', maker: 'Orlo', model: 'T71', featurs: ['pump'] } }),
    [
      'unit/featurs',
      true,
      '`unit › featurs` is no key that is known here',
      'did you mean `features`?',
    ],
  ],
  [
    'type, words for a number',
    sheet({ revision: 'two' }),
    [
      'revision',
      false,
      '`revision` is the words `two`; a whole number should stand here',
      'such as `revision: 1`',
    ],
  ],
  [
    'type, true for words',
    setting({ value: '1 in', gasket: true }),
    [
      'settings/unloader/gasket',
      false,
      '`settings › unloader › gasket` is `true`, a yes or no; words or a number should stand here',
      'put it in quotes: "true"',
    ],
  ],
  [
    'type, a size where a setting should be',
    setting('No. 29 drill'),
    [
      'settings/unloader',
      false,
      '`settings › unloader` is the words `No. 29 drill`; keys with values should stand here',
      'put it on a line of its own below, as `value: No. 29 drill`',
    ],
  ],
  [
    'type, words for a list',
    sheet({ unit: { kind: 'carburetor', maker: 'Orlo', model: 'T71', features: 'pump' } }),
    [
      'unit/features',
      false,
      '`unit › features` is the words `pump`; a list should stand here',
      'put it in brackets: [pump]',
    ],
  ],
  [
    'enum, near a name',
    sheet({ status: 'relased' }),
    [
      'status',
      false,
      '`status` is `relased`; it may be draft, proof or released',
      'did you mean `released`?',
    ],
  ],
  [
    'enum, near none',
    sheet({ rounding: 'up' }),
    [
      'rounding',
      false,
      '`rounding` is `up`; it may be ordinary or inward',
      'write ordinary or inward',
    ],
  ],
  [
    'const',
    sheet({ gaugeleaf: 2 }),
    ['gaugeleaf', false, '`gaugeleaf` is `2`; it is always 1', 'write `gaugeleaf: 1`'],
  ],
  [
    'pattern of a name',
    sheet({ sheet: 'Orlo T71' }),
    ['sheet', false, '`sheet` is `Orlo T71`, which is not how it is written', 'write `orlo-t71`'],
  ],
  [
    'pattern of a date',
    sheet({ date: '3.10.2026' }),
    [
      'date',
      false,
      '`date` is `3.10.2026`, which is not how it is written',
      'such as `date: 2026-10-03`',
    ],
  ],
  [
    'propertyNames',
    sheet({ sources: { 'Blue Book': { title: 'Blue Book', kind: 'manual', year: 1948 } } }),
    [
      'sources/Blue Book',
      true,
      '`sources › Blue Book` is no name that may stand here',
      'write `blue-book`',
    ],
  ],
  [
    'minLength',
    sheet({ title: '' }),
    ['title', false, '`title` is empty', 'such as `title: Orlo T71 two-barrel, Wexcombe Six`'],
  ],
  [
    'maxLength',
    sheet({ title: 'x'.repeat(201) }),
    ['title', false, '`title` has 201 characters; at most 200 fit', 'shorten it'],
  ],
  [
    'minimum',
    sheet({ revision: 0 }),
    ['revision', false, '`revision` is `0`; it must be 1 or more', 'such as `revision: 1`'],
  ],
  [
    'maximum',
    sheet({ sources: { m48: { title: 'Manual', year: 19488 } } }),
    [
      'sources/m48/year',
      false,
      '`sources › m48 › year` is `19488`; it must be 2100 or less',
      'such as `year: 1948`',
    ],
  ],
  [
    'minProperties',
    setting({ places: {} }),
    [
      'settings/unloader/places',
      false,
      '`settings › unloader › places` is empty; it takes at least 1',
      'such as `places: { primary: 1 turn out, secondary: 3/4 turn out }`',
    ],
  ],
  [
    'anyOf, told once and without what its branches say',
    setting({ valeu: '1 in' }),
    [
      'settings/unloader',
      true,
      '`settings › unloader` has neither `value`, `places`, `statements` nor `table`',
      'did you mean `value` where `valeu` stands?',
    ],
  ],
];

test.each(cases)('%s', (_, data, wanted) => {
  expect(words(JSON.parse(JSON.stringify(data)))).toEqual([wanted]);
});

test('a key missing and there misspelt is one fault', () => {
  const { title, ...rest } = sheet();
  expect(words({ ...rest, titel: title })).toEqual([
    ['titel', true, '`titel` is no key that is known here', 'did you mean `title`?'],
  ]);
});

test.each([
  [null, 'this is empty; keys with values should stand here'],
  [[], 'this is an empty list; keys with values should stand here'],
  ['words', 'this is the words `words`; keys with values should stand here'],
])('the whole is %j', (data, message) => {
  const [word] = words(data);
  expect(word?.slice(0, 3)).toEqual(['', false, message]);
});

describe('keywords that only the other schemas use', () => {
  const ajv = new Ajv2020({ allErrors: true, verbose: true, strict: false });
  test.each([
    [{ type: 'array', maxItems: 1 }, [1, 2], 'this has 2; it takes at most 1', ''],
    [{ type: 'array', minItems: 2 }, [1], 'this has 1; it takes at least 2', ''],
    [{ type: 'array', uniqueItems: true }, ['a', 'b', 'a'], 'this has `a` twice', '2'],
    [{ exclusiveMinimum: 0 }, 0, 'this is `0`; it must be 0 and more, itself not', ''],
    [{ not: {} }, 3, 'this is `3`, which may not stand here', ''],
    [
      { oneOf: [{ const: 1 }, { $ref: '#/$defs/two' }], $defs: { two: { const: 2 } } },
      3,
      'this is `3`, which is none of what may stand here',
      '',
    ],
  ])('%j', (schema, data, message, path) => {
    const check = ajv.compile(schema);
    check(data);
    const found = schemaWords(check.errors, data);
    expect(found.map((word) => [word.path.join('/'), word.message])).toEqual([[path, message]]);
  });

  test('a choice behind references, in the schema of kinds', () => {
    const data = {
      'gaugeleaf-kind': 1,
      kind: 'distributor',
      title: 'Distributor',
      unit: { 'cam-lobes': ['lenght'] },
      settings: { dwell: { label: 'Dwell', explain: 'x', dimensions: ['angle'] } },
      operations: { dwell: { stage: 'bench' } },
    };
    expect(validateKind(data)).toBe(false);
    expect(schemaWords(validateKind.errors, data).map((word) => word.message)).toEqual([
      '`unit › cam-lobes` is a list, which is none of what may stand here',
    ]);
  });
});

test('a sheet that is wrong everywhere is told of twenty faults and how many more there are', () => {
  const settings = Object.fromEntries(Array.from({ length: 50 }, (_, i) => [`s${i}`, 'x']));
  const found = words(sheet({ settings }));
  expect(found).toHaveLength(21);
  expect(found[20]).toEqual([
    '',
    false,
    '30 more values are not as they should be',
    'mend the others first, then check again',
  ]);
});

test('no word is the validator’s own, and none holds a control character or a page of text', () => {
  const bad = sheet({
    title: 'x\u0000\u202e'.repeat(400),
    status: `${'y'.repeat(3000)}\n`,
    sources: { ['z'.repeat(900)]: 1 },
  });
  validate(bad);
  for (const word of schemaWords(validate.errors, bad)) {
    expect(word.message).not.toMatch(/must (be|have|match|NOT)(?! \d)|[\p{Cc}\u202e]/u);
    expect(word.message.length).toBeLessThan(300);
  }
});

test('ten thousand faults take no more than a moment', () => {
  const settings = Object.fromEntries(Array.from({ length: 10_000 }, (_, i) => [`s${i}`, {}]));
  const data = sheet({ settings });
  const start = performance.now();
  expect(words(data)).toHaveLength(21);
  expect(performance.now() - start).toBeLessThan(2000);
});
