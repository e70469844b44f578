import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { ajvOptions, readSchema } from '../../src/build/generate.mjs';
import { validate as validateEdition } from '../../src/generated/validate-edition.js';
import { validate as validateKind } from '../../src/generated/validate-kind.js';
import { validate as validateMapping } from '../../src/generated/validate-mapping.js';
import { validate as validateRecord } from '../../src/generated/validate-record.js';
import { validate as validateSheet } from '../../src/generated/validate-sheet.js';
import { validate as validateSources } from '../../src/generated/validate-sources.js';

const root = join(import.meta.dirname, '..', '..');
const names = ['sheet', 'edition', 'kind', 'record', 'sources', 'mapping'] as const;
const compiled = {
  sheet: validateSheet,
  edition: validateEdition,
  kind: validateKind,
  record: validateRecord,
  sources: validateSources,
  mapping: validateMapping,
};

interface Schema {
  readonly [keyword: string]: unknown;
}

/** Every schema that describes the value of a key or of a list, with where it stands. */
function* described(schema: Schema, at: string): Generator<[string, Schema]> {
  for (const group of ['properties', '$defs']) {
    const entries = (schema[group] ?? {}) as Readonly<Record<string, Schema>>;
    for (const [key, inner] of Object.entries(entries)) {
      yield [`${at}/${group}/${key}`, inner];
      yield* described(inner, `${at}/${group}/${key}`);
    }
  }
  for (const keyword of ['items', 'additionalProperties']) {
    const inner = schema[keyword];
    if (typeof inner !== 'object' || inner === null) continue;
    // A mere reference says what the definition says.
    if (!('$ref' in inner)) yield [`${at}/${keyword}`, inner as Schema];
    yield* described(inner as Schema, `${at}/${keyword}`);
  }
}

function resolved(schema: Schema, whole: Schema): Schema {
  const ref = schema.$ref as string | undefined;
  if (ref === undefined) return schema;
  let target: unknown = whole;
  for (const step of ref.split('/').slice(1)) target = (target as Schema)[step];
  return { ...(target as Schema), ...schema };
}

