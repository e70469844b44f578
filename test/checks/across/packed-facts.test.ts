import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { sheetFacts } from '../../../src/checks/across/facts.ts';
import { packFacts, unpackFacts } from '../../../src/checks/across/packed-facts.ts';
import { gaugeBook } from '../../../src/gauges/index.ts';
import { builtInKinds } from '../../../src/kinds/index.ts';
import { readSheet } from '../../../src/sheet/index.ts';

const context = { gauges: gaugeBook(), kinds: builtInKinds(), wireGauge: null };
const folder = new URL('../../../sheets/', import.meta.url);
const facts = readdirSync(folder)
  .filter((name) => name.endsWith('.md'))
  .flatMap((name) => {
    const text = readFileSync(new URL(name, folder), 'utf8');
    const accept =
      '$1accept:\n  - { finding: setting-outlier, at: float-level, reason: as printed }\n---\n\n#';
    const sheet = readSheet(text.replace(/^(settings:[\s\S]*?)---\n\n#/m, accept), name, context);
    return sheetFacts(sheet) ?? [];
  });

describe('facts of a sheet', () => {
  test('come back from a text as they were', () => {
    const shared = new Map<string, string>();
    expect(facts.length).toBeGreaterThan(5);
    for (const each of facts) expect(unpackFacts(packFacts(each), shared)).toEqual(each);
  });

  test('keep the file of a place that is not the sheet’s own', () => {
    const [first] = facts;
    if (first === undefined) throw new Error('the demo has sheets');
    const at = { ...first.at, file: 'sheets/base.md' };
    const moved = { ...first, figures: first.figures.map((each) => ({ ...each, at })) };
    expect(unpackFacts(packFacts(moved), new Map())).toEqual(moved);
  });

  test('are half as long as they would be', () => {
    const plain = JSON.stringify(facts).length;
    const packed = facts.reduce((sum, each) => sum + packFacts(each).length, 0);
    expect(packed / plain).toBeLessThan(0.5);
  });
});
