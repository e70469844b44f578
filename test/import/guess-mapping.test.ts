import { describe, expect, it } from 'vitest';
import { guessHead } from '../../src/import/head-words.ts';
import { targetText } from '../../src/import/mapping.ts';
import { readMapping } from '../../src/import/read-mapping.ts';
import { mappingText } from '../../src/import/write-mapping.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { kind, proposed, tools } from './stand.ts';

describe('a head', () => {
  it.each([
    ['Float level (in)', 'float-level', 'in', 'sure'],
    ['FLOAT LEVEL, IN.', 'float-level', 'in.', 'sure'],
    ['Idle speed rpm', 'idle-speed', 'rpm', 'sure'],
    ['Idle speed - rpm', 'idle-speed', 'rpm', 'sure'],
    ['Vacuum break [thou]', 'choke-pull-down', 'thou', 'sure'],
    ['Unloader (drill no.)', 'unloader', 'No. {} drill', 'sure'],
    ['Pump delivery cm3 per 10 strokes', 'pump-delivery', 'cm3 per 10 strokes', 'sure'],
    ['Float level', 'float-level', null, 'sure'],
    ['Float levle (mm)', 'float-level', 'mm', 'likely'],
    ['Float level gasket', 'float-level gasket', null, 'sure'],
    ['Throttle bore (in)', 'unit throttle-bore', 'in', 'sure'],
    ['Idle needle thread', 'unit idle-needle-thread', null, 'sure'],
    ['Unloader', 'unloader', null, 'sure'],
    ['Four barrels', 'has four-barrel', null, 'sure'],
    ['Part #', 'part-numbers', null, 'sure'],
    ['Mfr.', 'maker', null, 'sure'],
    ['Carburetor', 'model', null, 'likely'],
    ['Remarks', 'note', null, 'sure'],
    ['Color of the tag', 'nothing', null, 'none'],
  ])('%s is %s, in %s, %s', (head, to, unit, confidence) => {
    const guess = guessHead(head, kind, tools);
    expect([targetText(guess.to), guess.unit, guess.confidence]).toEqual([to, unit, confidence]);
  });

  it('states no unit that its setting is not stated in', () => {
    // `Idle speed (in)`: no length is a speed.
    expect(guessHead('Idle speed (in)', kind, tools)).toMatchObject({ unit: null });
  });
});

describe('a proposal', () => {
  const list =
    'Register,,,\n,,,\nMaker,Model,Float level (in),Float level (mm),Color\nOrlo,F27,13/64,5.16,red\n';

  it('finds the heads below a title, and takes a second column of a setting for its equivalent', () => {
    const { mapping, columns } = proposed(list);
    expect(mapping).toMatchObject({ heads: 3, kind: 'carburetor', layout: 'row-is-unit' });
    expect(columns.map(({ to }) => targetText(to))).toEqual([
      'maker',
      'model',
      'float-level',
      'float-level also',
      'nothing',
    ]);
  });

  it('is written so that it reads back as what it was', () => {
    const guess = proposed(list);
    const text = mappingText(guess, 'list.csv', './mapping.schema.json');
    const { mapping, faults } = readMapping(text, builtInKinds(), tools);
    expect(faults).toEqual([]);
    const bare = guess.mapping.columns.map(({ column, head, to, unit }) => ({
      column,
      head,
      to,
      unit,
    }));
    expect(mapping).toEqual({ ...guess.mapping, columns: bare });
    expect(text).toContain('E: { head: Color, to: nothing } # not known: no name is near');
  });

  it('chooses the kind whose settings the heads name', () => {
    const { mapping } = proposed('Maker,Model,Points gap (in),Dwell (°)\nTarn,B17,0.015,54\n');
    expect(mapping.kind).toBe('ignition-distributor');
  });
});

describe('a mapping file', () => {
  const faultsOf = (columns: string, more = '') => {
    const text = `gaugeleaf-mapping: 1\nheads: 1\nlayout: row-is-unit\nkind: carburetor\n${more}columns:\n${columns}`;
    const { mapping, faults } = readMapping(text, builtInKinds(), tools);
    expect(mapping).toBeNull();
    return faults.map(({ span, message, fix }) => [text.slice(span.start, span.end), message, fix]);
  };

  it('is told what is wrong, at its place', () => {
    expect(faultsOf('  A: { head: X, to: flaot-level }\n')).toEqual([
      [
        'flaot-level',
        '`flaot-level` is no setting of a carburetor, and nothing else that a column can be',
        'did you mean `float-level`?',
      ],
    ]);
    expect(faultsOf('  A: { head: X, to: idle-speed, unit: in }\n')[0]?.slice(0, 2)).toEqual([
      'in',
      '`in` is no unit in which idle-speed is stated',
    ]);
    expect(faultsOf('  A: { head: X, to: model }\n  B: { head: Y, to: model }\n')[0]?.[1]).toBe(
      'columns A and B are both `model`',
    );
    expect(faultsOf('  A: { head: X, to: unit throttle-boar }\n')[0]?.[2]).toBe(
      'did you mean `throttle-bore`?',
    );
    expect(faultsOf('  A: { head: X, to: model }\n', 'features: [two-barel]\n')[0]).toEqual([
      'two-barel',
      'a carburetor has no feature called `two-barel`',
      'write two-barrel',
    ]);
    expect(
      faultsOf('  A: { head: X, to: model }\n', 'says: { flaot-level: { at: end } }\n')[0]?.[2],
    ).toBe('write float-level');
    expect(faultsOf('  a: { head: X, to: model }\n')).not.toEqual([]);
  });
});
