import { agree, agreeLimits } from '../quantity/index.ts';
import type { Citation, Dissent, PlacedSize, Setting, SourceStatement } from './model.ts';

/** What a sheet says of a setting before its statements are ruled. */
export type Unruled = Pick<
  Setting,
  'value' | 'also' | 'from' | 'but' | 'statements' | 'follows' | 'ruling'
>;

/**
 * Sorts the statements of a setting under its figure. The figure is the sheet's own `value`, else the
 * statement of the source that it follows, else the first. What agrees with the figure becomes one of
 * its other written forms and a source of it; what does not becomes a dissent. A reason that is
 * given for the whole setting rules every dissent that has none of its own.
 */
export function ruleStatements(setting: Unruled): Pick<Setting, 'value' | 'also' | 'from' | 'but'> {
  const { statements, ruling } = setting;
  const ruledBut = setting.but.map((dissent) => ({ ...dissent, ruling: dissent.ruling ?? ruling }));
  if (statements.length === 0) return { ...setting, but: ruledBut };
  const followed = setting.value === null ? followedStatement(statements, setting.follows) : null;
  const value = setting.value ?? followed?.value ?? null;
  const also: PlacedSize[] = [...setting.also];
  const from: Citation[] = [...setting.from];
  const but: Dissent[] = [...ruledBut];
  if (followed?.from) from.push(followed.from);
  for (const statement of statements) {
    if (statement === followed) continue;
    if (statement.value === null || !differs(value, statement.value)) {
      if (statement.from) from.push(statement.from);
      const size = statement.value;
      const written = [value, ...also];
      if (size !== null && written.every((other) => other?.text !== size.text)) also.push(size);
      continue;
    }
    const { span } = statement;
    but.push({
      value: statement.value,
      from: statement.from,
      ruling: statement.ruling ?? ruling,
      span,
    });
  }
  return { value, also, from, but };
}

/** Whether a statement is one that `follows:` names: by its source, and by its page where it says one. */
export function isFollowed({ from }: SourceStatement, follows: Citation): boolean {
  if (from?.id !== follows.id) return false;
  return follows.page === null || from.page === follows.page;
}

/**
 * Whether another size is not the figure itself, written some other way. What cannot be held against
 * it differs, for nobody can say that it is the same; what cannot be read does not.
 */
export function differs(figure: PlacedSize | null, other: PlacedSize): boolean {
  if (!figure?.reading.ok || !other.reading.ok) return false;
  const [one, two] = [figure.reading.statement, other.reading.statement];
  const { verdict } = agree(one, two, { gauges: null });
  if (verdict === 'disagrees' || verdict === 'within-tolerance' || verdict === 'incomparable') {
    return true;
  }
  return agreeLimits(one, two).verdict === 'apart';
}

function followedStatement(
  statements: readonly SourceStatement[],
  follows: Citation | null,
): SourceStatement | null {
  const named = follows && statements.find((statement) => isFollowed(statement, follows));
  return named ?? statements.find(({ value }) => value !== null) ?? null;
}
