import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { confusable, gaugeBook, goNoGo, inside, namesOf, nearest } from '../../src/gauges/index.ts';
import { gaugeUncertainty } from '../../src/gauges/trusted.ts';
import type { Gauge, GaugeSystem } from '../../src/quantity/model.ts';
import { rational } from '../../src/quantity/rational.ts';

const book = gaugeBook();
const inch = (text: string) => rational(text).mul(rational('25.4'));
const labels = (gauges: readonly Gauge[]) => gauges.map((gauge) => gauge.label);
const number = (name: string) => {
  const gauge = book.find('number-drill', name);
  if (!gauge) throw new Error(`no drill ${name}`);
  return gauge;
};

describe('nearest', () => {
  test('either side of a drill, and the drill itself', () => {
    const found = nearest(inch('0.1405'));
    expect(found.below?.label).toBe('3.5 mm drill');
    expect(labels(found.exact)).toEqual(['No. 28 drill']);
    expect(found.above?.label).toBe('9/64 drill');
  });

  test('within the systems asked for', () => {
    const found = nearest(inch('0.138'), ['number-drill']);
    expect(found.below?.label).toBe('No. 29 drill');
    expect(found.exact).toEqual([]);
    expect(found.above?.label).toBe('No. 28 drill');
  });

  test('beyond the ends there is nothing', () => {
    expect(nearest(inch('0.0059'), ['number-drill']).below).toBeNull();
    expect(nearest(inch('0.228'), ['number-drill']).above).toBeNull();
    expect(nearest(inch('0.1'), ['pin'])).toEqual({ below: null, exact: [], above: null });
  });

  test('a size of several names gives the name of the first system asked for', () => {
    expect(nearest(inch('0.2501'), ['letter-drill', 'fraction-drill']).below?.label).toBe(
      'drill E',
    );
    expect(nearest(inch('0.2501'), ['fraction-drill', 'letter-drill']).below?.label).toBe(
      '1/4 drill',
    );
  });
});

describe('namesOf', () => {
  test('a quarter inch', () =>
    expect(labels(namesOf(inch('0.25')))).toEqual(['drill E', '1/4 drill']));

  test('twenty-eight thousandths', () => {
    expect(labels(namesOf(inch('0.028')))).toEqual([
      'No. 70 drill',
      '0.028 in wire',
      '0.028 in leaf',
      '22 SWG imperial',
      '22 BWG',
    ]);
  });

  test('half an inch is also 12.7 mm', () => {
    expect(labels(namesOf(rational('12.7')))).toEqual([
      '1/2 drill',
      '12.7 mm drill',
      '7/0 SWG imperial',
      '5/0 BWG',
    ]);
  });

  test('a size that nothing has', () => expect(namesOf(rational(1, 3))).toEqual([]));
});

describe('inside', () => {
  test('both limits belong to it', () => {
    expect(labels(inside(inch('0.136'), inch('0.1405'), ['number-drill']))).toEqual([
      'No. 29 drill',
      'No. 28 drill',
    ]);
    expect(inside(inch('0.1361'), inch('0.1404'), ['number-drill'])).toEqual([]);
  });

  test('inverted limits hold nothing', () => {
    expect(inside(inch('0.2'), inch('0.1'))).toEqual([]);
  });
});

describe('go and no-go', () => {
  test('0.018-0.022 in with wires, good to .001 in: the ends themselves prove nothing', () => {
    const pair = goNoGo(inch('0.018'), inch('0.022'), ['wire']);
    expect([pair.go?.label, pair.noGo?.label]).toEqual(['0.50 mm wire', '0.020 in wire']);
  });

  test('13/64 ± 1/64 in with number drills: the widest pair inside', () => {
    const pair = goNoGo(rational('25.4').mul(rational(12, 64)), inch('0.21875'), ['number-drill']);
    // .1875-.21875: No. 12 is .1890, No. 3 is .2130, No. 2 (.2210) is out.
    expect([pair.go?.label, pair.noGo?.label]).toEqual(['No. 12 drill', 'No. 3 drill']);
  });

  test('.043 ± .002 in (the published example): number drills and their step', () => {
    const pair = goNoGo(inch('0.041'), inch('0.045'), ['number-drill']);
    expect([pair.go?.label, pair.noGo?.label]).toEqual(['No. 58 drill', 'No. 57 drill']);
  });

  test('a band narrower than the step holds one gauge, which proves nothing', () => {
    expect(goNoGo(inch('0.135'), inch('0.137'), ['number-drill'])).toEqual({
      go: null,
      noGo: null,
      reason: 'only No. 29 drill lies within the limits, and a go and a no-go gauge need two sizes',
    });
  });

  test('one size with two names is still one size', () => {
    const pair = goNoGo(inch('0.249'), inch('0.251'), ['letter-drill', 'fraction-drill']);
    expect(pair.go).toBeNull();
    expect(pair.reason).toContain('only drill E lies');
  });

  test('a band between two gauges holds none, and says which are nearest', () => {
    expect(goNoGo(inch('0.137'), inch('0.140'), ['number-drill']).reason).toBe(
      'no gauge lies within the limits: No. 29 drill is below them, No. 28 drill above',
    );
  });

  test('inverted limits, and systems without gauges', () => {
    expect(goNoGo(inch('0.14'), inch('0.13')).reason).toBe(
      'the lower limit is above the upper one',
    );
    expect(goNoGo(inch('0.13'), inch('0.14'), ['pin']).reason).toBe(
      'no gauge lies within the limits',
    );
  });
});

