import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatDecimal, rational } from '../../src/quantity/index.ts';
import { runs } from '../suite/part.ts';
import { judgedBy } from './stand.ts';

const judged = judgedBy(`
  gap: { value: 1.041–1.143 mm }
  inches: { value: 0.0410 to 0.0450 in }
  thin: { value: 0.500 ± 0.001 mm }
  stroke: { value: 17/64 in }
  mixture: { value: 1-1/4 ± 1/4 turns out }
  stop: { value: 3/4 turn in after contact }
  vacuum: { value: 18-1/2 inHg vacuum min }
  torque: { value: 12-1/2 ± 1/2 ft-lb }
  delivery: { value: 10–14 cm3 per 10 strokes }
  flow: { value: 30–40 s per 100 ml }
  warmth: { value: 20 ± 3 °C }
  flat: { value: parallel }
  timing: { value: 2 ± 2° BTDC }
  other: { value: 0.040 in, also: [1 mm, 0.038–0.042 in] }
  pair: { value: 13/64 in, gauge: { go: 3/16 drill, no-go: 7/32 drill } }
  jet: { places: { primary: 0.040 ± 0.002 in, secondary: 0.050 ± 0.002 in } }
  broken: { value: 9/3x2 in }`);

/** One reading as left, in flow style: `gap`, `{ left: 1.1 mm, with: ... }`. */
const one = (setting: string, entry: string) => {
  const { verdicts, faults } = judged(`settings:\n  ${setting}: ${entry}\n`);
  expect(faults).toEqual([]);
  return verdicts[`${setting} left`];
};

