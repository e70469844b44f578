import type { WorkEntry, WorkQuantity, WorkResult } from '../relations/index.ts';
import { visible } from '../text/index.ts';
import { wrap } from './wrap.ts';

/** How a table of worked figures is written. */
export interface WorkTextOptions {
  /** Also source, assumptions and range, and the relations that lack a figure. */
  readonly full: boolean;
  /** Columns to break lines at. */
  readonly width: number;
}

/**
 * The worked figures of a sheet: one block for each relation, its formula, what stands for each
 * quantity, what comes of it, and whether the stated figure agrees. Empty where no relation applies.
 */
export function workText(entries: readonly WorkEntry[], { full, width }: WorkTextOptions): string {
  const told = entries.filter(
    ({ lacks, results, refusals }) =>
      results.length + refusals.length > 0 || (full && lacks.length === 0),
  );
  const lacking = entries.filter(({ lacks }) => lacks.length > 0);
  const blocks = told.map((entry) => block(entry, full, width));
  if (full && lacking.length > 0) blocks.push(lackingText(lacking, width));
  else if (lacking.length > 0) {
    const many = lacking.length === 1 ? '1 relation lacks' : `${lacking.length} relations lack`;
    blocks.push(`${many} a figure on this sheet; --full names what is missing.\n`);
  }
  return blocks.join('\n');
}

function block(entry: WorkEntry, full: boolean, width: number): string {
  const { of, at, title, formula, quantities, results, refusals } = entry;
  const lines = hung(`${of}${at === null ? '' : `, ${at}`}: ${title}`, '', '  ', width);
  lines.push(...hung(formula, '  ', '    ', width));
  const judged = new Set(results.map(({ label }) => label));
  const inputs = quantities.filter(
    ({ label, from }) => !judged.has(label) && (full || from !== 'missing'),
  );
  const rows: (readonly [string, string])[] = [
    ...inputs.map((each) => [each.label, inputWords(each)] as const),
    ...results.map((each) => [each.label, resultWords(each, full)] as const),
  ];
  const column = Math.min(28, Math.max(...rows.map(([label]) => label.length)));
  for (const [label, words] of rows) {
    const lead = `  ${label.padEnd(column)}  `;
    lines.push(...hung(words, lead, ' '.repeat(column + 4), width));
  }
  for (const { message, fix } of refusals) {
    lines.push(...hung(message, '  impossible: ', '    ', width));
    lines.push(...hung(`fix: ${fix}`, '    ', '    ', width));
  }
  if (full) {
    lines.push(...hung(entry.source, '  source: ', '    ', width));
    for (const each of entry.assumptions) lines.push(...hung(each, '  assumes: ', '    ', width));
    lines.push(...hung(entry.range, '  range: ', '    ', width));
  }
  return `${lines.join('\n')}\n`;
}

function inputWords({ figure, from, because }: WorkQuantity): string {
  if (from === 'unsaid') return `nothing said: ${figure}`;
  if (from === 'missing') return 'not stated';
  if (from === 'worked') return `${figure}, worked`;
  if (from === 'unread') return `${figure}, which cannot be read`;
  if (from === 'other') return figure === null ? 'not known' : `${figure}, which takes no part`;
  return because === null ? `${figure}` : `${figure}, ${because}`;
}

function resultWords(result: WorkResult, full: boolean): string {
  const { worked, stretch, hold, stated, verdict, difference, side } = result;
  const bound = hold === 'at-most' ? 'at most ' : hold === 'at-least' ? 'at least ' : '';
  const rounding = stretch === null || !full ? '' : `, ${stretch} as the figures are rounded`;
  const found = `${bound}${worked}, worked${rounding}`;
  switch (verdict) {
    case 'offered':
      return `${found}; not stated`;
    case 'agrees':
      return `${found}; ${stated} is stated, and agrees`;
    case 'loose':
      return `${found}; ${stated} is stated (${difference}), which only rounding explains`;
    case 'limits':
      return `${found}; ${stated} is stated, and its ${side} limit disagrees: ${difference}`;
    default:
      return `${found}; ${stated} is stated, and disagrees: ${difference}`;
  }
}

function lackingText(entries: readonly WorkEntry[], width: number): string {
  const lines = ['Not worked, for want of a figure:'];
  for (const { of, at, title, lacks } of entries) {
    const where = `${of}${at === null ? '' : `, ${at}`}`;
    lines.push(...hung(`${where}: ${title} lacks ${lacks.join(', ')}`, '  ', '    ', width));
  }
  return `${lines.join('\n')}\n`;
}

/** A sentence behind a lead, its further lines set in, no wider than `width`. */
function hung(text: string, lead: string, inset: string, width: number): string[] {
  const room = Math.max(20, width - Math.max(lead.length, inset.length));
  return wrap(visible(text), room).map((line, i) => `${i === 0 ? lead : inset}${line}`.trimEnd());
}
