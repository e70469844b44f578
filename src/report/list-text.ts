import {
  columnLetters,
  type ListedDifference,
  type MappingGuess,
  type Slip,
  targetText,
} from '../import/index.ts';
import { visible } from '../text/index.ts';
import type { Paint } from './paint.ts';
import { wrap } from './wrap.ts';

/** The cells that could not be taken, in the list's order, each with why and what it may have been. */
export function slipsText(
  slips: readonly Slip[],
  title: string,
  { color, width }: { readonly color: Paint; readonly width: number | null },
): string {
  const lines = ['', color.bold(visible(title))];
  for (const { at, shown, message, could, outcome } of slips) {
    const text = shown.length > 60 ? `${shown.slice(0, 57)}...` : shown;
    const head = `${color.bold(at)}  ${text === '' ? '' : `\`${visible(text)}\`: `}${visible(message)}`;
    const under = [
      could.length === 0 ? null : `could be: ${visible(could.join(', or '))}`,
      outcome,
    ].filter((part) => part !== null);
    lines.push(
      ...wrap(head, width && width - 2).map((line, i) => (i === 0 ? `  ${line}` : `      ${line}`)),
    );
    for (const each of under) {
      lines.push(...wrap(each, width && width - 6).map((line) => `      ${line}`));
    }
  }
  return `${lines.join('\n')}\n`;
}

/** What a list says of a unit otherwise than the sheet in `file`, a line each. */
export function differencesText(
  file: string,
  differences: readonly ListedDifference[],
): readonly string[] {
  return differences.map(({ setting, there, value, cell }) => {
    const says = there === null ? 'is not there' : `is \`${there}\` there`;
    return visible(`${file}: ${setting} ${says}; ${cell} says \`${value}\``);
  });
}

/** What was proposed for reading a list, a column a line, and what is still to be settled. */
export function guessText({ columns, mapping, open }: MappingGuess): readonly string[] {
  const lines = [`Heads in row ${mapping.heads}; units of the kind ${mapping.kind}.`];
  for (const { column, head, to, unit, confidence, because } of columns) {
    const word = confidence === 'none' ? 'not known' : confidence;
    const measure = unit === null ? '' : `, unit ${unit}`;
    const line = `  ${columnLetters(column)} ${head}: ${targetText(to)}${measure} (${word}: ${because})`;
    lines.push(visible(line.replace(/\s+/g, ' ').replace(/^ /, '  ')));
  }
  for (const point of open) lines.push(`To settle: ${point}`);
  return lines;
}

/** What became of a list, as one sentence: how many sheets were written and kept, and how many slips. */
export function listSummary(
  { written, kept, slips }: { written: number; kept: number; slips: number },
  dry: boolean,
): string {
  const sheets = (count: number) => `${count} ${count === 1 ? 'sheet' : 'sheets'}`;
  const parts = [dry ? `${sheets(written)} would be written` : `${sheets(written)} written`];
  if (kept > 0) parts.push(`${kept} there already and left alone`);
  parts.push(
    slips === 0
      ? 'every cell was read'
      : `${slips} ${slips === 1 ? 'place' : 'places'} of the list to look at`,
  );
  return `${parts.join('; ')}.`;
}
