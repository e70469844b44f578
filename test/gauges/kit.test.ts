import { describe, expect, test } from 'vitest';
import { kitOf, ordinaryKit } from '../../src/gauges/kit.ts';
import { readKitEntry } from '../../src/gauges/kit-entry.ts';

function labels(text: string): readonly string[] {
  const entry = readKitEntry(text);
  return entry.ok ? entry.gauges.map((gauge) => gauge.label) : [`${entry.message} | ${entry.fix}`];
}

describe('a line of a kit', () => {
  test.each([
    ['No. 29 drill', ['No. 29 drill']],
    ['0.026 in wire', ['0.026 in wire']],
    ['4/0 BWG', ['4/0 BWG']],
    ['4/0 American wire gauge', ['4/0 AWG']],
    ['4/0 I.S.W.G.', ['4/0 SWG imperial']],
    ['3/0 piano wire', ['No. 3/0 music wire']],
    ['0.015 in leaf, 1/4 in wide', ['0.015 in leaf']],
    ['drill index A-D', ['drill A', 'drill B', 'drill C', 'drill D']],
    ['letter drills C to A', ['drill A', 'drill B', 'drill C']],
    ['number drills No. 1–3', ['No. 3 drill', 'No. 2 drill', 'No. 1 drill']],
    ['drill index 1/16-5/64 by 64ths', ['1/16 drill', '5/64 drill']],
    ['fraction drills 1/16 to 1/8 by 1/32', ['1/16 drill', '3/32 drill', '1/8 drill']],
    ['drills 15/16-1-1/16 by 1/16', ['15/16 drill', '1 in drill', '1-1/16 drill']],
    ['metric drills 1-2 by 0.5 mm', ['1 mm drill', '1.5 mm drill', '2 mm drill']],
    ['drill set 9.5-10 mm by 0.5', ['9.5 mm drill', '10 mm drill']],
    [
      'leaf set 0.0015-0.003 in',
      ['0.0015 in leaf', '0.002 in leaf', '0.0025 in leaf', '0.003 in leaf'],
    ],
    ['feeler gauges 0,05-0,15 mm by 0,05 mm', ['0.05 mm leaf', '0.10 mm leaf', '0.15 mm leaf']],
    ['pin set 0.061-0.063 in by 0.001 in', ['0.061 in pin', '0.062 in pin', '0.063 in pin']],
    [
      'wire feelers 0.024-0.028 in',
      ['0.024 in wire', '0.025 in wire', '0.026 in wire', '0.028 in wire'],
    ],
  ])('%s', (text, expected) => expect(labels(text)).toEqual(expected));

  test.each([
    [
      '0.026 in',
      '0.026 in is a size and names no gauge | write 0.026 in wire, 0.026 in leaf or 0.026 in drill',
    ],
    [
      '22 SWG',
      '22 SWG could be 22 SWG imperial or No. 22 US steel wire | say which, or set `wire-gauge:` in the edition',
    ],
    [
      'leaf set 0.0015-0.025',
      'the ends of leaf set 0.0015-0.025 lack their unit | add `in` or `mm`',
    ],
    [
      'drill index 1-Z',
      'the ends of drill index 1-Z are not of one sort, or lack their unit | for example `drill index 1-60`, `drill index A-Z`, `leaf set 0.0015-0.025 in`',
    ],
    [
      'drill index 1-98',
      'there is no drill 98 | number drills run from 1 to 97, letters from A to Z',
    ],
    [
      'leaf set 0.025-0.0015 in',
      '0.025 to 0.0015 in runs backward | write 0.0015-0.025 in, if that is meant',
    ],
    [
      'wire set 0.010-0.015 in by 0.002 in',
      '0.010 to 0.015 in is no whole number of steps of 0.002 in | correct the step, or give the set as two',
    ],
    [
      'pin set 0-1 in by 0.001 in',
      '0 to 1 in in those steps would be 1001 gauges, more than a set has | correct the step',
    ],
    [
      'drills 14-16 mm by 0.2 mm',
      'there is no 14.2 mm drill, which the set would have | correct the ends or the step, or give the set as two',
    ],
    [
      'No. 29 drill, 1/4 in wide',
      'No. 29 drill, 1/4 in wide says how wide it is, and only leaves have a width | leave the width out',
    ],
    [
      '0.018-0.022 in',
      '0.018-0.022 in names no gauge and no set of gauges | for example `0.026 in wire`, `No. 29 drill`, `drill index 1-60`, `leaf set 0.0015-0.025 in`',
    ],
    ['a rule', /./],
    [
      'x'.repeat(101),
      'a gauge or a set is told in fewer than 100 letters | give it in several lines',
    ],
  ])('%s is refused', (text, expected) => {
    expect(readKitEntry(text).ok).toBe(false);
    if (typeof expected === 'string') expect(labels(text)).toEqual([expected]);
  });

  test('is read in linear time, whatever a stranger writes', () => {
    const started = performance.now();
    for (const text of [
      'drill '.repeat(16),
      `leaf set ${'0'.repeat(90)}`,
      `drills ${'1-'.repeat(45)}`,
    ])
      expect(readKitEntry(text).ok).toBe(false);
    expect(performance.now() - started).toBeLessThan(200);
  });
});

test('a leaf that stands alone behind its set tells its own width', () => {
  const lines = ['leaf set 0.014-0.016 in', '0.015 in leaf, 1/4 in wide'];
  const { gauges } = kitOf(lines.map((line) => readKitEntry(line)));
  expect(gauges.map(({ gauge, widthMm }) => [gauge.name, widthMm?.toString()])).toEqual([
    ['0.014 in', '12.7'],
    ['0.015 in', '6.35'],
    ['0.016 in', '12.7'],
  ]);
});

test('the ordinary kit holds the usual sets, and every line of it can be read', () => {
  const count = (system: string, unit: string) =>
    ordinaryKit().gauges.filter(({ gauge }) => gauge.system === system && gauge.unit === unit)
      .length;
  // Numbers 1-80, letters, 1/16-1/2 by 64ths, 1-10 mm by tenths and 10.5-13 mm by halves.
  expect(count('number-drill', 'in')).toBe(80);
  expect(count('letter-drill', 'in')).toBe(26);
  expect(count('fraction-drill', 'in')).toBe(29);
  expect(count('metric-drill', 'mm')).toBe(91 + 6);
  // 26 leaves from 0.0015 to 0.025 in: three thin ones, then by thousandths.
  expect(count('leaf', 'in')).toBe(26);
  expect(count('leaf', 'mm')).toBe(24);
  expect(count('wire', 'in')).toBe(29);
  expect(count('wire', 'mm')).toBe(26);
  expect(
    ordinaryKit().gauges.every(
      ({ gauge, widthMm }) => (gauge.system === 'leaf') === (widthMm !== null),
    ),
  ).toBe(true);
});
