import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gaugeAdvice, gaugeBook, ordinaryKit } from '../../src/gauges/index.ts';
import { sizeFacts } from '../../src/gauges/size-facts.ts';
import { readStatement } from '../../src/quantity/index.ts';
import { judgedBy } from '../conformance/stand.ts';
import { runs } from '../suite/part.ts';

/** What becomes of a record that names the two gauges, for limits as a sheet states them. */
function recorded(limits: string, go: string, noGo: string, uncertainty = ''): string {
  const { verdicts, faults } = judgedBy(`  gap: { value: '${limits}' }`)(
    `settings: { gap: { left: { go: '${go}', no-go: '${noGo}' }${uncertainty} } }\n`,
  );
  return faults[0] ?? verdicts['gap left']?.split(':')[0] ?? 'nothing';
}

const adviceFor = (limits: string) => {
  const read = readStatement(limits, { gauges: gaugeBook() });
  return read.ok ? gaugeAdvice(read.statement, ordinaryKit()) : null;
};

describe('a pair that is recommended proves the gap', () => {
  test.each([
    // 0.0380 and 0.0420 in lie at the limits: a wire is good to 0.001 in, a leaf to 0.0005 in.
    ['0.040 ± 0.002 in', true],
    ['0.018 to 0.022 in', true],
    ['13/64 ± 1/64 in', true],
    ['0.50 to 0.60 mm', true],
    ['0.0400 ± 0.0005 in', false],
    ['0.0620 to 0.0640 in', false],
  ])('%s: %s', (limits, isThere) => {
    const advice = adviceFor(limits);
    expect(advice?.pair !== null).toBe(isThere);
    if (advice?.pair) {
      const { go, noGo } = advice.pair;
      expect(recorded(limits, go.gauge.label, noGo.gauge.label)).toBe('conforms');
      expect(advice.text).toContain(`go ${go.gauge.label}, no-go ${noGo.gauge.label}`);
    } else
      expect(advice?.text).toMatch(
        /; to prove it, make go [\d.]+ in and no-go [\d.]+ in, known to/,
      );
  });

  test('what is to be made proves it, as far as it is known', () => {
    const [, go = '', noGo = '', within = ''] =
      /make go (\S+ in) and no-go (\S+ in), known to (\S+ in)$/.exec(
        adviceFor('0.0400 ± 0.0005 in')?.text ?? '',
      ) ?? [];
    expect([go, noGo, within]).toEqual(['0.03955 in', '0.04045 in', '0.00005 in']);
    expect(
      recorded('0.0400 ± 0.0005 in', `${go} pin`, `${noGo} pin`, `, uncertainty: ${within}`),
    ).toBe('conforms');
  });

  test('for every setting of the demo that states limits', () => {
    let [pairs, none] = [0, 0];
    for (const name of readdirSync('sheets').filter((file) => file.endsWith('.md'))) {
      for (const [, text = ''] of readFileSync(`sheets/${name}`, 'utf8').matchAll(
        /^ {4}value: (.+)$/gm,
      )) {
        const advice = adviceFor(text);
        if (!advice?.clearance.stated) continue;
        if (!advice.pair) {
          none++;
          continue;
        }
        pairs++;
        const { go, noGo } = advice.pair;
        expect(recorded(text, go.gauge.label, noGo.gauge.label), text).toBe('conforms');
      }
    }
    console.log(`go and no-go of the demo: ${pairs} pairs, all conform; ${none} have none`);
    expect(pairs).toBeGreaterThanOrEqual(10);
  });

  test('for thousands of limits', () => {
    let [pairs, made] = [0, 0];
    const inch = fc
      .tuple(fc.integer({ min: 10, max: 5000 }), fc.integer({ min: 1, max: 400 }))
      .map(
        ([low, more]) => `${(low / 10000).toFixed(4)} to ${((low + more) / 10000).toFixed(4)} in`,
      );
    const mm = fc
      .tuple(fc.integer({ min: 5, max: 1200 }), fc.integer({ min: 1, max: 90 }))
      .map(([low, more]) => `${(low / 100).toFixed(2)} to ${((low + more) / 100).toFixed(2)} mm`);
    fc.assert(
      fc.property(fc.oneof(inch, mm), (limits) => {
        const advice = adviceFor(limits);
        const all = sizeFacts(limits, null);
        const tables = all.ok ? all.facts.pair : null;
        const two = [
          advice?.pair && ([advice.pair.go.gauge.label, advice.pair.noGo.gauge.label] as const),
          tables?.go && ([tables.go.label, tables.noGo.label] as const),
        ];
        for (const pair of two) {
          if (!pair) continue;
          pairs++;
          expect(recorded(limits, ...pair), `${limits}: ${pair}`).toBe('conforms');
        }
        const words = /make go (\S+ \S+) and no-go (\S+ \S+), known to (\S+ \S+)$/.exec(
          advice?.text ?? '',
        );
        if (!words) return;
        made++;
        const [, go = '', noGo = '', within = ''] = words;
        expect(
          recorded(limits, `${go} pin`, `${noGo} pin`, `, uncertainty: ${within}`),
          limits,
        ).toBe('conforms');
      }),
      { numRuns: runs(500), seed: 7 },
    );
    console.log(
      `go and no-go: ${pairs} recommended pairs and ${made} to be made, all conform when recorded`,
    );
    expect(pairs).toBeGreaterThan(runs(500));
  }, 30_000);
});
