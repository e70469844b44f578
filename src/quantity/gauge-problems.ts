import type { Gauge, GaugeBook, GaugeSystem, Rational, SizeProblem } from './model.ts';
import type { Numeral } from './numeral.ts';
import { orList, problem } from './problems.ts';
import { exactText, formatDecimal, rational } from './rational.ts';
import type { UnitOfMeasure } from './units.ts';

const INCH = rational('25.4');

/** Inches of a length in mm, to four places. */
function inches(mm: Rational): string {
  return `${formatDecimal(mm.div(INCH), 4)} in`;
}

const SYSTEM_TITLES: Readonly<Record<GaugeSystem, string>> = {
  'number-drill': 'number drills run from 1 to 97',
  'letter-drill': 'letter drills run from A to Z',
  'fraction-drill': 'fraction drills go by reduced fractions of an inch',
  'metric-drill': 'metric drills go by the series of their standard',
  awg: 'AWG runs from 6/0 to 50',
  swg: 'imperial SWG runs from 7/0 to 50',
  'us-steel-wire': 'US steel wire gauge runs from 7/0 to 50',
  'music-wire': 'music wire runs from 6/0 to 45',
  bwg: 'BWG runs from 5/0 to 36',
  wire: 'a wire goes by its own size',
  leaf: 'a leaf goes by its own size',
  pin: 'a pin goes by its own size',
};

const SYSTEM_NOUNS: Readonly<Record<GaugeSystem, string>> = {
  'number-drill': 'drill No.',
  'letter-drill': 'drill',
  'fraction-drill': 'drill',
  'metric-drill': 'drill',
  awg: 'AWG',
  swg: 'SWG',
  'us-steel-wire': 'US steel wire gauge',
  'music-wire': 'music wire',
  bwg: 'BWG',
  wire: 'wire',
  leaf: 'leaf',
  pin: 'pin',
};

/** `No. 98 drill`, `AWG 77`: a system that has no such name. */
export function noSuchGauge(
  system: GaugeSystem,
  name: string,
  start: number,
  end: number,
  gauges: GaugeBook,
): SizeProblem {
  const near = nearbyNames(system, name, gauges);
  const offer = near.length > 0 ? ` (near it: ${near.join(', ')})` : '';
  return problem(
    'no-such-gauge',
    `there is no ${SYSTEM_NOUNS[system]} ${name}; ${SYSTEM_TITLES[system]}${offer}`,
    near.length > 0
      ? `look in the source again: ${near.join(' or ')}?`
      : 'look in the source again',
    start,
    end,
    near,
  );
}

/** The nearest numbers that exist, then names one edit away: digits swapped, one too many. */
function nearbyNames(system: GaugeSystem, name: string, gauges: GaugeBook): string[] {
  const found: string[] = [];
  const add = (gauge: Gauge | null): void => {
    if (gauge && !found.includes(gauge.label)) found.push(gauge.label);
  };
  for (const gauge of nearestNumbers(system, name, gauges)) add(gauge);
  for (let i = 1; i < name.length; i++) {
    const swapped = name.slice(0, i - 1) + name.charAt(i) + name.charAt(i - 1) + name.slice(i + 1);
    add(gauges.find(system, swapped));
  }
  for (let i = 0; i < name.length && name.length > 1; i++) {
    add(gauges.find(system, name.slice(0, i) + name.slice(i + 1)));
  }
  return found.slice(0, 3);
}

/** The existing number nearest to one that does not exist, if it is at most ten away. */
function nearestNumbers(system: GaugeSystem, name: string, gauges: GaugeBook): readonly Gauge[] {
  if (!/^\d{1,3}$/.test(name)) return [];
  let least = 11;
  let nearest: Gauge[] = [];
  for (const gauge of gauges.all(system)) {
    const off = Math.abs(Number(gauge.name) - Number(name));
    if (off < least) [least, nearest] = [off, [gauge]];
    else if (off === least) nearest.push(gauge);
  }
  return nearest;
}

