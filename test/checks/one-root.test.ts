import { describe, expect, it } from 'vitest';
import type { Example } from '../../src/checks/define.ts';
import type { CheckContext } from '../../src/checks/index.ts';
import { examine } from '../../src/checks/list.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { exampleFile, wholeSheet } from './examples.ts';

const context: CheckContext = {
  gauges: gaugeBook(),
  kinds: builtInKinds(),
  wireGauge: 'imperial',
  picture: null,
};

/** The checks that speak on a sheet, and that do not on the clean one. */
function said(sheet: Example['sheet']): readonly string[] {
  const findings = examine(wholeSheet(sheet), exampleFile, context).findings;
  return findings.map(({ check, severity }) => `${severity} ${check}`).sort();
}

const level =
  '1. Turn the cover over. :state[cover inverted]\n2. Lift away the cover gasket. :state[gasket off]\n3. Pass the gauge under the free end: :value[float-level].\n4. Lay the gasket on, and the cover. :state[gasket on] :state[cover on]';
const stroke = '1. Hold the throttle shut and measure to wide open: :value[pump-stroke].';
const idle =
  '1. Turn the needle in until it seats lightly, then back it out: :value[idle-mixture].';

/** The clean sheet's work with one piece of a step another. */
function work(from: string, to: string): string {
  const caution =
    ':::warning{hazard=gasoline-vapor}\nGasoline vapor burns. It can burn or kill you. No flame, spark or hot lamp; catch the fuel.\n:::';
  const whole = `# Orlo F27 single-barrel\n\n${caution}\n\n## Float level\n\nHigh level floods and stalls; low level starves.\n\n${level}\n\n## Pump stroke\n\n${stroke}\n\n## Initial idle\n\n${idle}\n`;
  expect(whole).toContain(from);
  return whole.replace(from, to);
}

const marks = ':value[pump-stroke]';

describe('one root, one finding', () => {
  it('the sheet that is altered here is clean', () => {
    expect(said({})).toEqual([]);
    expect(said({ body: work(marks, marks) })).toEqual([]);
  });

  it.each([
    ['another mark in its place', marks, ':value[float-level]', 'warning value-misplaced'],
    ['another mark, of the first setting', ':value[float-level]', marks, 'warning value-misplaced'],
    ['the figure of another setting', marks, '13/64 in', 'warning prose-disagrees'],
    ['a wrong figure', marks, '9/16 in', 'warning prose-disagrees'],
    ['its own figure', marks, '7/16 in', 'warning number-typed'],
    ['its own figure in another unit', ':value[float-level]', '5.16 mm', 'warning number-typed'],
    ['a wrong count', ':value[idle-mixture]', '1-3/4 turns', 'warning prose-disagrees'],
    ['a count in words', ':value[idle-mixture]', 'one and a quarter turns', 'warning number-typed'],
    [
      'a wrong count after `back out`',
      'then back it out: :value[idle-mixture].',
      'then back out two turns: :value[idle-mixture].',
      'warning prose-disagrees',
    ],
    [
      'a wrong count in figures',
      'then back it out: :value[idle-mixture].',
      'then back it off 2-1/4 turns, :value[idle-mixture].',
      'warning prose-disagrees',
    ],
    ['a misspelt mark', marks, ':value[pump-stork]', 'error value-undefined'],
  ])('%s', (_, from, to, expected) => {
    expect(said({ body: work(from, to) })).toEqual([expected]);
  });

  it.each([
    ['pump-stroke', 'pump-stork', '{ value: 7/16 in, link: middle hole, from: m48 p. 34 }'],
    ['idle-mixture', 'idle-mixtrue', '{ value: 1-1/4 turns out, from: m48 p. 40 }'],
    [
      'float-level',
      'flaot-level',
      '{ value: 13/64 in, at: free end of the float, cover: inverted, gasket: removed, from: m48 p. 31 }',
    ],
    [
      'float-level',
      'float-levle',
      '{ value: 13/64 in, at: free end of the float, cover: inverted, gasket: removed, from: m48 p. 31 }',
    ],
    ['idle-mixture', 'idel-mixture', '{ value: 1-1/4 turns out, from: m48 p. 40 }'],
  ])('the key of %s written %s', (name, misspelt, given) => {
    const settings: Record<string, string> = {
      'float-level':
        '{ value: 13/64 in, at: free end of the float, cover: inverted, gasket: removed, from: m48 p. 31 }',
      'pump-stroke': '{ value: 7/16 in, link: middle hole, from: m48 p. 34 }',
      'idle-mixture': '{ value: 1-1/4 turns out, from: m48 p. 40 }',
    };
    const lines = Object.entries(settings).map(([key, text]) =>
      key === name ? `  ${misspelt}: ${given}` : `  ${key}: ${text}`,
    );
    expect(said({ front: `settings:\n${lines.join('\n')}` })).toEqual(['error setting-unknown']);
  });

  it.each([
    ['Float Level', '13/64 in, at: free end of the float, cover: inverted, gasket: removed'],
    ['Pump stroke', '7/16 in, link: middle hole'],
    ['idle needle', '1-1/4 turns out'],
    ['pump travel', '7/16 in, link: middle hole'],
    ['float height', '13/64 in, at: free end of the float, cover: inverted, gasket: removed'],
  ])('a setting once more as %s', (name, value) => {
    expect(said({ settings: `${name}: { value: ${value}, from: m48 p. 30 }` })).toEqual([
      'error setting-repeated',
    ]);
  });

  const unit = (features: string, more = ''): string =>
    `unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [${features}]${more}`;

  it.each([
    ['single-barrel, downdraft', '', ['note feature-dropped']],
    [
      'single-barrel, downdraft',
      'pump-delivery: { value: 10 cm3 per 10 strokes, from: m48 p. 34 }',
      ['warning feature-dropped'],
    ],
  ])('features %s', (features, settings, expected) => {
    const found = said({ front: unit(features), settings });
    expect(found.filter((one) => one.endsWith('feature-dropped'))).toEqual(expected);
  });
});