describe.each(names)('%s.schema.json', (name) => {
  const schema = readSchema(root, name) as Schema;
  const places = [['#', schema] as [string, Schema], ...described(schema, '#')];

  test('keeps to the 2020-12 meta-schema, and no keyword of it is misspelt', () => {
    const ajv = new Ajv2020({ ...ajvOptions, logger: false });
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(ajv.validateSchema(schema), JSON.stringify(ajv.errors)).toBe(true);
    expect(() => ajv.compile(schema)).not.toThrow();
  });

  test('says of every key what it is', () => {
    expect(places.length).toBeGreaterThan(10);
    for (const [at, inner] of places) {
      const { title, description } = resolved(inner, schema);
      expect(title, `${at} has a title`).toBeTypeOf('string');
      expect(description, `${at} has a description`).toMatch(/^[A-Z`].{10,}\.( .*)?$/s);
    }
  });

  test('gives examples that it accepts itself', () => {
    const ajv = new Ajv2020({ ...ajvOptions, logger: false });
    ajv.addSchema(schema);
    let count = 0;
    for (const [at, inner] of places) {
      const examples = (inner.examples ?? []) as readonly unknown[];
      if (at === '#' || examples.length === 0) continue;
      const check = ajv.getSchema(`${String(schema.$id)}${at}`) as ValidateFunction;
      for (const example of examples) {
        // An example shows some keys of a thing and not all that it needs.
        check(example);
        const wrong = (check.errors ?? []).filter((error) => error.keyword !== 'required');
        expect(wrong, `${at}: ${JSON.stringify(example)}`).toEqual([]);
        count++;
      }
    }
    expect(count).toBeGreaterThan(10);
  });

  test('is compiled as it stands now', () => {
    const ajv = new Ajv2020({ ...ajvOptions, logger: false });
    const fresh = ajv.compile(schema);
    for (const data of [null, [], {}, { gaugeleaf: 2, sheet: 1 }, { kind: 'A b', settings: {} }]) {
      expect(compiled[name](data)).toBe(fresh(data));
      const told = (errors: ValidateFunction['errors']) =>
        errors?.map((error) => [error.instancePath, error.keyword, error.params]);
      expect(told(compiled[name].errors)).toEqual(told(fresh.errors));
    }
  });
});

test('a schema’s list of keys for the near misses of free keys is the list of its keys', () => {
  const schema = readSchema(root, 'sheet');
  for (const name of ['unit', 'setting']) {
    const { properties, additionalProperties } = schema.$defs[name];
    expect(additionalProperties.$comment).toBe(`keys: ${Object.keys(properties).join(' ')}`);
  }
});

test('the compiled validators import nothing', () => {
  for (const name of names) {
    const text = readFileSync(join(root, 'src', 'generated', `validate-${name}.js`), 'utf8');
    expect(text).not.toMatch(/^import |\bimport\(|^var .*= require\("/m);
  }
});

test('the modeline of the kinds that come with the program leads to their schema', () => {
  const file = join(root, 'src', 'kinds', 'carburetor.yaml');
  const [first = ''] = readFileSync(file, 'utf8').split('\n');
  const target = /^# yaml-language-server: \$schema=(.+)$/.exec(first)?.[1] ?? '';
  expect(existsSync(join(dirname(file), target))).toBe(true);
  expect(target).toMatch(/kind\.schema\.json$/);
});

const front = `
gaugeleaf: 1
sheet: orlo-t71-wexcombe-six
title: Orlo T71 two-barrel, Wexcombe Six
unit:
  kind: carburetor
  maker: Orlo
  model: T71
  part-numbers: [T71-104, T71-104A]
  features: [two-barrel, downdraft]
  throttle-bore: 1-7/16 in
  throttle-closed-angle: 12°
  idle-needle-thread: 10-32 UNF
fits:
  - { marque: Wexcombe, model: Six, years: 1948-1950 }
  - { marque: Wexcombe, years: 1949 }
revision: 2
date: 2026-10-03
status: proof
rounding: inward
wire-gauge: imperial
sources:
  m48: { title: Wexcombe Six Workshop Manual, kind: manual, year: 1948 }
  bench: { title: Three good units measured, kind: measured, units: 3 }
settings:
  float-level:
    value: 13/64 ± 1/64 in
    also: [0.203 in, 5.16 mm]
    gauge: { go: 3/16 drill, no-go: 7/32 drill }
    at: free end of the float
    gasket: removed
    measured-by: two members
    from: [m48 p. 31, bench]
  Choke Unloader:
    value: No. 29 drill
    from: m48 p. 33
    but: [{ value: No. 30 drill, from: bench, ruling: one unit was bent }]
  idle-mixture:
    places: { primary: 1 turn out, secondary: 3/4 turn out }
    places-differ: the secondary needles have a coarser thread
    from: bench
  main-jet: { value: 60, from: m48 }
accept:
  - { finding: chopped, at: float-level, reason: the manual chops throughout }
`;

describe('front matter', () => {
  test('with everything that may stand in it passes', () => {
    expect(validateSheet(parse(front)), JSON.stringify(validateSheet.errors)).toBe(true);
  });

  test.each([
    ['a bare number is for the reader of sizes to judge', { settings: { a: { value: 60 } } }],
    ['a blank of a new sheet', { settings: { a: { value: null, from: null, gasket: null } } }],
    ['a year with a guess', { sources: { a: { title: 'A', year: 'c. 1948' } } }],
    ['a span of years', { sources: { a: { title: 'A', year: '1948-50' } } }],
    ['one way of writing it, without brackets', { settings: { a: { value: '1 in', also: '1"' } } }],
  ])('passes: %s', (_, change) => {
    expect(validateSheet({ ...parse(front), ...change })).toBe(true);
  });

  test.each([
    ['a key at the top', { rouding: 'inward' }, 'additionalProperties'],
    ['a list of the unit', { unit: { kind: 'a', maker: 'b', model: 'c', feature: ['x'] } }, 'type'],
    ['a revision of nothing', { revision: 0 }, 'minimum'],
    ['half a revision', { revision: 1.5 }, 'type'],
    ['a month that is none', { date: '2026-13-03' }, 'pattern'],
    ['a date that YAML took for a number', { date: 20261003 }, 'type'],
    ['a status of its own', { status: 'done' }, 'enum'],
    ['a setting without a value', { settings: { a: { from: 'm48' } } }, 'anyOf'],
    ['a year of five digits', { sources: { a: { year: 19488 } } }, 'maximum'],
    ['an acceptance of nothing', { accept: [{ reason: 'because' }] }, 'required'],
  ])('refuses %s', (_, change, keyword) => {
    expect(validateSheet({ ...parse(front), ...change })).toBe(false);
    expect(validateSheet.errors?.map((error) => error.keyword)).toContain(keyword);
  });
});

describe('edition', () => {
  const edition = `
gaugeleaf-edition: 1
title: Carburetor Settings
club: Wexcombe Register
edition: 2
date: 2026-10-03
language: en
paper: a4
card-paper: half-letter
altitude: 1200 ft
order: [orlo-t71-wexcombe-six]
previous: editions/first.json
wire-gauge: imperial
introduction: |
  Opening words.
safety: More words.
reading-distance: 700 mm
kit: [No. 29 drill, 0.026 in wire]
`;
  test('with everything that may stand in it passes', () => {
    expect(validateEdition(parse(edition)), JSON.stringify(validateEdition.errors)).toBe(true);
  });

  test.each([
    ['another paper', { paper: 'a3' }, 'enum'],
    ['a sheet twice', { order: ['a', 'a'] }, 'uniqueItems'],
    ['a key that is none', { clubb: 'x' }, 'additionalProperties'],
    ['no title', { title: undefined }, 'required'],
  ])('refuses %s', (_, change, keyword) => {
    const data = JSON.parse(JSON.stringify({ ...parse(edition), ...change }));
    expect(validateEdition(data)).toBe(false);
    expect(validateEdition.errors?.map((error) => error.keyword)).toContain(keyword);
  });
});
