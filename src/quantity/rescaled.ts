import type { Amount, Limit, Rational, Statement } from './model.ts';

/** A statement with every figure multiplied, as one of the same size in another measure; its text stays. */
export function rescaled(statement: Statement, times: Rational): Statement {
  if (times.equals(1)) return statement;
  const amount = (one: Amount | null): Amount | null =>
    one && {
      ...one,
      base: one.base.mul(times),
      could: { low: one.could.low.mul(times), high: one.could.high.mul(times) },
    };
  const limit = (one: Limit | null): Limit | null =>
    one && { base: one.base.mul(times), amount: amount(one.amount) };
  const { nominal, low, high } = statement;
  return { ...statement, nominal: amount(nominal), low: limit(low), high: limit(high) };
}
