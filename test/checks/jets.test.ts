import { describe, expect, test } from 'vitest';
import { examine } from '../../src/checks/list.ts';
import { exampleContext, exampleFile, wholeSheet } from './examples.ts';

/** What is said of settings that are no clean sheet's own; that no step uses them is left out. */
function said(settings: string, jets: string | null): string[] {
  const front = `unit:
  kind: carburetor
  maker: Orlo
  model: F27
  features: [single-barrel, downdraft, pump]${jets === null ? '' : `\n  jets: ${jets}`}`;
  const { findings } = examine(wholeSheet({ front, settings }), exampleFile, exampleContext());
  return findings
    .filter(({ check }) => check !== 'setting-unused')
    .map(({ check, message, fix }) => `${check}: ${message} | ${fix}`);
}

describe('jets by number on a sheet', () => {
  test.each([
    ['main-jet: { value: 105, also: [0.0413 in, 1.05 mm], from: m48 p. 28 }', 'hundredths of mm'],
    ['main-jet: { value: No. 105 jet, also: [1.05 mm], from: m48 p. 28 }', 'hundredths of mm'],
    ['idle-tube: { value: 45, also: [0.45 mm], from: m48 p. 28 }', 'hundredths of mm'],
    ['power-jet: { value: 0.040 in, also: [40], from: m48 p. 28 }', 'thousandths of in'],
    ['pump-nozzle: { value: 24, also: [0.61 mm], from: m48 p. 28 }', 'thousandths of in'],
    ['main-jet: { value: 47, also: [0.0785 in], from: m48 p. 28 }', 'drill'],
    ['main-jet: { value: 330, from: m48 p. 28 }', 'flow'],
    ['main-jet: { value: 330, also: [0.052 in], from: m48 p. 28 }', 'flow'],
    ['main-jet: { value: 1.05 mm, marked: 105, from: m48 p. 28 }', 'hundredths of mm'],
    ['main-jet: { value: 0.052 in, marked: 330, from: m48 p. 28 }', 'flow'],
    [
      'air-bleed: { value: 65, jets: thousandths of in, also: [0.065 in], from: m48 p. 28 }',
      'flow',
    ],
  ])('%s with jets in %s is right', (settings, jets) => expect(said(settings, jets)).toEqual([]));

  test.each([
    [
      'main-jet: { value: 105, also: [1.50 mm], from: m48 p. 28 }',
      'hundredths of mm',
      'sizes-disagree: 105 is 1.050 mm, but `also` says 1.50 mm (0.45 mm more) | 1.05 mm for `also`, if two digits were swapped; or 150',
    ],
    [
      'main-jet: { value: 150, also: [1.05 mm, 0.0413 in], from: m48 p. 28 }',
      'hundredths of mm',
      '105, if two digits were swapped',
    ],
    [
      'idle-tube: { value: 0.028 in, also: [82], from: m48 p. 28 }',
      'thousandths of in',
      '28 for `also`, if two digits were swapped',
    ],
    ['main-jet: { value: 74, also: [0.0785 in], from: m48 p. 28 }', 'drill', 'sizes-disagree'],
    [
      'main-jet: { value: 1.05 mm, marked: 150, from: m48 p. 28 }',
      'hundredths of mm',
      'worked-disagrees: ',
    ],
    ['power-jet: { value: 105, from: m48 p. 28 }', 'hundredths of an inch', 'front-matter-invalid'],
  ])('%s with jets in %s is told', (settings, jets, part) => {
    const findings = said(settings, jets);
    expect(findings.join('\n')).toContain(part);
    expect(findings).toHaveLength(part === 'front-matter-invalid' ? 2 : 1);
  });

  test('a number without its numbering is a finding that says how to tell it', () => {
    for (const value of ['105', 'No. 105', 'No. 105 jet']) {
      expect(said(`main-jet: { value: ${value}, from: m48 p. 28 }`, null)).toEqual([
        expect.stringContaining(
          '| say under `unit:` how its maker numbers jets: `jets: hundredths of mm`',
        ),
      ]);
    }
  });

  test('what is no jet has no jet’s number', () => {
    const settings = 'choke-pull-down: { value: 105, from: m48 p. 28 }';
    expect(said(settings, 'hundredths of mm').join()).toContain('size-without-system: 105 has no');
  });
});

describe('names under `unit:` in any case and spacing', () => {
  const unit = (lines: string) => {
    const front = `unit:
  kind: carburetor
  maker: Orlo
  model: F27
  features: [single-barrel, downdraft, pump]
${lines}`;
    return examine(wholeSheet({ front }), exampleFile, exampleContext());
  };

  test.each([
    ['  Throttle Bore: 1-7/16 in', 'throttle-bore'],
    ['  THROTTLE-BORE: 1-7/16 in', 'throttle-bore'],
    ['  throttle bore: 1-7/16 in', 'throttle-bore'],
    ['  Throttle_Bore: 1-7/16 in', 'throttle-bore'],
    ['  Throttle Closed Angle: 12°', 'throttle-closed-angle'],
  ])('%s', (lines, name) => {
    const { sheet, findings } = unit(lines);
    expect([...sheet.unit.sizes.keys()]).toEqual([name]);
    expect(findings).toEqual([]);
  });

  test('Idle Needle Thread', () => {
    const { sheet } = unit('  Idle Needle Thread: 10-32 UNF');
    expect([...sheet.unit.threads.keys()]).toEqual(['idle-needle-thread']);
  });

  test('a size under two spellings is told', () => {
    const { sheet, findings } = unit('  throttle-bore: 1-7/16 in\n  Throttle Bore: 1-1/2 in');
    expect(sheet.unit.sizes.get('throttle-bore')?.text).toBe('1-7/16 in');
    expect(findings.map(({ check }) => check)).toEqual(['unit-size-unknown']);
  });
});
