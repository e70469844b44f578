import { isOrdinary } from '../gauges/index.ts';
import {
  agree,
  agreeLimits,
  asFraction,
  compareAmounts,
  likelySlips,
  principal,
  type RankedMisprint,
  readStatement,
  rewritten,
  sameFamily,
  wireGaugeNamed,
} from '../quantity/index.ts';
import type { Amount, GaugeBook, Rational, SizeProblem, Statement } from '../quantity/model.ts';
import { inMeasureOf, inOwnMeasure } from '../sheet/index.ts';
import type { PlacedSize, Setting, Sheet } from '../sheet/model.ts';
import type { CheckContext, Cure } from './define.ts';
import { readOf, sizesOfSetting } from './stated-sizes.ts';
import { sideOutside } from './usual-range.ts';

const AGREED: ReadonlySet<string> = new Set(['same', 'agrees']);

/**
 * Whether a size goes with another as two statements of one setting have to, limits and all: which of
 * the two was converted from the other makes no difference.
 */
export function goesWith(one: Statement, other: Statement): boolean {
  if (isFarApart(one, other)) return false;
  return holds(one, other) || holds(other, one);
}

/** Nearly every slip is far off, which a look at the figures settles a hundred times sooner. */
function isFarApart(one: Statement, other: Statement): boolean {
  // A lone limit may be rounded inward, which is no rounding to the nearest.
  const [a, b] = [one.nominal, other.nominal];
  if (a && b) return !a.base.equals(b.base) && compareAmounts(a, b) === 'apart';
  const [low, otherLow] = [one.low?.base, other.low?.base];
  const [high, otherHigh] = [one.high?.base, other.high?.base];
  return isFar(low, otherLow) || isFar(high, otherHigh);
}

/** Whether two limits differ by more than a tenth, which no rounding does. */
function isFar(one: Rational | undefined, other: Rational | undefined): boolean {
  if (!one || !other) return false;
  return one.sub(other).abs().mul(10).compare(one.abs()) > 0;
}

function holds(first: Statement, second: Statement): boolean {
  const { verdict } = agree(first, second, { gauges: null });
  // Limits that were rounded inward are off their middle a little.
  const isMiddle =
    verdict === 'within-tolerance' &&
    first.form !== second.form &&
    FORMS.has(first.form + second.form);
  return (AGREED.has(verdict) || isMiddle) && agreeLimits(first, second).verdict !== 'apart';
}

const FORMS: ReadonlySet<string> = new Set(['rangeexact', 'exactrange']);

/** Whether one of two sizes is the other with digits dropped, or both are roundings of one. */
function isShortened(one: Statement, other: Statement): boolean {
  const { verdict } = agree(one, other, { gauges: null });
  return verdict === 'chopped' || verdict === 'loose';
}

/** Whether a leaf or wire is in the ordinary sets; true of every size that is none. */
function isSold(candidate: Statement): boolean {
  const gauge = principal(candidate)?.gauge;
  return !gauge || isOrdinary(gauge);
}

/** Whether a size's limits let through what another's refuse, in whichever order they were converted. */
function isWider(one: Statement, other: Statement): boolean {
  const isInside = (first: Statement, second: Statement): boolean =>
    !['apart', 'widened'].includes(agreeLimits(first, second).verdict);
  return !isInside(one, other) && !isInside(other, one);
}

/**
 * The single slips that make a size what all the others say, the likeliest first; none where no one
 * slip does. The size need not be readable.
 */
export function slipsOf(
  size: PlacedSize,
  setting: Setting,
  others: readonly Statement[],
  sheet: Sheet,
  context: CheckContext,
): readonly RankedMisprint[] {
  const [first] = others;
  if (!first) return [];
  const usual = setting.known?.usual ?? [];
  const wrong = readOf(size);
  const swg = sheet.wireGauge?.value ?? context.wireGauge;
  const options = {
    gauges: context.gauges,
    expect: [first.dimension],
    swg: wireGaugeNamed(swg),
    jets: setting.jets,
  } as const;
  const stated = others.map((other) => inOwnMeasure(other, setting));
  // What the others say, in the measure that this one is told in.
  const told = inMeasureOf(first, size.text, setting);
  return likelySlips(size.text, wrong, amountIn(told), options, (slip) => {
    const candidate = inOwnMeasure(slip, setting);
    const chopped = stated.filter((other) => !goesWith(other, candidate));
    if (!chopped.every((other) => isShortened(other, candidate))) return 'wrong';
    if (chopped.length > 0 || stated.some((other) => isWider(other, candidate))) return 'unlikely';
    if (!isSold(slip)) return 'unlikely';
    const range = usual.find(({ dimension }) => dimension === candidate.dimension);
    return range && sideOutside(candidate, range) ? 'unlikely' : 'right';
  });
}

