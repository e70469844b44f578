import { agree, agreeLimits, readStatement, wireGaugeNamed } from '../../quantity/index.ts';
import type { Statement } from '../../quantity/model.ts';
import { plainName } from '../vocabulary.ts';
import type { AcrossContext } from './define.ts';
import type { FigureFact, SheetFacts } from './facts.ts';

/** A figure with the sheet that it stands on. */
export interface SheetFigure {
  readonly sheet: SheetFacts;
  readonly figure: FigureFact;
}

/** How a second sheet's figure differs from the first's, for brackets: ` (0.016 in more there)`. */
export type FiguresDiffer = (first: SheetFigure, second: SheetFigure) => string | null;

/**
 * Compares figures of two sheets, which facts keep as written: each text is read once. Null where they
 * agree as written and rounded, where one says less than the other, and where they cannot be held
 * against one another, as figures cannot that are measured in different ways.
 */
export function figuresDiffer(context: AcrossContext): FiguresDiffer {
  const read = new Map<string, Statement | null>();
  const statementOf = ({ sheet, figure }: SheetFigure): Statement | null => {
    const kind = context.kinds.get(sheet.kind ?? '') ?? null;
    const word = sheet.wireGauge ?? context.wireGauge;
    const swg = wireGaugeNamed(word);
    const key = `${kind?.name} ${figure.name} ${swg} ${figure.jets} ${figure.text}`;
    const known = read.get(key);
    if (known !== undefined) return known;
    const { name, text } = figure;
    const expect = kind?.settings.get(name)?.dimensions ?? kind?.dimensionsOfUnit.get(name);
    const jets = kind?.settings.get(name)?.jet === true ? figure.jets : undefined;
    const reading = readStatement(text, { gauges: context.gauges, expect, swg, jets });
    const statement = reading.ok ? reading.statement : null;
    read.set(key, statement);
    return statement;
  };
  return (first, second) => {
    const isWritten = first.figure.text === second.figure.text;
    if (isWritten && first.figure.jets === second.figure.jets) return null;
    if (!measuredAlike(first.figure, second.figure)) return null;
    const [one, two] = [statementOf(first), statementOf(second)];
    if (one === null || two === null) return null;
    const found = agree(one, two, { gauges: null });
    if (found.verdict === 'incomparable') return null;
    if (found.verdict === 'disagrees' || found.verdict === 'within-tolerance') {
      return found.difference === null ? '' : ` (${found.difference} there)`;
    }
    const limited = (statement: Statement) => statement.low !== null || statement.high !== null;
    if (!limited(one) || !limited(two)) return null;
    const limits = agreeLimits(one, two);
    return limits.verdict === 'apart' ? ' (with other limits there)' : null;
  };
}

/** Whether no word of how they are measured is another on the two sheets. */
function measuredAlike(first: FigureFact, second: FigureFact): boolean {
  return Object.entries(first.measured).every(([key, words]) => {
    const other = second.measured[key];
    return other === undefined || plainName(other) === plainName(words);
  });
}
