import { gaugeBook } from '../../src/gauges/index.ts';
import { exactText, type ReadOptions, readStatement } from '../../src/quantity/index.ts';
import type { Limit, SizeProblem, Statement } from '../../src/quantity/model.ts';

export const gauges = gaugeBook();

type Options = Omit<ReadOptions, 'gauges'>;

/** The statement that a text reads as; fails with the problem's words where it does not read. */
export function size(text: string, options: Options = {}): Statement {
  const reading = readStatement(text, { gauges, ...options });
  if (!reading.ok) throw new Error(`${text}: ${reading.problem.message}`);
  return reading.statement;
}

/** The problem that a text reads as; fails where it reads as a size. */
export function problemOf(text: string, options: Options = {}): SizeProblem {
  const reading = readStatement(text, { gauges, ...options });
  if (reading.ok) throw new Error(`${text} reads as ${reading.statement.dimension}`);
  return reading.problem;
}

/** The facts of a statement in one line of text each, leaving out what is not there. */
export function facts(statement: Statement): Record<string, unknown> {
  const { nominal, low, high } = statement;
  const all: Record<string, unknown> = {
    dimension: statement.dimension,
    form: statement.form,
    is: nominal ? exactText(nominal.base) : null,
    places: nominal?.places ?? null,
    low: limitText(low),
    high: limitText(high),
    about: statement.about || null,
    sense: statement.sense,
    datum: statement.datum,
    gauge: nominal?.gauge?.label ?? null,
    reference: statement.reference,
    condition: statement.condition,
    qualifier: statement.qualifier,
  };
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== null));
}

function limitText(limit: Limit | null): string | null {
  return limit ? exactText(limit.base) : null;
}
