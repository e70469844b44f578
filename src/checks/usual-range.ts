import type { UsualRange } from '../kinds/model.ts';
import { principal } from '../quantity/index.ts';
import type { Statement } from '../quantity/model.ts';

/** On which side of a range a statement's figure, or its limits, lie outside; ends count as inside. */
export function sideOutside(statement: Statement, range: UsualRange): 'low' | 'high' | null {
  const floor = principal(range.low)?.base;
  const ceiling = principal(range.high)?.base;
  const figure = principal(statement)?.base;
  const least = figure ?? statement.low?.base;
  const most = figure ?? statement.high?.base;
  if (floor && least && least.compare(floor) < 0) return 'low';
  return ceiling && most && most.compare(ceiling) > 0 ? 'high' : null;
}
