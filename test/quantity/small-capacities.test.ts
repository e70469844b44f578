import { describe, expect, it } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { agree, heightText, readStatement } from '../../src/quantity/index.ts';

const gauges = gaugeBook();

function read(text: string) {
  const reading = readStatement(text, { gauges });
  if (!reading.ok) throw new Error(`${text}: ${reading.problem.message}`);
  return reading.statement;
}

describe('capacities below a millionth', () => {
  it.each([
    ['220 nF', '0.22 µF'],
    ['220 nanofarads', '0.22 mfd'],
    ['220000 pF', '0.22 µF'],
    ['220,000 mmfd', '0.22 µF'],
    ['470 pF', '0.47 nF'],
    ['180–260 nF', '0.18–0.26 µF'],
  ])('%s is %s', (one, other) => {
    const { verdict } = agree(read(one), read(other), { gauges });
    expect(verdict).toMatch(/same|agrees/);
  });

  it('a thousand times too much is apart', () => {
    expect(agree(read('220 pF'), read('0.22 µF'), { gauges }).verdict).toBe('disagrees');
  });
});

describe('a height in words', () => {
  it.each(['sea level', 'Sea Level', 'at sea level', 'mean sea level', 'sea-level'])(
    '%s',
    (text) => {
      expect(heightText(text)).toBe('0 ft');
    },
  );

  it.each(['1200 ft', 'hello', 'sea level plus 20 ft', '350 m'])('%s stays', (text) => {
    expect(heightText(text)).toBe(text);
  });
});
