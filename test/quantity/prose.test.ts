import { describe, expect, test } from 'vitest';
import { scanStatements } from '../../src/quantity/index.ts';
import { facts, gauges } from './reading.ts';

function found(text: string): string[] {
  return scanStatements(text, { gauges }).map(({ start, end, statement }) => {
    expect(statement.text).toBe(text.slice(start, end));
    return statement.text;
  });
}

describe('sizes in running text', () => {
  test.each([
    ['Set the gap to 0.020 in with a No. 76 drill.', ['0.020 in', 'No. 76 drill']],
    [
      'Back the screw off about 1/2 turn, then 1-1/2 turns out.',
      ['about 1/2 turn', '1-1/2 turns out'],
    ],
    ['The float stands 13/64 ± 1/64 in above the face.', ['13/64 ± 1/64 in']],
    ['between 18 and 22 thou of clearance', ['between 18 and 22 thou']],
    ['Leave 0.018–0.022 in.', ['0.018–0.022 in']],
    [
      'A 9/64" drill, a letter E drill or drill E; never 5 mm.',
      ['9/64" drill', 'letter E drill', 'drill E', '5 mm'],
    ],
    ['The E drill is 1/4 in.', ['E drill', '1/4 in']],
    [
      'Idle at 475 rpm (hot) and 19 inHg, fast idle at 1,300 rpm.',
      ['475 rpm', '19 inHg', '1,300 rpm'],
    ],
    ['Turn the nut 12 flats down.', ['12 flats down']],
    ['It must be at least 0.5 mm and not over 0.6 mm.', ['at least 0.5 mm and not over 0.6 mm']],
    ['A leaf of 0,38 mm; a 22 SWG wire.', ['0,38 mm', '22 SWG wire']],
    ['Pump 12 cc per 10 strokes at 4.5 psi.', ['12 cc per 10 strokes', '4.5 psi']],
    ['Fit a screw 2 in long.', ['2 in']],
    ['Spark at 8° BTDC.', ['8° BTDC']],
    ['⚙️ gap 0.020 in', ['0.020 in']],
  ])('%s', (text, sizes) => {
    expect(found(text)).toEqual(sizes);
  });

  test.each([
    ['Put 2 in the set and 3 in the box.'],
    ['Built 1948-1950, revised 2026-10-03, in the 1950s.'],
    ['Part T71-104 and T71-104A, kit K-12 in the list.'],
    ['See page 3 in the manual, p. 31, fig. 4.'],
    ['Step 4: in no case force it.'],
    ['A ratio of 14:1, mixed 50/50.'],
    ['The needle is cut 10-32 UNF, the stud 1/4-28 UNF, the cap 1/4 in-28 UNF, M6 x 1.0 mm.'],
    // A mark cast on a body, and no force.
    ['A 32 N looks the same as the E52.'],
    ['Drill a hole; drill I grant you is dear. A drill lies there.'],
    ['Cylinders 1 and 2, then 3 and 4.'],
    ['Version 1.5.2 in use'],
    ['Set both to No. 60 and shut them.'],
    ['She wrote "gap 4" and "gap 5" on it.'],
    ['Nothing to find here, not even a drill.'],
    [''],
  ])('passes over %j', (text) => {
    expect(found(text)).toEqual([]);
  });

  test('the offsets are those of the text, whatever stands before', () => {
    const text = 'Straße 12 – ‹½ turn out›, 😀 0.5 mm max';
    expect(scanStatements(text, { gauges }).map(({ start, end }) => [start, end])).toEqual([
      [13, 23],
      [29, 39],
    ]);
  });

  test('a found size is read as the same text alone would be', () => {
    const [one] = scanStatements('Give it 1-1/2 ± 1/4 turns out.', { gauges });
    expect(one && facts(one.statement)).toEqual({
      dimension: 'turns',
      form: 'tolerance',
      is: '1.5',
      low: '1.25',
      high: '1.75',
      sense: 'out',
    });
  });

  test('a bare SWG is imperial unless the sheet says which', () => {
    const text = 'a 28 SWG wire';
    const sizes = (swg?: 'us-steel') =>
      scanStatements(text, { gauges, ...(swg ? { swg } : {}) }).map(
        ({ statement }) => statement.nominal?.gauge?.label,
      );
    expect(sizes()).toEqual(['28 SWG imperial']);
    expect(sizes('us-steel')).toEqual(['No. 28 US steel wire']);
  });

  test.each([
    '4" ',
    '1 ',
    '1/',
    '1-',
    '0.020 in ',
    'drill a ',
    '# ',
    '1 to ',
    '" 4" ',
    '1          ',
  ])('the cost of %j rises with its length and no faster', (unit) => {
    const cost = (length: number): number => {
      const before = process.cpuUsage().user;
      scanStatements(unit.repeat(Math.ceil(length / unit.length)), { gauges });
      return (process.cpuUsage().user - before) / 1000;
    };
    cost(10_000);
    const [short, long] = [cost(10_000), cost(80_000)];
    // Eight times the text; a cost by the square would be sixty-four times.
    expect(long).toBeLessThan(24 * short + 100);
  });
});
