import {
  exactLength,
  type GaugeAdvice,
  type MadePair,
  namedLength,
  type SizeFacts,
} from '../gauges/index.ts';
import type { SizeProblem } from '../quantity/model.ts';
import { jsonText } from '../text/index.ts';

/** Why a text is no size, as one JSON object without a line feed. */
export function unreadSizeJson(
  input: string,
  problem: Pick<SizeProblem, 'message' | 'fix' | 'candidates'>,
): string {
  const { message, fix, candidates } = problem;
  return jsonText({
    input,
    error: message,
    fix: fix ?? undefined,
    candidates: candidates.length > 0 ? candidates : undefined,
  });
}

/** One size's facts as one JSON object without a line feed; lengths exact, in both units. */
export function sizeJson(input: string, facts: SizeFacts): string {
  const { statement, exact, low, high, neighbors, pair } = facts;
  return jsonText({
    input,
    inch: exact?.inch ?? null,
    mm: exact?.mm ?? null,
    names: facts.names.map((gauge) => gauge.label),
    neighbors: {
      below: neighbors?.below ? namedLength(neighbors.below) : null,
      above: neighbors?.above ? namedLength(neighbors.above) : null,
    },
    dimension: statement.dimension,
    form: statement.form,
    low: low ?? undefined,
    high: high ?? undefined,
    go: pair?.go ? namedLength(pair.go) : undefined,
    'no-go': pair?.noGo ? namedLength(pair.noGo) : undefined,
    made: facts.made === null ? undefined : madeJson(facts.made),
    kit: facts.advice === null ? undefined : kitJson(facts.advice),
    also: facts.others.length > 0 ? facts.others : undefined,
    ambiguous: statement.ambiguous.length > 0 ? statement.ambiguous.map(namedLength) : undefined,
  });
}

function madeJson({ go, noGo }: MadePair): object {
  const ends = ({ low, high }: MadePair['go']) => ({
    low: exactLength(low),
    high: exactLength(high),
  });
  return { go: ends(go), 'no-go': ends(noGo) };
}

/** What of an ordinary kit measures it, nearest first; where nothing does, a stack or the nearest. */
function kitJson({ fits, pair, stack, nearest, text }: GaugeAdvice): object {
  const none = fits.length === 0;
  const side = (each: GaugeAdvice['nearest']['below']) => each && namedLength(each.gauge);
  return {
    text,
    fits: fits.map(({ gauge }) => gauge.label),
    go: pair?.go.gauge.label,
    'no-go': pair?.noGo.gauge.label,
    stack: stack
      ? {
          leaves: stack.leaves.map(({ gauge }) => gauge.label),
          ...exactLength(stack.mm),
          fits: stack.fits,
        }
      : undefined,
    nearest: none ? { below: side(nearest.below), above: side(nearest.above) } : undefined,
  };
}