/** Limits 1.041-1.143 mm and U = .006 mm are those of references.md, Conformance. */
describe('a reading and its reason', () => {
  test.each([
    [
      'gap',
      '{ left: 1.136 mm, uncertainty: 0.006 mm }',
      'conforms: 0.007 mm inside the upper limit 1.143 mm',
    ],
    [
      'gap',
      '{ left: 1.140 mm, uncertainty: 0.006 mm }',
      'unproven: 0.003 mm inside the upper limit 1.143 mm, within the 0.00603 mm of gauge and last figure',
    ],
    [
      'gap',
      '{ left: 1.1465 mm, uncertainty: 0.006 mm }',
      'unproven: 0.0035 mm above the upper limit 1.143 mm, within the 0.00601 mm of gauge and last figure',
    ],
    [
      'gap',
      '{ left: 1.150 mm, uncertainty: 0.006 mm }',
      'does not conform: 0.007 mm above the upper limit 1.143 mm',
    ],
    [
      'gap',
      '{ left: 1.143 mm, uncertainty: ± 0.006 mm (k=2) }',
      'unproven: exactly at the upper limit 1.143 mm, within the 0.00603 mm of gauge and last figure',
    ],
    // 0.0455 in is 1.1557 mm; the limit stands exactly in inches, drawn inward.
    [
      'gap',
      '{ left: 0.0455 in, uncertainty: 0.0002 in }',
      'does not conform: 0.0005 in above the upper limit 0.045 in',
    ],
    [
      'thin',
      '{ left: 0.5 mm, uncertainty: 0.001 mm }',
      'unproven: 0.001 mm inside the lower limit 0.499 mm; nothing can be proven with the 0.0578 mm ' +
        'of gauge and last figure either side, which is more than half of 0.499 mm to 0.501 mm',
    ],
    [
      'thin',
      '{ left: 0.5000 mm, uncertainty: 0.002 mm }',
      'unproven: 0.001 mm inside the lower limit 0.499 mm; nothing can be proven with the ' +
        '0.00201 mm of gauge and last figure either side, which is more than half of 0.499 mm to 0.501 mm',
    ],
    ['thin', '{ left: 1/2 mm, uncertainty: 0.001 mm }', /^conforms/],
    // 17/64 in is 0.265625 in.
    [
      'stroke',
      '{ left: 0.268 in, with: caliper }',
      'no limits: no limits stated; 0.002375 in more than the figure',
    ],
    ['stroke', '{ left: 17/64 drill }', 'no limits: no limits stated; the figure itself'],
    [
      'mixture',
      '{ left: 1-3/8 turns out, with: counted by eye }',
      'conforms: 1/8 turn inside the upper limit 1-1/2 turns',
    ],
    [
      'mixture',
      '{ left: 9 flats, uncertainty: 1/2 flat }',
      /^unproven: exactly at the upper limit/,
    ],
    [
      'mixture',
      '{ left: 1 turn in, with: counted by eye }',
      /^does not conform: 2 turns below the lower limit 1 turn$|^does not conform: 2.* below/,
    ],
    [
      'vacuum',
      '{ left: 18.8 inHg vacuum, with: vacuum gauge }',
      'unproven: 0.3 inHg inside the lower limit 18.5 inHg, within the 0.504 inHg of gauge and last figure',
    ],
    // 4 % of 12.5 is 0.5: exactly the room there is.
    ['torque', '{ left: 12-1/2 ft-lb, with: torque wrench }', /^conforms: 0.5 ft-lb inside/],
    // A range is trusted as its greater end is: 2 % of 12.75 is 0.255, of 12.7 0.254.
    ['torque', '{ left: 12.51 to 12.75 ft-lb, uncertainty: 2 % }', /^unproven: from 12.51 ft-lb/],
    ['torque', '{ left: 12.5 to 12.7 ft-lb, uncertainty: 2 % }', /^conforms: from 12.5 ft-lb/],
    // 18.5 inHg is 62.648 kPa and half an inch 1.693 (conventional inch of mercury, SP 811).
    [
      'vacuum',
      '{ left: 64.0 kPa vacuum, with: vacuum gauge }',
      'unproven: 1.352 kPa inside the lower limit 62.649 kPa, within the 1.7 kPa of gauge and last figure',
    ],
    ['torque', '{ left: 12.6 ft-lb, uncertainty: 4 % }', /^unproven: 0.4 ft-lb inside/],
    ['delivery', '{ left: 13-1/2 cc/10 strokes, with: measuring glass }', /^conforms: 0.5/],
    ['delivery', '{ left: 13.6 cc/10 strokes, with: measuring glass }', /^unproven: 0.4/],
    // Of a time for a volume the longer is the smaller flow: limits 30 s and 40 s all the same.
    [
      'flow',
      '{ left: 39.7 s per 100 ml, with: stopwatch }',
      /^unproven: .*only stopwatch is said$/,
    ],
    // 0.3 s of 39.6 and 0.5 cm3 of 100 together are 0.36 s.
    [
      'flow',
      '{ left: 39.6 s per 100 ml, with: stopwatch and measuring glass }',
      /^conforms: 0.4 s/,
    ],
    ['flow', '{ left: 39.7 s per 100 ml, with: "stopwatch, burette" }', /^unproven: 0.3 s/],
    ['flow', '{ left: 39.6 s per 100 ml, uncertainty: 0.3 s and 0.5 ml }', /^conforms: 0.4 s/],
    [
      'flow',
      '{ left: 39.7 s per 100 ml, uncertainty: ± 0.3 s, ± 0.5 cm3 (k=2) }'
        .replace(': ±', ": '±")
        .replace(' }', "' }"),
      /^unproven: 0.3 s/,
    ],
    [
      'flow',
      '{ left: 39.8 s per 100 ml, uncertainty: 0.3 s }',
      /^unproven: 0.2 s per 100 .* upper/,
    ],
    ['flow', '{ left: 20.3 s per 50 ml, uncertainty: 0.2 s }', /^does not conform: 0.3 s per 50/],
    // 75 °F is 23.89 °C, 1.6 °F above 23 °C.
    ['warmth', '{ left: 75.0 °F, uncertainty: 1 °F }', /^does not conform: 1.6 °F above/],
    ['flat', '{ left: parallel }', 'conforms: the sheet says parallel'],
    ['flat', '{ left: Not parallel }', 'does not conform: the sheet says parallel'],
    [
      'flat',
      '{ left: nearly }',
      'unproven: the sheet says parallel; write just that, or not parallel',
    ],
    [
      'timing',
      '{ left: 1° ATDC, uncertainty: 1/2° }',
      /^does not conform: 1° below the lower limit 0°/,
    ],
    ['other', '{ left: 0.0400 in, uncertainty: 0.001 in }', /^conforms: 0.002 in inside/],
    [
      'pair',
      '{ left: { go: true, no-go: false }, uncertainty: 0.001 in }',
      'unproven: above 0.1875 in and below 0.21875 in, where 0.1875 in to 0.21875 in is wanted, ± 0.001 in',
    ],
    ['pair', '{ left: { go: 0.1890 in wire, no-go: 5.5 mm drill } }', /^conforms: above 0.189 in/],
    ['pair', '{ left: { no-go: true } }', /^unproven: above 0.21875 in, where/],
    [
      'pair',
      '{ left: { go: false }, uncertainty: 0 in }',
      /^does not conform: below 0.1875 in, where/,
    ],
    [
      'inches',
      '{ left: 0.0421–0.0439 in, uncertainty: 0.001 in }',
      'conforms: from 0.0421 in to 0.0439 in, where 0.041 in to 0.045 in is wanted',
    ],
    ['inches', '{ left: 0.0430 ± 0.0002 in, uncertainty: 1 in }', /^conforms: 0.002 in inside/],
  ])('%s %s', (setting, entry, expected) => {
    const told = one(setting, entry);
    if (typeof expected === 'string') expect(told).toBe(expected);
    else expect(told).toMatch(expected);
  });

  test.each([
    ['{ left: 1.1 mm }', 'neither gauge nor uncertainty is said'],
    ['{ left: 1.1 mm, with: the old one }', 'the uncertainty of the old one is not known'],
    [
      '{ left: 1.1 mm, with: drill and caliper }',
      'the uncertainty of drill and caliper is not known',
    ],
    [
      '{ left: 1.1 mm, with: tachometer }',
      'the uncertainty of tachometer is not known for such a reading',
    ],
  ])('without a known uncertainty nothing is proven: %s', (entry, words) => {
    expect(one('gap', entry)).toBe(`unproven: 0.043 mm inside the upper limit 1.143 mm; ${words}`);
  });

  test('the simple rule needs no gauge', () => {
    const simple = judgedBy('  gap: { value: 1.041–1.143 mm }', 'simple');
    const { verdicts } = simple('settings: { gap: { found: 1.1431 mm, left: 1.143 mm } }\n');
    expect(verdicts['gap found']).toMatch(/^does not conform: 0.0001 mm above/);
    expect(verdicts['gap left']).toBe('conforms: exactly at the upper limit 1.143 mm');
  });

  test('as found and as left are judged apart, and places each by their own figure', () => {
    const { verdicts, missing } = judged(`settings:
  gap: { found: 1.20 mm, left: 1.100 mm, with: micrometer }
  inches: { found: 0.0430 in, left: as found, with: micrometer }
  jet:
    with: pin gauge
    places:
      primary: { left: 0.040 in pin }
      secondary: { left: 0.0400 in, with: micrometer }
  mixture: { places: { left: { left: 1 turn out }, right: { left: 2 turns out } } }
`);
    expect(Object.entries(verdicts).map(([name, text]) => `${name} ${text.split(':')[0]}`)).toEqual(
      [
        'gap found does not conform',
        'gap left conforms',
        'inches found conforms',
        'inches left conforms',
        'jet primary left conforms',
        'jet secondary left does not conform',
        'mixture left left unproven',
        'mixture right left unproven',
      ],
    );
    expect(missing).toContain('stroke');
    expect(missing).not.toContain('jet');
  });
});

