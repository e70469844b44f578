import { tallyOf } from '../rereading/index.ts';
import type { Compared, ComparedPart, Comparison, Verdict, Witness } from '../rereading/model.ts';
import { visible } from '../text/index.ts';
import type { Paint } from './paint.ts';
import { wrap } from './wrap.ts';

const width = 80;

/** A comparison for a terminal of 80 columns: a line a figure, and below what differs both and why. */
export function rereadText(comparison: Comparison, ink: Paint): string {
  const { reading, compared, unasked } = comparison;
  const facts = [reading.by?.value ?? 'nobody named', reading.date?.value ?? 'no day'];
  const head = `${reading.sheet.value}: ${reading.source.value} read again by ${facts.join(', ')}`;
  const out = [ink.bold(visible(head)), ''];
  const keys = Math.max(0, ...compared.map(({ asked }) => asked.key.length));
  const indent = ' '.repeat(Math.min(keys, 30) + 4);
  let page: string | null = null;
  for (const each of compared) {
    if (each.asked.page !== page) out.push(ink.dim(visible(each.asked.page)));
    page = each.asked.page;
    const key = visible(each.asked.key).padEnd(Math.min(keys, 30));
    const word = each.settled === null ? each.verdict : `settled: ${each.settled.for}`;
    out.push(`  ${key}  ${tint(each, ink)(word)}`);
    for (const line of each.parts.flatMap(partLines)) {
      out.push(...wrap(visible(line), width - indent.length).map((text) => `${indent}${text}`));
    }
    if (each.settled !== null) {
      const { by, why } = each.settled;
      const words = visible(`${by}: ${why}`);
      out.push(...wrap(words, width - indent.length).map((text) => `${indent}${ink.dim(text)}`));
    }
  }
  const more = [
    ...reading.found.map(({ page: at, what, value }) =>
      [at ?? '', what ?? '', value].filter(Boolean).join(': '),
    ),
    ...unasked.map(
      ({ page: at, key }) => `${at}: ${key}, which the sheet does not cite from there`,
    ),
  ];
  if (more.length > 0) out.push('', ink.yellow('found more'));
  for (const line of more) out.push(...wrap(visible(line), width - 2).map((text) => `  ${text}`));
  out.push('', tallyLine(comparison));
  return `${out.join('\n')}\n`;
}

/** `20 the same, 1 written otherwise; 1 differs`: what is none is left out. */
export function tallyLine(comparison: Comparison): string {
  const { same, otherwise, open, settled, notThere, unread, more } = tallyOf(comparison);
  const of = (count: number, words: string) => (count === 0 ? [] : [`${count} ${words}`]);
  const parts = [
    ...of(same, 'the same'),
    ...of(otherwise, 'written otherwise'),
    ...of(settled, 'settled'),
    ...of(open, open === 1 ? 'differs' : 'differ'),
    ...of(notThere, 'not on that page'),
    ...of(unread, 'not read'),
    ...of(more, 'found more'),
  ];
  const figures = comparison.compared.length;
  const head = `${figures} ${figures === 1 ? 'figure' : 'figures'}`;
  return parts.length === 0 ? head : `${head}: ${parts.join(', ')}`;
}

/** `the sheet is borne out by 0.203 in (also)`; a line for either side that has somebody to speak for it. */
function witnessLines(witnesses: readonly Witness[]): readonly string[] {
  const told = (side: Witness['backs'], name: string) => {
    const own = witnesses.filter(({ backs }) => backs === side);
    return own.length === 0 ? [] : [`${name} is borne out by ${own.map(said).join('; ')}`];
  };
  return [...told('first', 'the sheet'), ...told('second', 'the second reading')];
}

function said({ by, text }: Witness): string {
  if (by === 'also') return `${text} beside it`;
  if (by === 'gauge') return `its gauge, ${text}`;
  if (by === 'usual') return `what is usual, ${text}`;
  return text;
}

function partLines({ part, answer, verdict, difference, misprint, witnesses }: ComparedPart) {
  if (verdict === 'same') return [];
  const key = part.path.join(' ');
  const name = key === 'value' ? '' : `${key}: `;
  if (verdict === 'unread') return [`${name || 'value: '}not answered`];
  if (verdict === 'not on that page') return [`${name}the sheet has ${part.text}`];
  const both = `${name}${part.text} on the sheet, ${answer?.value ?? ''} in the second reading`;
  if (verdict === 'same, written otherwise') return [both];
  const why = [difference, misprint].filter((words) => words !== null).join(': ');
  return [why === '' ? both : `${both} (${why})`, ...witnessLines(witnesses)];
}

function tint({ verdict, settled }: Compared, ink: Paint): (text: string) => string {
  const tints: Readonly<Record<Verdict, (text: string) => string>> = {
    same: ink.green,
    'same, written otherwise': ink.green,
    differs: ink.red,
    'not on that page': ink.red,
    unread: ink.yellow,
  };
  return settled === null ? tints[verdict] : ink.green;
}
