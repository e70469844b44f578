import { describe, expect, it } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { relations } from '../../src/relations/formulas/list.ts';
import { workNumbers } from '../../src/relations/worked-numbers.ts';
import { readSheet } from '../../src/sheet/index.ts';

const kinds = builtInKinds();
const gauges = gaugeBook();
const byId = new Map(relations.map((each) => [each.id, each]));

/** How the place of a quantity stands on a carburetor with these settings. */
function status(relation: string, quantity: string, settings: string): string | undefined {
  const text = `---\ngaugeleaf: 1\nsheet: orlo-f27\ntitle: Orlo F27\nunit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft]\nrevision: 1\ndate: 2026-10-03\nstatus: proof\nsources: {}\nsettings:\n  inlet-seat: { value: 0.09 in }\n${settings}---\n\n# Orlo F27\n`;
  const sheet = readSheet(text, 'sheets/orlo-f27.md', { kinds, gauges, wireGauge: null });
  const kind = kinds.get('carburetor');
  if (!kind) throw new Error('no carburetor');
  const facts = { gauges, wireGauge: null, altitude: '5000 ft' };
  const { instances } = workNumbers(sheet, kind, facts, byId);
  const instance = instances.find((each) => each.relation.id === relation);
  return instance?.quantities.get(quantity)?.place?.status;
}

describe('an absolute pressure is never worked as one over ambient', () => {
  it.each([
    ['needle-shut', 'pressure', 'fuel-pressure: { value: 18.7 psi absolute }', 'other'],
    ['needle-shut', 'pressure', 'fuel-pressure: { value: 18.7 psia }', 'other'],
    ['needle-shut', 'pressure', 'fuel-pressure: { value: 1.3 ata }', 'other'],
    ['needle-shut', 'pressure', 'fuel-pressure: { value: 129 kPa abs. }', 'other'],
    ['bench-fuel-level', 'pressure', 'fuel-level: { value: 0.5 in, pressure: 18 psia }', 'other'],
    ['needle-shut', 'pressure', 'fuel-pressure: { value: 4 psi }', 'stated'],
    ['needle-shut', 'pressure', 'fuel-pressure: { value: 0.3 atü }', 'stated'],
    // A barometer counts from nothing.
    [
      'barometer-at-altitude',
      'barometer',
      'idle-vacuum: { value: 19 inHg, barometer: 24.9 inHg absolute }',
      'stated',
    ],
  ])('%s %s of %s is %s', (relation, quantity, settings, wanted) => {
    expect(status(relation, quantity, `  ${settings}\n`)).toBe(wanted);
  });
});
