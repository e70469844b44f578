import { differenceText } from '../../quantity/index.ts';
import type { Amount, Rational, Statement } from '../../quantity/model.ts';
import type { SoughtSize } from './model.ts';

/**
 * How a statement meets what is looked for: `exact`, or how far it is off; null where it does not. By its
 * nominal, or by an end of its range; a decimal that is rounded also by what it may be a rounding of.
 */
export function meets(
  statement: Statement,
  sizes: readonly SoughtSize[],
): { readonly off: string | null } | null {
  let best: { readonly off: string | null } | null = null;
  for (const each of sizes) {
    if (each.statement.dimension !== statement.dimension) continue;
    for (const amount of amountsOf(statement)) {
      if (each.unit !== null && amount.unit !== each.unit) continue;
      if (!isWithin(amount, each)) continue;
      const wanted = each.statement.nominal;
      // A rounding of what is looked for is no other size, and neither is what that may be a rounding of.
      if (
        wanted === null ||
        isRange(each) ||
        holds(amount, wanted.base) ||
        holds(wanted, amount.base)
      )
        return { off: null };
      best ??= { off: differenceText(wanted, amount, statement) };
    }
  }
  return best;
}

/** Whether it is looked for between limits of its own, in which one size is as good as another. */
function isRange({ statement: { low, high } }: SoughtSize): boolean {
  return low !== null || high !== null;
}

function amountsOf({ nominal, low, high }: Statement): readonly Amount[] {
  if (nominal !== null) return [nominal];
  return [low?.amount, high?.amount].filter((amount) => amount != null);
}

function isWithin(amount: Amount, { low, high, statement, unit }: SoughtSize): boolean {
  const { base } = amount;
  if ((low === null || base.compare(low) >= 0) && (high === null || base.compare(high) <= 0))
    return true;
  const wanted = statement.nominal;
  // `.20 in` is 13/64 to two places; a whole `5 mm` is a rounding of nothing that anybody looks for.
  return (
    unit === null && wanted !== null && amount.style === 'decimal' && holds(amount, wanted.base)
  );
}

/** Whether an amount may be a rounding of a value. */
function holds({ could }: Amount, base: Rational): boolean {
  return could.low.compare(base) <= 0 && could.high.compare(base) >= 0;
}
