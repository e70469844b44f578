import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { ajvOptions, readSchema } from '../../src/build/generate.mjs';

const root = join(import.meta.dirname, '..', '..');
const validate = new Ajv2020(ajvOptions).compile(readSchema(root, 'variant'));
const head =
  'gaugeleaf: 1\nsheet: van\ntitle: Van\nbased-on: orlo\nrevision: 1\ndate: 2026-10-03\nstatus: proof\n';

/** The schema's words against a text: its keyword and place; empty where it fits. */
function against(yaml: string): readonly string[] {
  validate(parse(yaml));
  return (validate.errors ?? []).map(({ keyword, instancePath }) => `${keyword} ${instancePath}`);
}

test('an editor takes a variant that states only what differs', () => {
  expect(against(head)).toEqual([]);
  const some =
    'unit: { part-numbers: [F27-30] }\nsettings:\n  dashpot: none\n  unloader: { note: cold }\nwork: { cleaning: none }\n';
  expect(against(head + some)).toEqual([]);
});

test('and not one that says no base, or misspells', () => {
  expect(against(head.replace(/based-on.*\n/, ''))).toEqual(['required ']);
  expect(against(`${head}settings: { unloader: nothing }\n`)).toContain('anyOf /settings/unloader');
  expect(against(`${head}titel: Van\n`)).toEqual(['additionalProperties ']);
});

test('the whole sheets of the demo need no base by the schema of a sheet', () => {
  const whole = new Ajv2020(ajvOptions).compile(readSchema(root, 'sheet'));
  const text = readFileSync(join(root, 'sheets', 'orlo-t71-wexcombe-six.md'), 'utf8');
  expect(whole(parse(text.split('\n---\n')[0] ?? ''))).toBe(true);
  expect(whole(parse(head))).toBe(false);
});
