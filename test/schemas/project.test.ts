import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { ajvOptions } from '../../src/build/generate.mjs';
import { builtInKinds } from '../../src/kinds/index.ts';
import { gaugeleaf } from '../cli/console.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';

const root = join(import.meta.dirname, '..', '..');

/** A kind of a club's own. */
const pump = `gaugeleaf-kind: 1
kind: oil-pump
title: Oil pump
settings:
  relief-pressure:
    label: Relief pressure
    explain: The pressure at which the valve opens.
    dimensions: [pressure]
features:
  relief-valve: { label: Relief valve, explain: A valve that lets oil back., settings: [[relief-pressure]] }
operations:
  relief-pressure: { stage: bench, steps: ['Read the gauge: {setting}.'] }
`;

async function written() {
  const folder = folderWith({
    'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Settings\n',
    'kinds/oil-pump.yaml': pump,
    'sheets/one.md': cleanSheet('one'),
  });
  const { status, out } = await gaugeleaf(['schema', '--out', 'schemas/'], { cwd: folder });
  expect(status).toBe(0);
  expect(out.split('\n')).toContain('schemas/kind.schema.json');
  return (name: string) =>
    JSON.parse(readFileSync(join(folder, `schemas/${name}.schema.json`), 'utf8'));
}

const validator = (schema: object) =>
  new Ajv2020({ ...ajvOptions, strict: false, logger: false }).compile(schema);

describe('schemas of a project', () => {
  test('offer its sheets, settings, sources and kinds where they are named', async () => {
    const schema = await written();
    expect(JSON.stringify(schema('edition').properties.order.items)).toContain('"one"');
    expect(JSON.stringify(schema('record').properties.sheet)).toContain('"one"');
    const { settings } = schema('record').properties;
    expect(settings.properties['float-level'].description).toMatch(/^Float level\. Height/);
    expect(settings.properties['float-level'].$ref).toBe('#/$defs/entry');
    expect(settings.properties['relief-pressure'].description).toMatch(/^Relief pressure\./);
    expect(schema('sources').properties.sources.properties.m48.description).toContain('of one');
    const kind = JSON.stringify(schema('kind'));
    expect(kind).toContain('"relief-valve"');
    expect(kind).toContain('"oil-pump"'.replace('oil-pump', 'relief-pressure'));
    expect(JSON.stringify(schema('mapping').properties.kind)).toContain('"oil-pump"');
    expect(JSON.stringify(schema('mapping'))).toContain('"has relief-valve"');
    const sheet = schema('sheet');
    expect(sheet.properties.settings.properties['relief-pressure']).toBeDefined();
    expect(JSON.stringify(sheet.$defs.unit.properties.features)).toContain('"downdraft"');
    expect(JSON.stringify(sheet.$defs.acceptance)).toContain('"size-unusual"');
  });

  test('pass what those of the program pass, and refuse what they refuse', async () => {
    const schema = await written();
    const passes = (name: string, data: unknown) => validator(schema(name))(data);
    const read = (path: string) => parse(readFileSync(join(root, path), 'utf8'));
    expect(passes('edition', read('edition.yaml'))).toBe(true);
    for (const kind of builtInKinds().keys())
      expect(passes('kind', read(`src/kinds/${kind}.yaml`))).toBe(true);
    const record = { 'gaugeleaf-record': 1, sheet: 'of-another-club', settings: {} };
    const entry = { found: '13/64 in' };
    expect(passes('record', { ...record, settings: { 'heater-flap': entry } })).toBe(true);
    expect(passes('record', { ...record, settings: { 'float-level': entry } })).toBe(true);
    expect(passes('record', { ...record, settings: { 'float-level': { fuond: '1 in' } } })).toBe(
      false,
    );
    expect(passes('record', { ...record, shet: 'x' })).toBe(false);
    expect(passes('sources', { 'gaugeleaf-sources': 1, sources: { z9: { title: 'Z' } } })).toBe(
      true,
    );
    expect(passes('edition', { 'gaugeleaf-edition': 1, title: 'T', order: ['not-yet'] })).toBe(
      true,
    );
    expect(passes('edition', { 'gaugeleaf-edition': 1, titel: 'T' })).toBe(false);
    for (const id of ['orlo-t71-wexcombe-six', 'pellow-p44-ravensgarth-sports']) {
      const text = readFileSync(join(root, `sheets/${id}.md`), 'utf8');
      expect(passes('sheet', parse(text.split(/^---$/m)[1] ?? ''))).toBe(true);
    }
  });

  test('are not written over those of the program', async () => {
    const { status, err } = await gaugeleaf(['schema'], { cwd: root });
    expect([status, err]).toEqual([2, expect.stringContaining('not written over')]);
  });
});
