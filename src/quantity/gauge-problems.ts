import { systemRecord, systemsWhere } from './gauge-systems.ts';
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

/** `No. 98 drill`, `AWG 77`: a system that has no such name. */
export function noSuchGauge(
  system: GaugeSystem,
  name: string,
  start: number,
  end: number,
  gauges: GaugeBook,
): SizeProblem {
  const { noun, runs } = systemRecord(system);
  const near = nearbyNames(system, name, gauges);
  const offer = near.length > 0 ? ` (near it: ${near.join(', ')})` : '';
  return problem(
    'no-such-gauge',
    `there is no ${noun} ${name}; ${runs}${offer}`,
    near.length > 0
      ? `look in the source again: ${near.join(' or ')}?`
      : 'look in the source again',
    start,
    end,
    near,
  );
}

/** `No. 29 (.163) drill`: the name and the size behind it are two sizes. */
export function statedOtherwise(
  lower: string,
  gauge: Gauge,
  start: number,
  end: number,
): SizeProblem {
  const message = `${gauge.label} is ${inches(gauge.mm)}, but the figure in parentheses is ${lower.slice(start + 1, end - 1)}`;
  const fix = 'look in the source which is meant, and put the other under `also`';
  return problem('unreadable', message, fix, start, end, [gauge.label], 0);
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
  const candidates: Candidate[] = [];
  if (drill) candidates.push(namedGauge(drill));
  const metric = gauges.find('metric-drill', name);
  if (metric) candidates.push(plain(`${name} mm drill`));
  const told = candidates.map((each) => each.told).join('; ');
  return problem(
    'bare-number',
    `${name} drill does not say whether ${name} is a drill number or a size${told === '' ? '' : ` (${told})`}`,
    drill
      ? `write ${drill.label}, if the source means the drill gauge`
      : 'say in which system the drill is named',
    start,
    end,
    candidates.map((each) => each.text),
    drill ? 1 : 0,
  );
}

/** What a bare number could be: as a sheet would write it, and as it is told. */
interface Candidate {
  readonly text: string;
  readonly told: string;
}

function plain(text: string): Candidate {
  return { text, told: text };
}

function namedGauge(gauge: Gauge): Candidate {
  return { text: gauge.label, told: `${gauge.label}, ${inches(gauge.mm)}` };
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
  const candidates = meanings(name, gauges, wire);
  const told = candidates.map((each) => each.told);
  // A jet's flow number is no size: it can be meant, and nothing can be written for it.
  if (/^\d+$/.test(name) && !wire && isJetNumber(name)) told.push('a flow number');
  const first = candidates[0]?.text;
  return problem(
    named ? 'bare-number' : 'no-unit',
    `${written} has no ${named ? 'system' : 'unit'}: it could be ${orList(told)}`,
    `say which: ${first ? `\`${first}\`, for example` : 'add the unit'}`,
    start,
    end,
    candidates.map((each) => each.text),
    first === undefined ? 0 : 1,
  );
}

function isJetNumber(name: string): boolean {
  return BigInt(name) > 0n && BigInt(name) < 1000n;
}

function meanings(name: string, gauges: GaugeBook, wire: boolean): Candidate[] {
  const named = (systems: readonly GaugeSystem[]): Candidate[] =>
    systems.flatMap((system) => {
      const gauge = gauges.find(system, name);
      return gauge ? [namedGauge(gauge)] : [];
    });
  if (/^\d+(?:\/0)?$/.test(name) && wire) {
    return named(systemsWhere(({ confused }) => confused.includes('unnamed')));
  }
  if (/^\d+$/.test(name)) {
    const found = named(['number-drill']);
    return isJetNumber(name) ? [...found, ...jetSizes(name)] : found;
  }
  const pair = /^([\d.,]+) ?\/ ?([\d.,]+)$/.exec(name);
  if (pair && /[.,]/.test(name)) {
    return ['in', 'mm'].map((unit) => plain(`${pair[1]}–${pair[2]} ${unit}`));
  }
  if (/[/⁄½¼¾⅛⅜⅝⅞]/.test(name)) {
    const turn = /[½¼¾]|[/⁄][248]$/.test(name);
    return [plain(`${name} in`), ...(turn ? [plain(`${name} turn`)] : [])];
  }
  return [plain(`${name} in`), plain(`${name} mm`)];
}

/** What a jet's number says in the two systems that give a bore by it. */
function jetSizes(name: string): Candidate[] {
  const mm = `${formatDecimal(rational(name).div(100), 2)} mm`;
  const inch = `${formatDecimal(rational(name).div(1000), 3)} in`;
  return [
    { text: mm, told: `a jet marked in hundredths of a millimeter, ${mm}` },
    { text: inch, told: `a jet marked in thousandths, ${inch}` },
  ];
}
