import { describe, expect, test } from 'vitest';
import { builtInKinds, likeNames } from '../../src/kinds/index.ts';
import { entriesNamed, kindReference } from '../../src/kinds/reference/index.ts';
import type { KindReference } from '../../src/kinds/reference/model.ts';

const kinds = [...builtInKinds().values()];
const references = new Map(kinds.map((kind) => [kind.name, kindReference(kind)]));
const carburetor = kinds.find(({ name }) => name === 'carburetor');
const reference = references.get('carburetor');
if (carburetor === undefined || reference === undefined) throw new Error('no carburetor');

const setting = (name: string) => {
  const found = reference.settings.find((each) => each.name === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};

describe.each([...references])('%s', (name, told: KindReference) => {
  const kind = builtInKinds().get(name);

  test('is plain data, with every entry of the kind once', () => {
    expect(JSON.parse(JSON.stringify(told))).toEqual(told);
    expect(told.settings.map((each) => each.name)).toEqual([...(kind?.settings.keys() ?? [])]);
    expect(told.operations.map((each) => each.name)).toEqual([...(kind?.operations.keys() ?? [])]);
    expect(told.parts.map((each) => each.name)).toEqual([...(kind?.parts.keys() ?? [])]);
    expect(told.hazards.map((each) => each.name)).toEqual([...(kind?.hazards.keys() ?? [])]);
    expect(told.features.map((each) => each.name)).toEqual([...(kind?.features.keys() ?? [])]);
    expect(new Set(told.unit.map((each) => each.name)).size).toBe(told.unit.length);
  });

  test('names only what it tells of', () => {
    const operations = new Set(told.operations.map((each) => each.name));
    const settings = new Set(told.settings.map((each) => each.name));
    for (const each of told.settings)
      for (const operation of [...each.setBy, ...each.measuredBy])
        expect(operations).toContain(operation);
    for (const each of told.operations)
      for (const made of [...each.settings, ...each.measures]) expect(settings).toContain(made);
    for (const each of told.operations)
      for (const step of each.steps) expect(step).not.toMatch(/\{[a-z-]+\}/);
  });

  test('every name and alias of an entry finds it', () => {
    if (kind === undefined) throw new Error('no kind');
    for (const entry of [...told.settings, ...told.operations, ...told.hazards, ...told.features])
      for (const word of [entry.name, entry.name.toUpperCase().replaceAll('-', ' ')])
        expect(entriesNamed(word, kind, told)).toContain(entry);
  });
});

describe('a setting', () => {
  test('says what is usual, what is noticed, and how it is measured', () => {
    const level = setting('float-level');
    expect(level.usual).toContainEqual({ dimension: 'length', low: '0 in', high: '2 in' });
    expect(level.symptoms.map(({ way }) => way)).toEqual(['too high', 'too low']);
    expect(level.mustSay).toEqual(['gasket', 'at']);
    expect(level.measured).toBe('gap');
    expect(level.gauges.map(({ family }) => family)).toEqual([
      'Twist drills',
      'Wire feelers',
      'Leaf feelers',
    ]);
    expect(level.always).toBe(true);
  });

  test('says what makes it, what moves it and why, and which drawing it feeds', () => {
    const gap = setting('fast-idle-gap');
    expect(gap.setBy).toEqual(['fast-idle-gap']);
    expect(gap.disturbedBy.map(({ operation }) => operation)).toEqual([
      'fast-idle-cam',
      'unloader',
    ]);
    expect(gap.disturbedBy.every(({ because }) => because.length > 10)).toBe(true);
    expect(gap.bore).toBe('throttle-bore');
    expect(gap.drawings.map(({ shows }) => shows)).toEqual(['plate-gap']);
    expect(setting('float-level').disturbedBy.map(({ says }) => says)).toContain(
      'Float drop, where the steps say “bend”, “bent”, “bending”',
    );
  });

  test('has no gauge where none is put to it', () =>
    expect(setting('idle-speed').gauges).toEqual([]));
});

describe('names that were refused', () => {
  const like = (text: string) => likeNames(text, carburetor.settings.values());

  test('are set beside the one a letter off, and those that share a word', () => {
    expect(like('flaot-level')[0]).toBe('float-level');
    expect(like('choke gap').length).toBeLessThanOrEqual(4);
    expect(like('idle screw')).toEqual(expect.arrayContaining(['idle-mixture', 'idle-stop']));
    expect(like('vacuum kick gap')[0]).toBe('choke-pull-down');
  });

  test('have none beside them where nothing is like them, or nothing was written', () => {
    expect(like('xylophone')).toEqual([]);
    expect(like('')).toEqual([]);
    expect(like('-'.repeat(5000))).toEqual([]);
  });
});
