import type { MeasuredSummary } from '../measured/index.ts';
import { visible } from '../text/index.ts';
import { wrap } from './wrap.ts';

/** Columns that the names of the lines take. */
const LEAD = 16;

/** What was measured for a sheet: one block for each setting of each source. Empty where nothing was. */
export function measuredText(summaries: readonly MeasuredSummary[], width: number): string {
  return summaries.map((each) => block(each, width)).join('\n');
}

function block(summary: MeasuredSummary, width: number): string {
  const { setting, source, n, least, most } = summary;
  const many = n === 1 ? '1 reading' : `${n} readings`;
  const between = n === 1 ? least : `${least} to ${most}`;
  const lines = [visible(`${setting}, ${source}: ${many}, ${between}`)];
  for (const [name, words] of rowsOf(summary)) {
    const rest = Math.max(24, width - LEAD);
    wrap(visible(words), rest).forEach((line, index) => {
      lines.push(`${index === 0 ? `  ${name}`.padEnd(LEAD) : ' '.repeat(LEAD)}${line}`);
    });
  }
  return `${lines.join('\n')}\n`;
}

function rowsOf(summary: MeasuredSummary): readonly (readonly [string, string])[] {
  const { n, mean, meanExact, unit, readings, printed } = summary;
  const rows: (readonly [string, string])[] = [];
  rows.push(['readings', readings.map(({ text, record }) => told(text, record)).join(', ')]);
  if (n > 1) rows.push(['mean', `${mean}, exactly ${meanExact} of ${unit}`]);
  const { deviationText, uncertaintyText, mean95, tolerance } = summary;
  if (deviationText === null || mean95 === null || tolerance === null) {
    rows.push(['proves', 'little: of fewer than three units only the range can be told']);
  } else {
    rows.push(['deviation', `${deviationText}, of the mean ${uncertaintyText}`]);
    rows.push(['mean of all', `${mean95.text}, at 95 % (JCGM 100, G.3.2)`]);
    rows.push([
      'good units',
      `${tolerance.text} holds 90 % of them, at 95 % (ISO 16269-6)${heldWords(tolerance.held)}`,
    ]);
    rows.push(['outlier', outlierWords(summary)]);
    if (n < 5) rows.push(['proves', `little: ${n} units leave wide room for chance`]);
  }
  if (printed !== null) rows.push(['printed', `${printed.text}${withinWords(printed.within)}`]);
  return rows;
}

function told(text: string, record: string | null): string {
  return record === null ? text : `${text} (record ${record})`;
}

function heldWords(held: boolean | null): string {
  if (held === null) return '';
  return held
    ? '; the printed limits let them through'
    : '; the printed limits refuse some of them';
}

function outlierWords({ grubbs }: MeasuredSummary): string {
  if (grubbs === null)
    return "not looked for: of three readings Grubbs' test sees one only where the other two are nearly the same";
  const { g, critical, outlier } = grubbs;
  const figures = `G = ${g.toFixed(3)}, and more than ${critical.toFixed(3)} would be one (Grubbs, ASTM E178)`;
  return outlier === null
    ? `none: ${figures}`
    : `${outlier}: G = ${g.toFixed(3)}, and more than ${critical.toFixed(3)} is one (Grubbs, ASTM E178); it is in all the sums`;
}

function withinWords(within: boolean | null): string {
  if (within === null) return '';
  return within
    ? ', which the mean of all such units can be'
    : ', which cannot be the mean of such units';
}
