import type { MadePair, SizeFacts } from '../gauges/index.ts';
import { exactPlaces, figuresIn, formatDecimal, inUnit } from '../quantity/index.ts';
import type { Gauge, Rational, Statement } from '../quantity/model.ts';
import { visible } from '../text/index.ts';
import type { Paint } from './paint.ts';

/** Why a measured flow is not turned into a jet's bore. */
const NO_BORE =
  'none: a measured flow says no bore without the head, the fuel and the shape of the jet on its test rig';

/** One size's facts for people: a label to the left, what there is to say to the right. */
export function sizeText(facts: SizeFacts, ink: Paint): string {
  const rows = sizeRows(facts);
  const width = Math.max(...rows.map(([label]) => label.length));
  const lines = rows.map(([label, text]) => `  ${ink.dim(label.padEnd(width))}  ${text}`);
  return `${ink.bold(visible(facts.statement.text))}\n${lines.join('\n')}\n`;
}

/** What there is to say of a size, a label and its text a row; there is one at least. */
export function sizeRows(facts: SizeFacts): readonly (readonly [label: string, text: string])[] {
  const rows: [string, string][] = [];
  const row = (label: string, text: string | null): void => {
    if (text !== null && text !== '') rows.push([label, text]);
  };
  const { statement, exact, low } = facts;
  const [least, most] = [statement.low?.base, statement.high?.base];
  const mm = exact === null ? null : (statement.nominal?.base ?? low64(facts));
  if (mm !== null) {
    row('inches', exactly(statement, mm, 4, 'in'));
    row('millimeters', exactly(statement, mm, 3, 'mm'));
    row('fraction', fractionText(inUnit(mm, 'length', 'in')));
  }
  if (statement.form === 'condition') row('condition', `${statement.condition}, no number`);
  row('also', facts.others.join('; '));
  if (statement.dimension === 'flow') row('bore', NO_BORE);
  if (least && most && low !== null) {
    row(
      'limits',
      (['in', 'mm'] as const)
        .map((unit) => `${short(least, unit, 'up')} to ${short(most, unit, 'down')} ${unit}`)
        .join('; '),
    );
    const printed = [facts.printed.inch, facts.printed.mm].filter((text) => text !== null);
    row('to print', printed.join('; ') === '' ? null : `${printed.join('; ')}, limits inward`);
  }
  if (facts.exact !== null) {
    row(
      'gauges',
      facts.names.map((gauge) => gauge.label).join('; ') || 'none of exactly this size',
    );
  }
  if (facts.neighbors !== null) {
    row(
      'next below',
      facts.neighbors.below === null ? 'none' : gaugeText(facts.neighbors.below, mm),
    );
    row(
      'next above',
      facts.neighbors.above === null ? 'none' : gaugeText(facts.neighbors.above, mm),
    );
  }
  row('inside', insideText(facts.inside));
  if (facts.pair !== null) {
    const { go, noGo, reason } = facts.pair;
    row('go', go === null ? `none: ${reason}` : `${gaugeText(go, null)} passes`);
    row('no-go', noGo === null ? null : `${gaugeText(noGo, null)} does not`);
  }
  row('gauge maker', facts.made === null ? null : madeText(facts.made, facts));
  // A gauge of exactly the size has been named already.
  const named = facts.names.some((gauge) => gauge === facts.advice?.fits[0]?.gauge);
  row('at hand', named && low === null ? null : (facts.advice?.text ?? null));
  for (const other of statement.ambiguous)
    row('or', `${gaugeText(other, null)}, if that was meant`);
  row('near twin', facts.twins.map((gauge) => gaugeText(gauge, mm)).join('; '));
  row('same number', facts.namesakes.map((gauge) => gaugeText(gauge, null)).join('; '));
  if (rows.length === 0) row('reads as', `${statement.dimension}, ${statement.form}`);
  return rows;
}

function low64(facts: SizeFacts): Rational | null {
  return facts.statement.low?.base ?? facts.statement.high?.base ?? null;
}