/** A drill asked for by a size that no drill has: the nearest either side are named. */
export function noSuchDrill(
  written: string,
  numeral: Numeral,
  unit: UnitOfMeasure,
  start: number,
  end: number,
  gauges: GaugeBook,
): SizeProblem {
  const mm = numeral.value.mul(unit.factor);
  const systems: GaugeSystem[] =
    unit.id === 'mm' ? ['metric-drill'] : ['fraction-drill', 'number-drill', 'letter-drill'];
  let below: Gauge | null = null;
  let above: Gauge | null = null;
  for (const system of systems) {
    for (const gauge of gauges.all(system)) {
      const side = gauge.mm.compare(mm);
      if (side <= 0 && (!below || gauge.mm.compare(below.mm) > 0)) below = gauge;
      if (side >= 0 && (!above || gauge.mm.compare(above.mm) < 0)) above = gauge;
    }
  }
  const near = [...new Set([below, above].filter((gauge) => gauge !== null))];
  const named = near.map(
    (gauge) =>
      `${gauge.label} (${gauge.unit === 'mm' ? `${exactText(gauge.mm)} mm` : inches(gauge.mm)})`,
  );
  const message =
    near.length === 1 && near[0]?.mm.equals(mm)
      ? `no drill goes by the name ${written}; that size is ${near[0].label}`
      : `there is no ${written} drill; the nearest are ${named.join(' and ')}`;
  const labels = near.map((gauge) => gauge.label);
  return problem(
    'no-such-gauge',
    message,
    `write ${labels.join(' or ')}, as the source has it`,
    start,
    end,
    labels,
  );
}

/** `29 drill`: a number of the drill gauge is written with No. or #. */
export function plainDrillNumber(
  name: string,
  start: number,
  end: number,
  gauges: GaugeBook,
): SizeProblem {
  const drill = gauges.find('number-drill', name);
  const candidates = [
    drill ? `${drill.label}, ${inches(drill.mm)}` : null,
    gauges.find('metric-drill', name) ? `${name} mm drill` : null,
  ].filter((c) => c !== null);
  return problem(
    'bare-number',
    `${name} drill does not say whether ${name} is a drill number or a size (${candidates.join('; ')})`,
    drill
      ? `write ${drill.label}, if the source means the drill gauge`
      : 'say in which system the drill is named',
    start,
    end,
    candidates,
  );
}

/** A number with no unit and no system, with everything it could mean; `wire` if a wire's word follows. */
export function bareNumber(
  name: string,
  named: boolean,
  start: number,
  end: number,
  gauges: GaugeBook,
  wire = false,
): SizeProblem {
  const written = named ? `No. ${name}` : name;
  const candidates: string[] = [];
  if (/^\d+(?:\/0)?$/.test(name) && wire) {
    for (const system of ['swg', 'awg', 'us-steel-wire', 'music-wire'] as const) {
      const gauge = gauges.find(system, name);
      if (gauge) candidates.push(`${gauge.label}, ${inches(gauge.mm)}`);
    }
  } else if (/^\d+$/.test(name)) {
    const drill = gauges.find('number-drill', name);
    if (drill) candidates.push(`${drill.label}, ${inches(drill.mm)}`);
    const count = BigInt(name);
    if (count > 0n && count < 1000n) {
      candidates.push(
        `a jet marked in hundredths of a millimeter, ${formatDecimal(rational(count, 100), 2)} mm`,
      );
      candidates.push(`a jet marked in thousandths, ${formatDecimal(rational(count, 1000), 3)} in`);
      candidates.push('a flow number');
    }
  } else if (/[/⁄½¼¾⅛⅜⅝⅞]/.test(name)) {
    candidates.push(`${name} in`);
    if (/[½¼¾]|[/⁄][248]$/.test(name)) candidates.push(`${name} turn`);
  } else {
    candidates.push(`${name} in`, `${name} mm`);
  }
  const first = candidates[0]?.split(',')[0];
  return problem(
    named ? 'bare-number' : 'no-unit',
    `${written} has no ${named ? 'system' : 'unit'}: it could be ${orList(candidates)}`,
    `say which: ${first ? `\`${first}\`, for example` : 'add the unit'}`,
    start,
    end,
    candidates,
  );
}
