import { fullText } from './amount-text.ts';
import { compareAmounts } from './compare.ts';
import { partsAt } from './grammar.ts';
import type { Amount, GaugeBook, Misprint } from './model.ts';
import { normalize } from './normalize.ts';
import { type Candidate, candidates, type Kind } from './slips.ts';
import { statementFrom } from './statement.ts';
import type { NotationContext } from './term.ts';
import { principal } from './write.ts';

/** The slips that a compositor or a typist makes, the likeliest first. */
const LIKELIHOOD: readonly Kind[] = [
  'swapped-digits',
  'slipped-point',
  'wrong-unit',
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
  'slipped-point': 'the point slipped',
  'wrong-digit': 'one digit is wrong',
  'neighboring-gauge': 'the next number was taken',
  'wrong-numerator': 'the numerator is wrong',
  'wrong-denominator': 'the denominator is wrong',
  'wrong-unit': 'the unit was mistaken',
  'missing-digit': 'a digit was left out',
  'extra-digit': 'a digit is too many',
  'wrong-system': 'another gauge was meant',
};

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
  const swg = wrong.gauge?.system === 'us-steel-wire' ? 'us-steel' : 'imperial';
  let best: { candidate: Candidate; rank: number; distance: Amount } | null = null;
  for (const candidate of candidates(written, wrong, gauges)) {
    const likely = LIKELIHOOD.indexOf(candidate.kind);
    if (best && likely > best.rank) continue;
    const amount = readAmount(candidate.text, { gauges, swg });
    const verdict = amount ? compareAmounts(right, amount) : 'apart';
    if (!amount || (verdict !== 'same' && verdict !== 'agrees')) continue;
    const vague = verdict === 'agrees' && isVague(amount);
    if (candidate.kind === 'extra-digit' && vague) continue;
    // What fits only for want of figures comes after all that fit better.
    const rank = likely + (vague ? LIKELIHOOD.length : 0);
    if (best && rank > best.rank) continue;
    if (best && rank === best.rank && !isNearer(right, amount, best.distance)) continue;
    best = { candidate, rank, distance: amount };
  }
  if (!best) return null;
  return {
    kind: best.candidate.kind,
    suggestion: best.candidate.text,
    because: BECAUSE[best.candidate.kind],
  };
}

/** A figure so short that it agrees with anything near: `0.20` is no likely source of `0.210`. */
function isVague(amount: Amount): boolean {
  const width = amount.could.high.sub(amount.could.low);
  return width.compare(amount.base.abs().div(100)) > 0;
}

function isNearer(right: Amount, one: Amount, other: Amount): boolean {
  return one.base.sub(right.base).abs().compare(other.base.sub(right.base).abs()) < 0;
}

function readAmount(text: string, context: NotationContext): Amount | null {
  const lower = normalize(text);
  const parts = partsAt(lower, 0, context);
  if (!parts || 'problem' in parts || parts.end !== lower.length) return null;
  const built = statementFrom(text, parts, context, null);
  return 'problem' in built ? null : principal(built);
}
