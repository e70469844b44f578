import type { Likeness } from '../relations/index.ts';
import { visible } from '../text/index.ts';
import { wrap } from './wrap.ts';

/**
 * The throttles of two sheets side by side, with the areas at one gap and the gap of one area: a
 * block for each gap of the first sheet. `other` is what the second sheet is called.
 */
export function likeText(found: readonly Likeness[], other: string, width: number): string {
  const blocks = found.map((likeness) => block(likeness, other, width));
  const [first] = found;
  const assumptions = (first?.assumptions ?? []).flatMap((each) =>
    hung(each, 'assumes: ', '  ', width),
  );
  return `${blocks.join('\n')}\n${assumptions.join('\n')}\n`;
}

function block(likeness: Likeness, other: string, width: number): string {
  const { of, at, rows, gap, share, otherGap, refusals } = likeness;
  const where = `${of}${at === null ? '' : `, ${at}`}`;
  const cells = [
    ['', 'this sheet', 'the other'],
    ...rows.map((row) => [row.label, row.own ?? 'not known', row.other ?? 'not known']),
  ];
  const columns = [0, 1].map((i) =>
    Math.max(...cells.map((line) => visible(line[i] ?? '').length)),
  );
  const lines = hung(`${where}: this sheet against ${other}`, '', '  ', width);
  for (const line of cells) {
    const padded = line.map((cell, i) => visible(cell).padEnd(columns[i] ?? 0));
    lines.push(`  ${padded.join('  ')}`.trimEnd());
  }
  const said = [
    share && `At one gap of ${gap}, the other is open by ${share.text} of this one's area`,
    otherGap && `The other is open by the same area at a gap of ${otherGap.text}`,
  ];
  for (const sentence of said) if (sentence) lines.push(...hung(sentence, '  ', '    ', width));
  for (const refusal of refusals) lines.push(...hung(refusal, '  impossible: ', '    ', width));
  return `${lines.join('\n')}\n`;
}

/** A sentence behind a lead, its further lines set in. */
function hung(text: string, lead: string, inset: string, width: number): string[] {
  const room = Math.max(20, width - Math.max(lead.length, inset.length));
  return wrap(visible(text), room).map((line, i) => `${i === 0 ? lead : inset}${line}`.trimEnd());
}