/** `0.136 in exactly`, or rounded, inside the limits, with a word that says so. */
function exactly(statement: Statement, mm: Rational, places: number, unit: 'in' | 'mm'): string {
  const value = inUnit(mm, 'length', unit);
  const { nominal, low, high, places: shown } = figuresIn(statement, unit, places);
  const rounded = `${formatDecimal(nominal ?? low ?? high ?? value, shown)} ${unit} rounded`;
  const needed = exactPlaces(value);
  if (needed === null || needed > 9) return rounded.replace(/ rounded$/, ', rounded');
  const exact = `${formatDecimal(value, needed)} ${unit} exactly`;
  return needed <= places ? exact : `${exact}; ${rounded}`;
}

/** A limit in full, or rounded inward with `about`. */
function short(mm: Rational, unit: 'in' | 'mm', mode: 'up' | 'down'): string {
  const value = inUnit(mm, 'length', unit);
  const needed = exactPlaces(value);
  const isLong = needed === null || needed > 12;
  return isLong ? `about ${formatDecimal(value, 4, mode)}` : formatDecimal(value, needed);
}

/** The inch fraction a size is, or the sixty-fourths it lies between. */
function fractionText(inches: Rational): string | null {
  if (inches.s < 0n || inches.compare(12) > 0) return null;
  const scaled = inches.mul(64);
  const below = scaled.n / scaled.d;
  if (scaled.d === 1n) return `${fraction(below)} in exactly`;
  if (below === 0n) return 'less than 1/64 in';
  return `between ${fraction(below)} and ${fraction(below + 1n)} in`;
}

function fraction(sixtyFourths: bigint): string {
  let n = sixtyFourths;
  let d = 64n;
  while (d > 1n && n % 2n === 0n) {
    n /= 2n;
    d /= 2n;
  }
  const whole = n / d;
  const rest = n % d;
  if (rest === 0n) return `${whole}`;
  return whole === 0n ? `${rest}/${d}` : `${whole}-${rest}/${d}`;
}

/** The pair to be made, each with what its maker may take of the limits. */
function madeText({ go, noGo }: MadePair, facts: SizeFacts): string {
  const unit = facts.advice?.clearance.unit ?? 'in';
  const told = (mm: Rational, mode: 'up' | 'down') => {
    const number = inUnit(mm, 'length', unit);
    return formatDecimal(number, Math.min(exactPlaces(number) ?? 5, 5), mode);
  };
  const share = told(go.high.sub(go.low), 'down');
  return `go ${told(go.low, 'up')} +${share} ${unit}, no-go ${told(noGo.high, 'down')} -${share} ${unit}, by the 10 % rule`;
}

/** The gauges inside limits: all of a few, else the first and last with their number. */
function insideText(gauges: readonly Gauge[]): string | null {
  const labels = gauges.map((gauge) => gauge.label);
  if (labels.length <= 8) return labels.join('; ');
  return `${labels.length} gauges, from ${labels[0]} to ${labels.at(-1)}`;
}

/** A gauge with its size as its table states it, and how far off a size it is. */
function gaugeText(gauge: Gauge, from: Rational | null): string {
  const own = inUnit(gauge.mm, 'length', gauge.unit);
  const places = exactPlaces(own) ?? 4;
  const size = `${formatDecimal(own, Math.max(places, gauge.places ?? 0))} ${gauge.unit}`;
  const inches = inUnit(gauge.mm, 'length', 'in');
  const other = gauge.unit === 'mm' ? `, ${formatDecimal(inches, 4)} in` : '';
  const named = (gauge.name === size ? gauge.label : `${gauge.label}, ${size}`) + other;
  if (from === null) return named;
  const gap = inUnit(gauge.mm.sub(from), 'length', 'in');
  const text = formatDecimal(gap.abs(), 4);
  return `${named} (${text} in ${gap.s < 0n ? 'less' : 'more'})`;
}