describe('confusable', () => {
  const said = (gauge: Gauge) =>
    confusable(gauge).map((each) => `${each.kind} ${each.gauge.label}`);

  test('No. 28 drill and 9/64 drill, both ways', () => {
    expect(said(number('28'))[0]).toBe('near-twin 9/64 drill');
    const fraction = book.find('fraction-drill', '9/64');
    expect(fraction && said(fraction)).toEqual(['near-twin No. 28 drill']);
  });

  test('the same number elsewhere, unless it is the same size', () => {
    expect(said(number('29'))).toEqual([
      'same-name 29 SWG imperial',
      'same-name 29 AWG',
      'same-name No. 29 US steel wire',
      'same-name No. 29 music wire',
      'same-name 29 BWG',
    ]);
    const imperial = book.find('swg', '22');
    expect(imperial && said(imperial)).not.toContain('same-name 22 BWG');
    expect(imperial && said(imperial)).toContain('same-name No. 22 US steel wire');
  });

  test('exactly half a thousandth apart is no twin: nearer is', () => {
    // No. 39 is .0995 and 2.5 mm .0984; No. 16 .1770 and 4.5 mm .17717 are nearer.
    expect(said(number('16'))).toContain('near-twin 4.5 mm drill');
    expect(said(number('39')).filter((text) => text.startsWith('near-twin'))).toEqual([]);
    // No. 18 US steel wire is .0475, No. 18 SWG .0480: the boundary itself.
    const steel = book.find('us-steel-wire', '18');
    expect(steel && said(steel)).not.toContain('near-twin 18 SWG imperial');
    expect(steel && said(steel)).toContain('same-name 18 SWG imperial');
  });

  test('a gauge named by its size has none', () => {
    const wire = book.find('wire', '0.028 in');
    expect(wire && confusable(wire)).toEqual([]);
  });
});

describe('against brute force', () => {
  const systems: GaugeSystem[] = [
    'number-drill',
    'letter-drill',
    'fraction-drill',
    'metric-drill',
    'swg',
    'bwg',
  ];
  const some = fc.uniqueArray(fc.constantFrom(...systems), { minLength: 1 });
  const every = systems.flatMap((system) => book.all(system));
  /** Any ratio up to about 30 mm, and often a size that a gauge has. */
  const size = fc.oneof(
    fc
      .tuple(fc.integer({ min: 1, max: 30_000 }), fc.integer({ min: 1, max: 1_000 }))
      .map(([n, d]) => rational(n, d)),
    fc.constantFrom(...every).map((gauge) => gauge.mm),
  );

  test('nearest', () => {
    fc.assert(
      fc.property(size, some, (mm, chosen) => {
        const all = chosen.flatMap((system) => book.all(system));
        const found = nearest(mm, chosen);
        const under = all.filter((g) => g.mm.compare(mm) < 0);
        const over = all.filter((g) => g.mm.compare(mm) > 0);
        const most = under.reduce<Gauge | null>(
          (a, b) => (a && a.mm.compare(b.mm) >= 0 ? a : b),
          null,
        );
        const least = over.reduce<Gauge | null>(
          (a, b) => (a && a.mm.compare(b.mm) <= 0 ? a : b),
          null,
        );
        expect(found.below).toBe(most);
        expect(found.above).toBe(least);
        expect(found.exact).toEqual(all.filter((g) => g.mm.equals(mm)));
      }),
    );
  });

  test('inside, and the pair that uses the band best', () => {
    fc.assert(
      fc.property(size, size, some, (low, high, chosen) => {
        const within = chosen
          .flatMap((system) => book.all(system))
          .filter((g) => g.mm.compare(low) >= 0 && g.mm.compare(high) <= 0);
        const found = inside(low, high, chosen);
        expect(new Set(found)).toEqual(new Set(within));
        expect(found.length).toBe(within.length);
        found.slice(1).forEach((g, i) => {
          expect(g.mm.compare(found[i]?.mm ?? 0)).toBeGreaterThanOrEqual(0);
        });
        const pair = goNoGo(low, high, chosen);
        const goes = within.filter((g) => g.mm.sub(gaugeUncertainty(g)).compare(low) >= 0);
        const noGoes = within.filter((g) => g.mm.add(gaugeUncertainty(g)).compare(high) <= 0);
        const isThere = goes.some((go) => noGoes.some((noGo) => go.mm.compare(noGo.mm) < 0));
        expect(pair.go !== null).toBe(isThere);
        if (!pair.go) return;
        expect(pair.go.mm.compare(pair.noGo.mm)).toBe(-1);
        for (const gauge of goes) expect(gauge.mm.compare(pair.go.mm)).toBeGreaterThanOrEqual(0);
        for (const gauge of noGoes) {
          expect(gauge.mm.compare(pair.noGo.mm)).toBeLessThanOrEqual(0);
        }
      }),
    );
  });
});
