import { fullText } from './amount-text.ts';
import { compareAmounts } from './compare.ts';
import { systemRecord } from './gauge-systems.ts';
import { partsAt } from './grammar.ts';
import type { Amount, GaugeBook, Misprint, Rational, Statement } from './model.ts';
import { normalize } from './normalize.ts';
import { type ReadOptions, readStatement } from './read.ts';
import { candidates, type Kind } from './slips.ts';
import { statementFrom } from './statement.ts';
import type { NotationContext } from './term.ts';
import { principal } from './write.ts';

/** The slips that a compositor or a typist makes, the likeliest first. */
const LIKELIHOOD: readonly Kind[] = [
  'swapped-digits',
  'slipped-point',
  'wrong-unit',
  'slipped-points',
  'exchanged-tolerance',
  'missing-whole',
  'reversed-fraction',
  'upside-down',
  'exchanged-digits',
  'neighboring-gauge',
  'wrong-digit',
  'wrong-numerator',
  'wrong-denominator',
  'missing-digit',
  'extra-digit',
  'wrong-system',
];

const BECAUSE: Readonly<Record<Kind, string>> = {
  'swapped-digits': 'two digits were swapped',
  'exchanged-digits': 'two digits changed places',
  'upside-down': 'it was read upside down',
  'slipped-point': 'the point slipped',
  'wrong-digit': 'one digit is wrong',
  'neighboring-gauge': 'the next number was taken',
  'reversed-fraction': 'the fraction was turned over',
  'wrong-numerator': 'the numerator is wrong',
  'wrong-denominator': 'the denominator is wrong',
  'wrong-unit': 'the unit was mistaken',
  'slipped-points': 'both points slipped',
  'missing-whole': 'the whole number was left out',
  'exchanged-tolerance': 'the figure and its tolerance changed places',
  'missing-digit': 'a digit was left out',
  'extra-digit': 'a digit is too many',
  'wrong-system': 'another gauge was meant',
};

/** A misprint with its place in the order of likelihood, 0 the likeliest. */
export interface RankedMisprint extends Misprint {
  readonly rank: number;
  /** Whether it agrees, and yet is nothing that a unit of the kind has. */
  readonly isUnlikely: boolean;
}

/**
 * The one edit of the wrong amount's figure that makes it agree with the right one: swapped digits,
 * slipped point, one wrong, missing or extra digit, neighboring gauge, another unit or gauge system.
 * Null where no single edit explains it. Among several the likeliest slip wins, and within a kind
 * the figure nearest to the right one. `statement` is the text that the wrong amount stands in: the
 * suggestion then has its unit as that spells it.
 */
export function findMisprint(
  right: Amount,
  wrong: Amount,
  gauges: GaugeBook,
  statement: string | null = null,
): Misprint | null {
  const written = fullText(wrong, statement);
  const meant = wrong.gauge && systemRecord(wrong.gauge.system).meantBy;
  const swg = meant ?? 'imperial';
  const context: NotationContext = { gauges, swg };
  const [found] = ranked(written, wrong, gauges, right, (text) => {
    const amount = readAmount(text, context);
    const verdict = amount ? compareAmounts(right, amount) : 'apart';
    return amount && (verdict === 'same' || verdict === 'agrees')
      ? { amount, unlikely: false, isLimited: false }
      : null;
  });
  if (!found) return null;
  const { kind, suggestion, because } = found;
  return { kind, suggestion, because };
}

/** What comes of an edit: the `right` size, one that agrees and that no unit has, or no cure. */
export type Judged = 'right' | 'unlikely' | 'wrong';

/**
 * The single edits of a whole size, as it was written, after which `judge` takes it: the likeliest
 * first, and of one kind the nearest to `near`. `text` need not be readable; `wrong` is what it was
 * read as where it is.
 */
