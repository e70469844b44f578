import { describe, expect, test } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { equivalents, readStatement } from '../../src/quantity/index.ts';

const gauges = gaugeBook();

function read(text: string, jets: Parameters<typeof readStatement>[1]['jets']) {
  const reading = readStatement(text, { gauges, expect: ['length', 'flow'], jets });
  if (!reading.ok) return `${reading.problem.message} | ${reading.problem.fix}`;
  const { statement } = reading;
  expect(statement.text).toBe(text);
  const { inch, mm } = equivalents(statement);
  return statement.qualifier === 'flow number' ? 'a flow' : `${inch} ${mm}`;
}

describe('a jet by its number', () => {
  test.each([
    // A hundredth of a millimeter is 0.01 mm and a thousandth 0.0254 mm, by definition.
    ['105', 'hundredths of mm', '0.0413 in 1.05 mm'],
    ['No. 105', 'hundredths of mm', '0.0413 in 1.05 mm'],
    ['No. 105 jet', 'hundredths of mm', '0.0413 in 1.05 mm'],
    ['No 60 idle jet', 'hundredths of mm', '0.0236 in 0.600 mm'],
    ['main jet 130', 'hundredths of mm', '0.0512 in 1.30 mm'],
    ['#45', 'hundredths of mm', '0.0177 in 0.450 mm'],
    ['65', 'thousandths of in', '0.0650 in 1.65 mm'],
    ['No. 28 jet', 'thousandths of in', '0.0280 in 0.711 mm'],
    ['47', 'drill', '0.0785 in 1.99 mm'],
    ['105', 'flow', 'a flow'],
    ['No. 330 jet', 'flow', 'a flow'],
  ] as const)('%s, numbered in %s, is %s', (text, jets, said) =>
    expect(read(text, jets)).toBe(said),
  );

  test.each([
    // What says its own unit or system means that, whatever the numbering.
    ['No. 60 drill', 'hundredths of mm', '0.0400 in 1.02 mm'],
    ['1.05 mm', 'thousandths of in', '0.0413 in null'],
    ['0.052 in', 'hundredths of mm', 'null 1.32 mm'],
    ['200 cc/min', 'flow', 'null null'],
  ] as const)('%s is itself beside numbers in %s', (text, jets, said) =>
    expect(read(text, jets)).toBe(said),
  );

  test('limits by number', () => {
    expect(read('105–110', 'hundredths of mm')).toBe('0.0414–0.0433 in 1.05–1.10 mm');
  });

  test.each(['105', 'No. 105', 'No. 105 jet', '65', '#60'])(
    '%s without its numbering says how it is told',
    (text) => expect(read(text, null)).toContain('| say under `unit:` how its maker numbers jets'),
  );

  test('outside of jets nothing changes', () => {
    expect(read('105', undefined)).toContain('105 has no unit');
    expect(read('12.5', 'hundredths of mm')).toContain('12.5 has no unit');
    expect(read('No. 99 drill', 'drill')).toContain('|');
    expect(read('99', 'drill')).toContain('|');
  });
});
