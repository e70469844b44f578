import { expect, test } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { allInstruments, instrumentNamed } from '../../src/gauges/instruments.ts';
import { readStatement } from '../../src/quantity/index.ts';

test('every row states one plain size, a source, and words that lead back to it alone', () => {
  const seen = new Set<string>();
  expect(allInstruments().length).toBeGreaterThan(15);
  for (const { name, words, uncertainty, source } of allInstruments()) {
    const read = readStatement(uncertainty, { gauges: gaugeBook() });
    expect(read.ok && read.statement.form, `${name}: ${uncertainty}`).toBe('exact');
    expect(source).toBe('common practice, no source');
    for (const word of words) {
      expect(word).toBe(word.toLowerCase());
      expect(seen, word).not.toContain(word);
      seen.add(word);
      expect(instrumentNamed(word)?.name, word).toBe(name);
    }
    expect(instrumentNamed(name)?.name).toBe(name);
  }
});

test.each([
  ["the club's Vacuum Gauge, no. 2", 'vacuum gauge'],
  ['0-1 in micrometer', 'micrometer'],
  ['depth micrometer', 'depth micrometer'],
  ['digital tachometer (hand-held)', 'digital tachometer'],
  ['No. 29 drill', 'twist drill'],
  ['0.026 in wire', 'wire feeler'],
  ['drill by the caliper', null],
  ['drilled plate', null],
  ['the old one', null],
  ['', null],
])('%s is a %s', (text, name) => {
  expect(instrumentNamed(text)?.name ?? null).toBe(name);
});
