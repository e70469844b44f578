import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { drawingForms } from '../../src/kinds/drawings.ts';
import { readKind } from '../../src/kinds/read.ts';

const distributor = (drawings: string) => `gaugeleaf-kind: 1
kind: distributor
title: Distributor
unit:
  cam-lift: [length]
  lock-thread: [thread]
settings:
  point-gap:
    label: Point gap
    explain: Gap of the points.
    dimensions: [length]
operations:
  point-gap:
    stage: bench
    drawings: ${drawings}
`;

const problems = (drawings: string) =>
  readKind(distributor(drawings), 'kinds/distributor.yaml').problems.map(
    ({ message, fix, span }) => ({
      at: distributor(drawings).slice(span.start, span.end),
      message,
      fix,
    }),
  );

describe('drawings of a kind', () => {
  test('one that is fed with all it needs', () => {
    const read = readKind(
      distributor('[{ shows: plate-gap, sizes: { gap: point-gap }, labels: { plate: points } }]'),
      'x',
    );
    expect(read.problems).toEqual([]);
    const [drawing] = read.kind?.operations.get('point-gap')?.drawings ?? [];
    expect(drawing?.shows).toBe('plate-gap');
    expect(drawing?.sizes.get('gap')).toBe('point-gap');
    expect(drawing?.labels.get('plate')).toBe('points');
  });

  test('a misspelt drawing', () => {
    expect(problems('[{ shows: plate-gpa }]')).toEqual([
      {
        at: 'plate-gpa',
        message: 'there is no drawing `plate-gpa`',
        fix: 'did you mean `plate-gap`?',
      },
    ]);
  });

  test('a slot that is not there, and the one that is then missing', () => {
    expect(problems('[{ shows: plate-gap, sizes: { gpa: point-gap } }]')).toEqual([
      {
        at: 'gpa',
        message: 'the drawing `plate-gap` has nothing called `gpa` among its sizes',
        fix: 'did you mean `gap`?',
      },
      {
        at: '{ shows: plate-gap, sizes: { gpa: point-gap } }',
        message: 'the drawing `plate-gap` needs `gap` among its sizes',
        fix: 'add `gap:` under `sizes:`',
      },
    ]);
  });

  test('a setting, a thread and a form that are not there', () => {
    const found = problems(
      '[{ shows: offset-plate-gap, sizes: { gap: points-gap, closed-angle: lock-thread }, choices: { edge: { by: at, when: { uper: [upper edge] }, otherwise: middle } } }, { shows: needle-turns, sizes: { turns: cam-lift }, threads: { thread: lock-thred } }]',
    );
    expect(found.map(({ at, message }) => `${at}: ${message}`)).toEqual([
      'points-gap: `points-gap` is neither a setting of this kind nor a size of its unit',
      'lock-thread: `lock-thread` is neither a setting of this kind nor a size of its unit',
      'uper: `edge` of `offset-plate-gap` has no form `uper`',
      'middle: `edge` of `offset-plate-gap` has no form `middle`',
      'lock-thred: `lock-thred` is no thread of the unit',
    ]);
    expect(found[2]?.fix).toBe('did you mean `upper`?');
  });

  test('every drawing is in the guide to the templates', () => {
    const guide = readFileSync(new URL('../../templates/README.md', import.meta.url), 'utf8');
    expect(Object.keys(drawingForms).filter((name) => !guide.includes(`\`${name}\``))).toEqual([]);
  });
});
