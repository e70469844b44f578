import { exactPlaces, formatDecimal, inUnit, placesToShow } from '../quantity/index.ts';
import type { Rational } from '../quantity/model.ts';
import type { GaugeAdvice } from './advice.ts';
import type { KitGauge } from './kit.ts';
import type { LeafStack } from './leaf-stack.ts';

/** One line that says with what a gap is measured, or that nothing at hand can. */
export function adviceWords(advice: Omit<GaugeAdvice, 'text'>): string {
  const [best] = advice.fits;
  if (best === undefined) return noneWords(advice);
  const { lowMm, highMm } = advice.clearance;
  const along =
    advice.place.boreMm !== null && best.widthMm === null ? ', held along the bore' : '';
  if (highMm === null) return `${best.gauge.label} passes${along}`;
  if (lowMm === null) return `${best.gauge.label} does not pass${along}`;
  const { pair } = advice;
  if (pair === null) return `${best.gauge.label}${along}${alsoToMake(advice)}`;
  return `${best.gauge.label}${along}; go ${pair.go.gauge.label}, no-go ${pair.noGo.gauge.label}`;
}

function alsoToMake(advice: Omit<GaugeAdvice, 'text'>): string {
  const words = toMakeWords(advice);
  return words === null ? '' : `; ${words}`;
}

/** `to prove it, make go 0.0408 in and no-go 0.0422 in, known to 0.00007 in`; null where nothing has to be made. */
export function toMakeWords({
  toMake,
  clearance,
  isForRule,
}: Omit<GaugeAdvice, 'text'>): string | null {
  if (toMake === null || isForRule) return null;
  const { unit } = clearance;
  const go = madeWords(toMake.goMm, unit, 'up');
  const noGo = madeWords(toMake.noGoMm, unit, 'down');
  return `to prove it, make go ${go} and no-go ${noGo}, known to ${madeWords(toMake.withinMm, unit, 'down')}`;
}

/** A size to be made, in full where six places of an inch or five of a millimeter do, else inward. */
function madeWords(mm: Rational, unit: 'in' | 'mm', inward: 'up' | 'down'): string {
  const number = inUnit(mm, 'length', unit);
  const most = unit === 'in' ? 6 : 5;
  return `${formatDecimal(number, Math.min(exactPlaces(number) ?? most, most), inward)} ${unit}`;
}

/** What to do where no single gauge fits: leaves together, or the nearest on either side. */
export function noneWords(advice: Omit<GaugeAdvice, 'text'>): string {
  const { stack } = advice;
  if (stack?.fits) return stackWords(stack);
  const whose = advice.kit.ordinary ? 'no common gauge fits' : 'no gauge of the kit fits';
  const sides = nearestWords(advice);
  return sides === ''
    ? `${whose}${alsoToMake(advice)}`
    : `${whose}: nearest ${sides.includes(' and ') ? 'are' : 'is'} ${sides}${alsoToMake(advice)}`;
}

/** `0.016 in and 0.0025 in leaves together`. */
export function stackWords({ leaves }: LeafStack): string {
  const names = leaves.map(({ gauge }) => gauge.name);
  const last = names.pop();
  return `${names.join(', ')} and ${last} leaves together`;
}

/** `0.018 in leaf (0.0005 in less) and 0.019 in leaf (0.0005 in more)`; empty for an empty kit. */
export function nearestWords(advice: Omit<GaugeAdvice, 'text'>): string {
  const { nearest, clearance } = advice;
  const told = [nearest.below, nearest.above].flatMap((each) =>
    each === null
      ? []
      : [`${each.gauge.label} (${differenceWords(each, clearance.nominalMm, clearance.unit)})`],
  );
  return told.join(' and ');
}

function differenceWords({ gauge }: KitGauge, from: Rational, unit: 'in' | 'mm'): string {
  const gap = gauge.mm.sub(from);
  const told = lengthWords(gap.abs(), unit);
  return `${told} ${gap.s < 0n ? 'less' : 'more'}`;
}

/** A length that was worked, to as many places as show it: `0.0005 in`, `0.04 mm`. */
export function lengthWords(mm: Rational, unit: 'in' | 'mm'): string {
  const number = inUnit(mm, 'length', unit);
  return `${formatDecimal(number, placesToShow(number, unit === 'in' ? 4 : 2))} ${unit}`;
}
