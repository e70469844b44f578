import type { Rational } from '../quantity/model.ts';
import type { Assessed, AssessedSize } from './assess.ts';
import { figure, limitsText, uncertaintyFigure } from './figure.ts';
import { nearestLimit } from './judge.ts';
import type { AcceptanceRule, Verdict } from './model.ts';
import type { Trust } from './trust.ts';

/** What is said of a reading in a word or two. */
export type VerdictWord = Verdict | 'no limits';

/** The verdict on a reading; `no limits` where the sheet states none to hold it against. */
export function verdictWord(assessed: Assessed): VerdictWord {
  if (assessed.form === 'condition') return assessed.verdict;
  return assessed.judgment?.verdict ?? 'no limits';
}

/** A reading as the record has it; a dash where there is none. */
export function readingText(assessed: Assessed | null): string {
  if (assessed === null) return '—';
  return assessed.form === 'condition' ? assessed.text : assessed.reading.text;
}

/** By which rule the verdicts were reached, as it stands at the head of every output. */
export function ruleWords(rule: AcceptanceRule): string {
  return rule === 'simple'
    ? "Simple acceptance: the reading alone decides, the gauge's uncertainty left out of account"
    : "Guarded acceptance (JCGM 106:2012): limits drawn in by the gauge's uncertainty, w = U, k = 2";
}

/** Why a reading has its verdict: one sentence with both figures and how far they are apart. */
export function reasonFor(assessed: Assessed, wanted: string): string {
  if (assessed.form === 'condition') {
    if (assessed.verdict === 'no limits') return `the sheet says ${wanted}`;
    return assessed.verdict === 'unproven'
      ? `the sheet says ${wanted}; write just that, or not ${wanted}`
      : `the sheet says ${wanted}`;
  }
  const { judgment } = assessed;
  if (judgment === null) return withoutLimits(assessed);
  const stand = standing(assessed);
  const { value } = assessed.trust;
  if (judgment.verdict !== 'unproven') return stand;
  if (value === null) return `${stand}; ${unknownTrust(assessed.trust)}`;
  const uncertainty = uncertaintyFigure(value, assessed.unit);
  const last =
    assessed.trust.half.n === 0n
      ? `gauge's ${uncertainty}`
      : `${uncertainty} of gauge and last figure`;
  if (judgment.hopeless) {
    return `${stand}; nothing can be proven with the ${last} either side, which is more than half of ${limitsText(assessed.limits, assessed.unit)}`;
  }
  return assessed.reading.range.open
    ? `${stand}, ± ${uncertainty}`
    : `${stand}, within the ${last}`;
}

function withoutLimits({ fromNominal, unit }: AssessedSize): string {
  if (fromNominal === null) return 'no limits stated';
  if (fromNominal.n === 0n) return 'no limits stated; the figure itself';
  const word = fromNominal.s > 0n ? 'more' : 'less';
  return `no limits stated; ${figure(fromNominal.abs(), unit)} ${word} than the figure`;
}

/** Where the reading stands to the limit that matters, or between which sizes it lies. */
function standing({ reading, limits, unit }: AssessedSize): string {
  const { low, high, open } = reading.range;
  if (low === null || high === null || open || !low.equals(high)) {
    const least = low === null ? null : `above ${figure(low, unit)}`;
    const most = high === null ? null : `below ${figure(high, unit)}`;
    const between =
      !open && low !== null && high !== null
        ? `from ${figure(low, unit)} to ${figure(high, unit)}`
        : [least, most].filter((part) => part !== null).join(' and ');
    return `${between}, where ${limitsText(limits, unit)} is wanted`;
  }
  const nearest = nearestLimit(low, limits);
  if (nearest === null) return '';
  const { side, limit, beyond } = nearest;
  const name = `the ${side === 'low' ? 'lower' : 'upper'} limit ${limitFigure(limit, unit, side)}`;
  if (beyond.n === 0n) return `exactly at ${name}`;
  const gap = figure(beyond.abs(), unit);
  if (beyond.s < 0n) return `${gap} inside ${name}`;
  return `${gap} ${side === 'low' ? 'below' : 'above'} ${name}`;
}

function limitFigure(limit: Rational, unit: string, side: 'low' | 'high'): string {
  return figure(limit, unit, 0, side === 'low' ? 'up' : 'down');
}

function unknownTrust({ basis, gauge }: Trust): string {
  if (basis === 'not-said') return 'neither gauge nor uncertainty is said';
  if (basis === 'unfit') return `the uncertainty of ${gauge} is not known for such a reading`;
  if (basis === 'half-said') {
    return `a timed flow is as uncertain as stopwatch and measure together, and only ${gauge} is said`;
  }
  return `the uncertainty of ${gauge} is not known`;
}

/** `caliper, ± 0.002 in (common practice, no source), with its last figure ± 0.00208 in`; null where neither gauge nor figure is known. */
export function trustWords({ trust, unit }: AssessedSize): string | null {
  const { value, ofGauge, half, gauge, basis, source } = trust;
  if (value === null || ofGauge === null) {
    return gauge === null ? null : `${gauge}, uncertainty not known`;
  }
  const why = basis === 'table' ? ` (${source})` : '';
  const own = `± ${uncertaintyFigure(ofGauge, unit)}${why}`;
  const last = half.n === 0n ? null : `with its last figure ± ${uncertaintyFigure(value, unit)}`;
  return [gauge, own, last].filter((part) => part !== null).join(', ');
}

/** `84.1 %`; null where there is none, or it cannot be told apart from certainty either way. */
export function percentWords(probability: number | null): string | null {
  if (probability === null || probability > 0.9995 || probability < 0.0005) return null;
  return `${(probability * 100).toFixed(1)} %`;
}