describe('what is wrong with a record is told at its place', () => {
  test.each([
    ['gap: { left: 1.1 }', /^2 <1\.1> invalid: .*1\.1 in or 1\.1 mm/],
    [
      'gap: { left: 500 rpm }',
      '2 <500 rpm> invalid: 500 rpm is a speed, 1.041–1.143 mm is a length | write the reading as the sheet has it: 1.041–1.143 mm',
    ],
    [
      'gap: { left: 1.1 mm max }',
      /^2 <1\.1 mm max> invalid: 1\.1 mm max is no reading: it says one side only/,
    ],
    [
      'gap: { left: about 1.1 mm }',
      /^2 <about 1\.1 mm> invalid: about 1\.1 mm is no reading: it says about/,
    ],
    ['gap: { left: 1.1 +0.1/-0 mm }', /^2 <.*> invalid: .*limits of its own/],
    [
      'gap: { left: 1.1 mm, uncertainty: 5 rpm }',
      '2 <5 rpm> invalid: 5 rpm tells speed, and the reading 1.1 mm is one of length | state the uncertainty in the unit of the reading',
    ],
    [
      'gap: { left: 1.1 mm, uncertainty: 0.01 mm (k=1) }',
      /^2 <0\.01 mm \(k=1\)> invalid: .*k=1.*\| work it out for k=2/,
    ],
    ['gap: { left: 1.1 mm, uncertainty: some }', /^2 <some> invalid: some is no size/],
    [
      'gap: { left: as found }',
      /^2 <as found> invalid: `left` is as found, and `found` says nothing/,
    ],
    ['gap: { found: as found }', /^2 <as found> invalid: `found` is the reading itself/],
    [
      'gpa: { left: 1.1 mm }',
      '2 <gpa> invalid: the sheet sheets/x.md has no setting `gpa` | did you mean `gap`?',
    ],
    ['gap: { lfet: 1.1 mm }', /^2 <lfet> invalid: .*lfet.*\| did you mean `left`\?$/],
    [
      'gap: { left: { go: true } }',
      /^2 <true> invalid: the sheet names no go gauge for gap \| write which gauge went in: go: 13\/64 drill/,
    ],
    [
      'gap: { left: { go: 1.1 mm wire, no-go: 1.0 mm wire } }',
      /^2 <\{ go.*\}> invalid: 1\.1 mm wire went in, but 1\.0 mm wire, which is no larger, did not/,
    ],
    ['gap: { left: { go: long } }', /^2 <long> invalid: long is no size/],
    ['torque: { left: { go: 3/16 drill } }', /^2 <.*> invalid: go and no-go tell a length/],
    [
      'stop: { left: 3/4 turn out from seated }',
      /^2 <.*> invalid: .*counted from different places/,
    ],
    ['flat: { left: 0.2 in }', /^2 <0\.2 in> invalid: .*one is a condition, the other a figure/],
    [
      'jet: { left: 1 mm }',
      '2 <jet> invalid: the sheet states jet place by place: primary, secondary | put the readings under `places:`, each under the name of its place',
    ],
    [
      'jet: { places: { primry: { left: 1 mm } } }',
      /^2 <primry> invalid: the sheet has no primry of jet; .*\| did you mean `primary`\?/,
    ],
    [
      'broken: { left: 9/32 in }',
      /^2 <9\/32 in> invalid: the sheet's own figure for broken, 9\/3x2 in, cannot be read/,
    ],
    [
      'gap: { wanted: 1 mm max, left: 1.1 mm }',
      '2 <1 mm max> outdated: 1 mm max was wanted when this was measured, and the sheet now says 1.041–1.143 mm | the reading is judged by 1.041–1.143 mm; write that here once the unit has been looked at again',
    ],
  ])('%s', (line, expected) => {
    const { faults } = judged(`settings:\n  ${line}\n`);
    expect(faults).toHaveLength(1);
    if (typeof expected === 'string') expect(faults[0]).toBe(expected);
    else expect(faults[0]).toMatch(expected);
  });

  test('another revision of the sheet', () => {
    const settings = 'settings: { gap: { left: 1.1 mm } }\n';
    expect(judged(`revision: 2\n${settings}`).faults).toEqual([]);
    expect(judged(`revision: 1\n${settings}`).faults).toEqual([
      '1 <1> outdated: the record was made by revision 1 of the sheet, which is now at revision 2 | ' +
        'none of the figures it names has changed: write revision: 2',
    ]);
    expect(judged(`revision: 3\n${settings}`).faults[0]).toMatch(
      /^1 <3> outdated: .*revision 3.*revision 2 \| get the newer sheet/,
    );
    const changed = judged('revision: 1\nsettings: { gap: { wanted: 1 mm, left: 1.1 mm } }\n');
    expect(changed.faults.map((fault) => fault.split(' ')[0])).toEqual(['1', '2']);
    expect(changed.faults[0]).toMatch(/see which of its figures/);
  });

  test.each([
    ['', /no `settings`/],
    ['settings: {}\n', /`settings` is empty|at least 1/],
    ['settings: [', /invalid/],
    ['settings: { gap: { left: 1 mm }, gap: { left: 2 mm } }\n', /gap/],
    ['settings: { gap: { left: 1 mm } }\ndate: 2026-13-01\n', /date/],
    ['settings: { gap: { left: [1 mm] } }\n', /gap › left/],
  ])('and so is a file that is no record: %j', (text, expected) => {
    const { faults, verdicts } = judged(text);
    expect(faults.join('\n')).toMatch(expected);
    expect(verdicts).toEqual({});
  });
});

test('a record in millimeters and one in inches of the same readings have the same verdicts', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 400, max: 460 }),
      fc.integer({ min: 0, max: 30 }),
      (tenThousandths, u) => {
        // A ten-thousandth of an inch is 0.00254 mm exactly, so neither text is rounded.
        const inches = (n: number) => `${formatDecimal(rational(n, 10_000), 4)} in`;
        const mm = (n: number) =>
          `${formatDecimal(rational(n, 10_000).mul(rational('25.4')), 5)} mm`;
        const verdict = (write: (n: number) => string) =>
          one('inches', `{ left: ${write(tenThousandths)}, uncertainty: ${write(u + 1)} }`)?.split(
            ':',
          )[0];
        expect(verdict(mm)).toBe(verdict(inches));
      },
    ),
    { numRuns: runs(200) },
  );
});
