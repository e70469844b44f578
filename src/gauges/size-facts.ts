import {
  equivalents,
  exactText,
  inUnit,
  principal,
  readStatement,
  type WireGauge,
  writeCount,
  writeIn,
} from '../quantity/index.ts';
import type { Dimension, Gauge, Rational, SizeProblem, Statement } from '../quantity/model.ts';
import { type GaugeAdvice, gaugeAdvice } from './advice.ts';
import { gaugeBook } from './book.ts';
import { confusable } from './confusable.ts';
import { gaugeMakersPair, type MadePair } from './gauge-makers-pair.ts';
import { goNoGo } from './go-no-go.ts';
import { type Kit, ordinaryKit } from './kit.ts';
import { inside, namesOf, nearest } from './search.ts';

/** An exact length in both units, as decimals where they end, else as `n/d`. */
export interface ExactLength {
  readonly inch: string;
  readonly mm: string;
}

export type NamedLength = ExactLength & { readonly name: string };

/** Everything there is to say of one size. */
export interface SizeFacts {
  readonly statement: Statement;
  /** The nominal, or the one limit that is stated; null for a range and for what is no length. */
  readonly exact: ExactLength | null;
  readonly low: ExactLength | null;
  readonly high: ExactLength | null;
  /** The limits in the other paper's units, rounded inward, as they would print. */
  readonly printed: { readonly inch: string | null; readonly mm: string | null };
  /** Every gauge of exactly the size. */
  readonly names: readonly Gauge[];
  readonly neighbors: { readonly below: Gauge | null; readonly above: Gauge | null } | null;
  /** The pair that proves the limits, or why there is none; null without two limits. */
  readonly pair: ReturnType<typeof goNoGo> | null;
  /** What of an ordinary kit measures a gap of the size between two faces; null for what is no gap. */
  readonly advice: GaugeAdvice | null;
  /** The pair that a gauge maker makes for the limits; null without two limits. */
  readonly made: MadePair | null;
  /** Gauges of an ordinary set that lie inside the two limits. */
  readonly inside: readonly Gauge[];
  /** Gauges that are hard to tell from the one that is named. */
  readonly twins: readonly Gauge[];
  /** Other gauges that bear the number of the one that is named. */
  readonly namesakes: readonly Gauge[];
  /** For what is no length: the same in the other units of its family. */
  readonly others: readonly string[];
}

export type SizeAnswer =
  | { readonly ok: true; readonly facts: SizeFacts }
  | { readonly ok: false; readonly problem: SizeProblem };

/** An exact length in both units. */
export function exactLength(mm: Rational): ExactLength {
  return { inch: exactText(inUnit(mm, 'length', 'in')), mm: exactText(mm) };
}

/** A gauge's size in both units, with its name. */
export function namedLength(gauge: Gauge): NamedLength {
  return { name: gauge.label, ...exactLength(gauge.mm) };
}

/** Reads a size and gathers what there is to say of it; `swg` settles what a bare `SWG` means, and `kit` is what is measured with. */
export function sizeFacts(
  text: string,
  swg: WireGauge | null,
  kit: Kit = ordinaryKit(),
): SizeAnswer {
  const reading = readStatement(text, { gauges: gaugeBook(), swg });
  if (!reading.ok) return { ok: false, problem: reading.problem };
  const { statement } = reading;
  const facts =
    statement.dimension === 'length' ? lengthFacts(statement, kit) : otherFacts(statement);
  return { ok: true, facts };
}

function lengthFacts(statement: Statement, kit: Kit): SizeFacts {
  const amount = principal(statement);
  const { low, high } = statement;
  // For a range, the gauges around its limits: those inside it are what the pair tells of.
  const below = (amount?.base ?? low?.base) || null;
  const above = (amount?.base ?? high?.base) || null;
  const { inch, mm } = equivalents(statement);
  const others = amount?.gauge ? confusable(amount.gauge) : [];
  // One that the statement itself may mean is told of as such, not as a namesake.
  const said = new Set(statement.ambiguous.map((gauge) => gauge.label));
  const like = (kind: (typeof others)[number]['kind']) =>
    others
      .filter((other) => other.kind === kind && !said.has(other.gauge.label))
      .map((other) => other.gauge);
  const twoLimits = low !== null && high !== null && low.base.compare(high.base) < 0;
  return {
    statement,
    exact: amount === null ? null : exactLength(amount.base),
    low: low === null ? null : exactLength(low.base),
    high: high === null ? null : exactLength(high.base),
    printed: { inch, mm },
    names: amount === null ? [] : namesOf(amount.base),
    neighbors:
      below === null || above === null
        ? null
        : { below: nearest(below).below, above: nearest(above).above },
    pair: twoLimits ? goNoGo(low.base, high.base) : null,
    advice: gaugeAdvice(statement, kit),
    made: twoLimits ? gaugeMakersPair(low.base, high.base) : null,
    inside: twoLimits ? inside(low.base, high.base) : [],
    twins: like('near-twin'),
    namesakes: like('same-name'),
    others: [],
  };
}

function otherFacts(statement: Statement): SizeFacts {
  const amount = principal(statement);
  const { dimension } = statement;
  const others: string[] = [];
  for (const unit of amount === null ? [] : (usefulUnits[dimension] ?? [])) {
    if (amount === null || unit === amount.unit) continue;
    others.push(inOther(amount.base, dimension, unit));
  }
  if (amount !== null && dimension === 'turns') {
    const degrees = amount.base.mul(360);
    others.push(`${exactText(degrees)}° of turning`);
  }
  return {
    statement,
    exact: null,
    low: null,
    high: null,
    printed: { inch: null, mm: null },
    names: [],
    neighbors: null,
    pair: null,
    advice: null,
    made: null,
    inside: [],
    twins: [],
    namesakes: [],
    others,
  };
}

/** Units that workshop papers tell a thing in, most usual first. */
const usefulUnits: Partial<Record<Dimension, readonly string[]>> = {
  vacuum: ['inHg', 'mmHg', 'kPa', 'mbar'],
  pressure: ['psi', 'bar', 'kPa', 'kgf/cm2'],
  torque: ['ft-lb', 'in-lb', 'N·m', 'kgf·m'],
  volume: ['cm3', 'in3', 'US fl oz', 'imp fl oz'],
  turns: ['turn', 'flat'],
  temperature: ['degC', 'degF'],
};

function inOther(base: Rational, dimension: Dimension, unit: string): string {
  if (unit === 'turn' || unit === 'flat') return writeCount(base, unit);
  return writeIn(base, dimension, unit, shownPlaces(inUnit(base, dimension, unit)));
}

/** Four figures that count, and never more than six places. */
function shownPlaces(number: Rational): number {
  let places = 3;
  let size = number.abs();
  for (; places > 0 && size.compare(10) >= 0; places -= 1) size = size.div(10);
  for (; places < 6 && size.n !== 0n && size.compare(1) < 0; places += 1) size = size.mul(10);
  return places;
}
