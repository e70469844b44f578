import { allUnits, rational, readStatement } from '../../quantity/index.ts';
import type { Dimension, GaugeBook, Rational, Statement } from '../../quantity/model.ts';
import type { Query, SoughtSize } from './model.ts';

/** The most that a length may be off where nothing is said: what an ordinary drill or wire is trusted to. */
const MOST_LENGTH_MM = rational('0.0254');

/** What a figure may be off where nothing is said. */
const USUAL_PART = rational('0.01');

/** How far off a figure may be: an amount of one dimension, or a part of what is looked for. */
export type Within =
  | { readonly dimension: Dimension; readonly base: Rational }
  | { readonly part: Rational };

/** How far a text says that a figure may be off: `0.002 in`, `2 %`; null where it says no such thing. */
export function withinFrom(text: string, gauges: GaugeBook): Within | null {
  const reading = readStatement(text, { gauges });
  if (!reading.ok) return null;
  const { dimension, nominal } = reading.statement;
  if (nominal === null || nominal.base.s < 0n) return null;
  if (dimension === 'percent') return { part: nominal.base.div(100) };
  return { dimension, base: nominal.base };
}

/**
 * What a text looks for. A size in any notation is one, and no words; a number without a unit is all that
 * it may mean, and words too; anything else is words, of which a find holds every one.
 */
export function queryOf(text: string, gauges: GaugeBook, within: Within | null = null): Query {
  const trimmed = text.trim().slice(0, LONGEST);
  const read = (written: string) => {
    const reading = readStatement(written, { gauges });
    return reading.ok && numbered(reading.statement) ? reading.statement : null;
  };
  const whole = read(trimmed);
  const words = trimmed.toLowerCase().split(/\s+/).filter(Boolean);
  if (whole !== null) return { text: trimmed, sizes: [sought(whole, within, null)], words: [] };
  const reading = readStatement(trimmed, { gauges });
  const bare = /^[+-]?[\d.,/\s-]*\d$/.test(trimmed);
  const meanings = bare
    ? [`${trimmed} in`, `${trimmed} mm`]
    : reading.ok
      ? []
      : reading.problem.candidates;
  const lengths = meanings.map(read).filter((statement) => statement !== null);
  const others = !bare
    ? []
    : allUnits().flatMap(({ id, dimension, spellings }) => {
        const statement = dimension === 'length' ? null : read(`${trimmed} ${spellings[0] ?? id}`);
        return statement?.nominal?.unit === id ? [sought(statement, within, id)] : [];
      });
  return {
    text: trimmed,
    sizes: [...lengths.map((statement) => sought(statement, within, null)), ...others],
    words,
  };
}

/** Longer texts look for nothing; it also bounds the work. */
const LONGEST = 200;

function numbered({ form, nominal, low, high }: Statement): boolean {
  return form !== 'condition' && (nominal ?? low ?? high) !== null;
}

function sought(statement: Statement, within: Within | null, unit: string | null): SoughtSize {
  const { nominal, low, high } = statement;
  if (low !== null || high !== null)
    return { statement, low: low?.base ?? null, high: high?.base ?? null, unit };
  if (nominal === null) return { statement, low: null, high: null, unit };
  const { could, base } = nominal;
  const off = offFor(statement, base, within);
  return { statement, low: could.low.sub(off), high: could.high.add(off), unit };
}

function offFor({ dimension }: Statement, base: Rational, within: Within | null): Rational {
  if (within !== null && 'part' in within) return base.abs().mul(within.part);
  if (within !== null && within.dimension === dimension) return within.base;
  const usual = base.abs().mul(USUAL_PART);
  return dimension === 'length' && usual.compare(MOST_LENGTH_MM) > 0 ? MOST_LENGTH_MM : usual;
}
