import { describe, expect, it } from 'vitest';
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

/** What is said of the figures of a distributor, or of a carburetor with sizes of its unit. */
function told(front: string): string[] {
  return examine(wholeSheet({ front }), exampleFile, context)
    .findings.filter(({ check }) => FIGURES.test(check))
    .map(({ check, severity, message }) => `${check} ${severity} ${message}`);
}

const FIGURES = /^(?:figures-reversed|worked-disagrees|relation-unworkable|sizes-disagree)$/;

function distributor(settings: string, features = 'six-lobe, single-points'): string {
  return `unit: { kind: ignition-distributor, maker: Orlo, model: K14, features: [${features}] }\nsettings:\n  ${settings.replaceAll('\n', '\n  ')}`;
}

function carburetor(unit: string, settings = ''): string {
  return `unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, downdraft, pump]${unit} }\nsettings:\n  float-level: { value: 13/64 in, at: free end, gasket: removed }\n  ${settings.replaceAll('\n', '\n  ')}`;
}

describe('figures that physics puts in an order', () => {
  it.each([
    [
      'a venturi as wide as its bore',
      carburetor(', throttle-bore: 1-1/4 in, venturi: 1-1/4 in', 'idle-speed: 500 rpm'),
      '`venturi` is 1-1/4 in and `throttle-bore` is 1-1/4 in',
    ],
    [
      'an idle above the governed speed',
      carburetor('', 'idle-speed: { value: 650 rpm }\ngovernor-speed: { value: 605 rpm }'),
      '`idle-speed` is 650 rpm and `governor-speed` is 605 rpm',
    ],
    [
      'a shaft as thick as the bore',
      carburetor(', throttle-bore: 5/16 in, throttle-shaft: 5/16 in', 'idle-speed: 500 rpm'),
      '`throttle-shaft` is 5/16 in',
    ],
    [
      'one set shut for longer than both',
      distributor('dwell: { value: 32° }\ndwell-each: { value: 35° }', 'eight-lobe, dual-points'),
      '`dwell-each` is 35° and `dwell` is 32°',
    ],
    [
      'a part advance above the most, one at the crank and one at the distributor',
      distributor(
        'advance-part: { value: 34°, of: crank, speed: 1400 rpm }\nadvance-maximum: { value: 14° distributor, speed: 1600 rpm }',
      ),
      '`advance-part` is 34°',
    ],
    [
      'an advance that starts above the speed of its most',
      distributor(
        'advance-start: { value: 1800 rpm, of: distributor }\nadvance-maximum: { value: 14°, of: distributor, speed: 1600 rpm }',
      ),
      '`advance-start` is 1800 rpm and `speed` of `advance-maximum` is 1600 rpm',
    ],
    [
      'a diaphragm that begins where it should have come to its end',
      distributor(
        'vacuum-start: { value: 15 inHg }\nvacuum-maximum: { value: 9°, of: distributor, vacuum: 12 inHg }',
      ),
      '`vacuum-start` is 15 inHg',
    ],
    [
      'a static timing before the one at idle',
      distributor('static-timing: { value: 12° BTDC }\ntiming: { value: 6° BTDC, speed: 600 rpm }'),
      '`static-timing` is 12° BTDC and `timing` is 6° BTDC',
    ],
    [
      'a dwell of eight lobes on four',
      distributor('dwell: { value: 30° }', 'four-lobe, single-points'),
      '`dwell` is 30°',
    ],
    [
      'degrees of the crank beside those of the distributor that are no double',
      distributor(
        'advance-maximum: { value: 14° distributor, also: [30° crank], speed: 1600 rpm }',
      ),
      '14° distributor is 28° at the crank, but `advance-maximum` says 30° crank',
    ],
    [
      'degrees of the crank with those of the distributor behind them',
      distributor(
        'advance-maximum: { value: 26° crank, also: [14° distributor], speed: 1600 rpm }',
      ),
      '26° crank',
    ],
  ])('%s', (_name, front, message) => {
    const found = told(front);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(message);
  });

  it.each([
    [
      'a venturi in its bore',
      carburetor(', throttle-bore: 1-1/4 in, venturi: 1-1/8 in', 'idle-speed: 500 rpm'),
    ],
    [
      'limits with room for both in their order',
      carburetor(
        '',
        'idle-speed: { value: 450–600 rpm }\nfast-idle-speed: { value: 550–1500 rpm }',
      ),
    ],
    [
      'a part advance at the crank within the most at the distributor',
      distributor(
        'advance-part: { value: 20°, of: crank, speed: 1400 rpm }\nadvance-maximum: { value: 14° distributor, speed: 1600 rpm }',
      ),
    ],
    [
      'a start at the crank below the most at the distributor',
      distributor(
        'advance-start: { value: 1800 rpm, of: crank }\nadvance-maximum: { value: 14°, of: distributor, speed: 1600 rpm }',
      ),
    ],
    [
      'degrees of the crank that are the double',
      distributor(
        'advance-maximum: { value: 14° distributor, also: [28° crank], speed: 1600 rpm }',
      ),
    ],
    [
      'a two-stroke, whose distributor turns with the crank',
      distributor(
        'advance-maximum: { value: 14° distributor, also: [14° crank], speed: 1600 rpm }',
        'two-lobe, single-points, crank-speed',
      ),
    ],
    [
      'a timing after top center',
      distributor('static-timing: { value: 2° BTDC }\ntiming: { value: 2° ATDC, speed: 600 rpm }'),
    ],
    [
      'a static timing that is the running one',
      distributor('static-timing: { value: 6° BTDC }\ntiming: { value: 6° BTDC, speed: 600 rpm }'),
    ],
  ])('nothing is said of %s', (_name, front) => {
    expect(told(front)).toEqual([]);
  });
});

describe('a slip is offered only where what it gives is usual', () => {
  /** What is proposed for the figures of a sheet. */
  function proposed(front: string): string[] {
    return examine(wholeSheet({ front }), exampleFile, context)
      .findings.filter(({ check }) => FIGURES.test(check))
      .map(({ check, fix }) => `${check} ${fix}`);
  }

  it('no dwell of nearly the whole way between two lobes', () => {
    const told43 = proposed(
      distributor(
        'dwell: { value: 34 ± 1° }\ndwell-each: { value: 37 ± 1° }',
        'eight-lobe, dual-points',
      ),
    );
    expect(told43).toEqual([expect.stringMatching(/^figures-reversed look in the source/)]);
  });

  it('a dwell of both sets that is nearly all of the way is told', () => {
    expect(told(distributor('dwell: { value: 43 ± 1° }', 'eight-lobe, dual-points'))).toEqual([
      expect.stringMatching(/^figures-reversed warning `dwell` is 43 ± 1°/),
    ]);
    expect(told(distributor('dwell: { value: 36 ± 3° }', 'eight-lobe, dual-points'))).toEqual([]);
  });

  it('no leaf that no ordinary set has', () => {
    const [fix] = proposed(
      distributor(
        'points-gap: { value: 0.016 in, also: [0.41 mm], gauge: 0.019 in leaf }',
        'eight-lobe, dual-points',
      ),
    );
    expect(fix).toMatch(/0\.016 in leaf/);
    expect(fix).not.toMatch(/0\.0159/);
  });
});