export function likelySlips(
  text: string,
  wrong: Statement | null,
  near: Amount | null,
  options: ReadOptions,
  judge: (candidate: Statement) => Judged,
): readonly RankedMisprint[] {
  const amount = wrong && (principal(wrong) ?? wrong.low?.amount ?? wrong.high?.amount ?? null);
  return ranked(text, amount, options.gauges, near, (candidate) => {
    const reading = readStatement(candidate, options);
    if (!reading.ok) return null;
    const { statement } = reading;
    if (wrong && (statement.form !== wrong.form || statement.sense !== wrong.sense)) return null;
    const figure = principal(statement) ?? statement.low?.amount ?? statement.high?.amount ?? null;
    if (wrong && isSameSize(statement, wrong)) return null;
    const judged = figure ? judge(statement) : 'wrong';
    if (!figure || judged === 'wrong') return null;
    const isLimited = statement.low !== null && statement.high !== null;
    return { amount: figure, unlikely: judged === 'unlikely', isLimited };
  });
}

/** Whether two statements are one size, limits and all: an edit that changes nothing mends nothing. */
function isSameSize(one: Statement, other: Statement): boolean {
  const ends = ({ nominal, low, high }: Statement) => [nominal?.base, low?.base, high?.base];
  const others = ends(other);
  return ends(one).every((base, i) => (base ? !!others[i]?.equals(base) : !others[i]));
}

/** A text that agrees. */
interface Found {
  readonly amount: Amount;
  readonly unlikely: boolean;
  /** Whether limits stand beside it, which have to agree as well. */
  readonly isLimited: boolean;
}

/** Slips after which a text is right, in their order; `read` gives the amount of one that is. */
function ranked(
  text: string,
  wrong: Amount | null,
  gauges: GaugeBook,
  near: Amount | null,
  read: (text: string) => Found | null,
): readonly RankedMisprint[] {
  const found = new Map<string, Found & { readonly misprint: RankedMisprint }>();
  const tried = new Set<string>();
  for (const candidate of candidates(text, wrong, gauges)) {
    const known = found.get(candidate.text);
    const likely = LIKELIHOOD.indexOf(candidate.kind);
    if (known ? known.misprint.rank <= likely : tried.has(candidate.text)) continue;
    tried.add(candidate.text);
    const fits = known ?? read(candidate.text);
    if (!fits) continue;
    const { amount, unlikely, isLimited } = fits;
    const vague =
      !isLimited &&
      isVague(amount) &&
      !near?.base.equals(amount.base) &&
      (figures(candidate.text) < figures(text) || isFiner(near, amount));
    if (candidate.kind === 'extra-digit' && vague) continue;
    const misprint = {
      kind: candidate.kind,
      suggestion: candidate.text,
      because: BECAUSE[candidate.kind],
      isUnlikely: unlikely,
      // What fits only for want of figures, or what no unit has, comes after all that fit better.
      rank: likely + (vague ? LIKELIHOOD.length : 0) + (unlikely ? 2 * LIKELIHOOD.length : 0),
    };
    if (!known || misprint.rank < known.misprint.rank) {
      found.set(candidate.text, { ...fits, misprint });
    }
  }
  const distance = ({ base }: Amount) => (near ? base.sub(near.base).abs().valueOf() : 0);
  return [...found.values()]
    .sort(
      (one, two) =>
        one.misprint.rank - two.misprint.rank || distance(one.amount) - distance(two.amount),
    )
    .map(({ misprint }) => misprint);
}

/** A figure so short that it agrees with anything near: `0.20` is no likely source of `0.210`. */
function isVague(amount: Amount): boolean {
  return widthOf(amount).compare(amount.base.abs().div(100)) > 0;
}

function widthOf({ could }: Amount): Rational {
  return could.high.sub(could.low);
}

/** Whether a rounded figure is told to more places than another by far. */
function isFiner(near: Amount | null, amount: Amount): boolean {
  if (!near || near.places === null) return false;
  return widthOf(near).mul(10).compare(widthOf(amount)) < 0;
}

/** How many digits a text has after leading zeros. */
function figures(text: string): number {
  return text.replace(/\D/g, '').replace(/^0+/, '').length;
}

function readAmount(text: string, context: NotationContext): Amount | null {
  const lower = normalize(text);
  const parts = partsAt(lower, 0, context);
  if (!parts || 'problem' in parts || parts.end !== lower.length) return null;
  const built = statementFrom(text, parts, context, null);
  return 'problem' in built ? null : principal(built);
}
