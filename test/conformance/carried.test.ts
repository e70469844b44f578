import { describe, expect, test } from 'vitest';
import { judgedBy } from './stand.ts';

const plain = judgedBy('  idle-vacuum: { value: 18-1/2 inHg min }');
const high = judgedBy('  idle-vacuum: { value: 15 to 17 inHg, altitude: 5000 ft }');

const left = (judge: typeof plain, facts: string, reading: string) => {
  const { verdicts, faults } = judge(
    `${facts}settings: { idle-vacuum: { left: ${reading}, uncertainty: 0 inHg } }\n`,
  );
  return [verdicts['idle-vacuum left'], ...faults];
};

/** The standard barometer (ISO 2533:1975): 1013.25 mbar at the sea, 843.07 mbar at 5000 ft, or 24.90 inHg. */
describe('a manifold vacuum is judged where it was read', () => {
  test.each([
    // Of 29.92 inHg at the sea 1.28 are gone at 1200 ft: 18.5 there is 17.22.
    ['altitude: 1200 ft\n', '17-1/2 inHg', /^conforms: .* lower limit 17\.2/],
    ['altitude: 1200 ft\n', '17.0 inHg', /^does not conform: .* lower limit 17\.2/],
    ['altitude: 366 m\n', '17-1/2 inHg', /^conforms/],
    ['altitude: sea level\n', '18-1/2 inHg', /^conforms: exactly/],
    ['altitude: sea level\n', '18-1/4 inHg', /^does not conform/],
    // The barometer counts before the altitude: 29.92 less 28.42 inHg is 1.5.
    ['barometer: 28.42 inHg\naltitude: 1200 ft\n', '17-1/8 inHg', /^conforms/],
    ['barometer: 28.42 inHg abs\n', '16-7/8 inHg', /^does not conform/],
    // The same in other units: 962.4 mbar, 96.24 kPa, 721.9 mmHg.
    ['barometer: 962.4 mbar\n', '17-1/8 inHg', /^conforms: .* lower limit 1(?:6\.99|7\.0)/],
    ['barometer: 962.4 hPa\n', '17-1/8 inHg', /^conforms: .* lower limit 1(?:6\.99|7\.0)/],
    ['barometer: 96.24 kPa\n', '17-1/8 inHg', /^conforms: .* lower limit 1(?:6\.99|7\.0)/],
    ['barometer: 721.9 mmHg\n', '17-1/8 inHg', /^conforms: .* lower limit 1(?:6\.99|7\.0)/],
    // 17.22 inHg is 58.3 kPa.
    ['altitude: 1200 ft\n', '58.5 kPa', /^unproven|^conforms: .* lower limit 58\.3/],
    ['altitude: 1200 ft\n', '57.90 kPa', /^does not conform: .* lower limit 58\.3/],
  ])('%s %s', (facts, reading, expected) => {
    const [verdict, ...faults] = left(plain, facts, reading);
    expect(verdict).toMatch(expected);
    expect(faults).toEqual([]);
  });

  test('from the altitude of the sheet, not from the sea', () => {
    // At 5000 ft itself the figures stand; at the sea 5.02 inHg more are shown.
    expect(left(high, 'altitude: 5000 ft\n', '16 inHg')[0]).toMatch(/^unproven|^conforms/);
    expect(left(high, 'altitude: 0 ft\n', '16-0/1 inHg')[0] ?? '').not.toMatch(/^conforms/);
    expect(left(high, 'altitude: 0 ft\n', '21-1/4 inHg')[0]).toMatch(/^conforms/);
  });

  test('a record that says neither is told so, and judged by the figure as it stands', () => {
    const [verdict, fault] = left(plain, '', '18-3/4 inHg');
    expect(verdict).toMatch(/^conforms: .* lower limit 18.5 inHg/);
    expect(fault).toMatch(/incomplete: idle-vacuum reads less the higher .*neither/);
  });

  test.each([
    ['altitude: hello\n', /<hello> invalid: hello is no altitude/],
    ['altitude: 1200\n', /<1200> invalid: 1200 is no altitude/],
    ['altitude: 40000 ft\n', /invalid: 40000 ft lies outside/],
    ['barometer: high\n', /<high> invalid: high is no barometer/],
    ['barometer: 2.9 inHg\n', /invalid: no barometer stands at 2.9 inHg/],
    [
      'barometer: 29.92 inHg\naltitude: 5000 ft\n',
      /invalid: a barometer of 29.92 inHg does not belong to 5000 ft/,
    ],
  ])('%s', (facts, expected) => {
    const [, ...faults] = left(plain, facts, '18 inHg');
    expect(faults.join('\n')).toMatch(expected);
  });
});

describe('notches lie either side of the index', () => {
  const judge = judgedBy(`
  choke-cover-index: { value: 1 to 2 notches lean }
  idle-mixture: { value: 1 turn out }`);
  const index = (each: typeof judge, reading: string) =>
    each(
      `settings: { choke-cover-index: { left: ${reading}, uncertainty: 0 notches } }\n`,
    ).verdicts['choke-cover-index left']?.split(':')[0];
  test.each([
    ['1 notch lean', 'conforms'],
    ['2 notches lean', 'conforms'],
    ['1-1/2 notches lean', 'conforms'],
    ['3 notches lean', 'does not conform'],
    ['index', 'does not conform'],
    ['1 notch rich', 'does not conform'],
    ['2 notches rich', 'does not conform'],
  ])('%s of 1 to 2 notches lean %s', (reading, verdict) => {
    expect(index(judge, reading)).toBe(verdict);
  });
});