/** Whether a size is in its wrong one's unit, or in one that the sheet writes elsewhere: others are seldom mistaken for it. */
export function isUnitOfSheet(candidate: Statement, wrong: Statement, sheet: Sheet): boolean {
  const unit = amountIn(candidate)?.unit;
  if (unit === amountIn(wrong)?.unit) return true;
  return [...sheet.settings.values()].some((setting) =>
    [...sizesOfSetting(setting)].some(({ size }) => {
      const read = readOf(size);
      return read !== null && amountIn(read)?.unit === unit;
    }),
  );
}

/**
 * What an unreadable size of a setting probably was, by the setting's other statements:
 * `13/64 drill, if the denominator is wrong; `; empty where nothing tells.
 */
export function probably(
  size: PlacedSize,
  setting: Setting | null,
  sheet: Sheet,
  context: CheckContext,
): string {
  const likely = likelyMeant(size, setting, sheet, context);
  return likely ? `${likely.suggestion}, if ${likely.because}; otherwise ` : '';
}

/** What may be meant by a size that cannot be read: by the other statements, and by what its problem offers. */
export function meant(
  size: PlacedSize,
  setting: Setting | null,
  sheet: Sheet,
  context: CheckContext,
  { candidates }: SizeProblem,
): readonly Cure[] {
  const likely = likelyMeant(size, setting, sheet, context);
  const { gauges } = context;
  // A candidate may come with its figure behind it, for people: only what reads as a size is one.
  const offered = candidates
    .flatMap((each) => [each, each.replace(/, .*$/, '')])
    .filter((each) => readStatement(each, { gauges }).ok);
  const all = [...(likely ? [likely.suggestion] : []), ...offered];
  return [...new Set(all)].slice(0, 4).map((write) => ({ write }));
}

function likelyMeant(
  size: PlacedSize,
  setting: Setting | null,
  sheet: Sheet,
  context: CheckContext,
): RankedMisprint | undefined {
  if (!setting) return undefined;
  const others = [...sizesOfSetting(setting)].flatMap(({ size: other, role }) => {
    const read = other !== size && RESTATES.has(role) ? readOf(other) : null;
    return read && read.condition === null ? [read] : [];
  });
  const [likely] =
    others.length > 0
      ? slipsOf(size, setting, others, sheet, context)
      : fractionSlips(size, setting, context);
  return likely;
}

/**
 * What a fraction that no paper tells was, where nothing restates it: turned over, or with two digits
 * swapped. What is out of the usual for the setting is none.
 */
function fractionSlips(
  { text }: PlacedSize,
  { known, jets }: Setting,
  { gauges }: CheckContext,
): readonly RankedMisprint[] {
  if (!/\d[/⁄]\d/.test(text)) return [];
  const options = { gauges, expect: known?.dimensions, jets } as const;
  return likelySlips(text, null, null, options, (candidate) => {
    const range = known?.usual.find(({ dimension }) => dimension === candidate.dimension);
    return range && !sideOutside(candidate, range) ? 'right' : 'wrong';
  }).filter(({ kind }) => kind === 'swapped-digits' || kind === 'reversed-fraction');
}

const RESTATES: ReadonlySet<string> = new Set(['value', 'also', 'gauge']);

/** One size told as another is written: in its unit and places, as a fraction, as a gauge; null where it cannot be. */
export function toldAs(from: Statement, as: Statement, gauges: GaugeBook): string | null {
  const [one, two] = [principal(from), principal(as)];
  if (as.dimension === 'turns' || as.dimension === 'notches') return null;
  if (!one || !two || as.form !== 'exact' || !sameFamily(from.dimension, as.dimension)) return null;
  if (two.gauge) {
    const fits = gauges.all(two.gauge.system).find(({ mm }) => covers(one, mm));
    return fits?.label ?? null;
  }
  if (two.style === 'fraction' || two.style === 'mixed') return asFraction(one, two, as);
  return two.places === null ? null : rewritten(one, two, as);
}

function covers({ could }: Amount, mm: Amount['base']): boolean {
  return mm.compare(could.low) >= 0 && mm.compare(could.high) <= 0;
}

function amountIn(statement: Statement): Amount | null {
  return principal(statement) ?? statement.low?.amount ?? statement.high?.amount ?? null;
}
