import { agree, liesInside, principal } from '../quantity/index.ts';
import type { Statement } from '../quantity/model.ts';
import { workedNumbers } from '../relations/index.ts';
import type { ReadSheetOptions } from '../sheet/index.ts';
import { readSheet } from '../sheet/index.ts';
import type { PlacedSize, Sheet } from '../sheet/model.ts';
import type { Asked, AskedPart, Witness } from './model.ts';

/** What the rest of a sheet is read by, where worked figures are to bear one out; null where nobody asks. */
export interface WitnessContext {
  readonly sheets: (ReadSheetOptions & { readonly altitude?: string | null }) | null;
}

/**
 * What the rest of the sheet says to two figures of which one must be wrong: the same size written
 * beside it, its gauge, other sources, what other figures come to, and what is usual. Only what fits the
 * one and not the other speaks.
 */
export function witnessesOf(
  part: AskedPart,
  second: Statement,
  written: string,
  asked: Asked,
  sheet: Sheet,
  context: WitnessContext,
): readonly Witness[] {
  const { size } = part;
  if (!size?.reading.ok) return [];
  const first = size.reading.statement;
  const { setting } = asked;
  const found: Witness[] = [];
  const hold = (
    by: Witness['by'],
    text: string,
    bears: (statement: Statement) => boolean,
  ): void => {
    const [one, two] = [bears(first), bears(second)];
    if (one !== two) found.push({ by, text, backs: one ? 'first' : 'second' });
  };
  const isFigure = asked.statement === 0;
  if (isFigure && part.path[0] === 'value') {
    for (const also of setting.also) {
      const other = readOf(also);
      if (other) hold('also', also.text, (each) => fits(each, other));
    }
    for (const gauge of [setting.gauge, setting.go, setting.noGo]) {
      const other = readOf(gauge);
      const amount = other && principal(other);
      if (gauge && other && amount) {
        hold('gauge', gauge.text, (each) => fits(each, other) || liesInside(each, amount));
      }
    }
  }
  const others = [
    ...(isFigure ? [] : [{ value: setting.value, from: setting.from[0] ?? null }]),
    ...setting.but.filter((_, index) => index + 1 !== asked.statement),
  ];
  for (const { value, from } of others) {
    const other = readOf(value);
    if (value === null || other === null || value === size) continue;
    const where = from === null ? '' : `${[from.id, from.page].filter(Boolean).join(' ')} says `;
    hold('source', `${where}${value.text}`, (each) => fits(each, other));
  }
  for (const range of setting.known?.usual ?? []) {
    if (range.dimension !== first.dimension || first.dimension !== second.dimension) continue;
    const [low, high] = [principal(range.low)?.base, principal(range.high)?.base];
    hold('usual', `${range.low.text} to ${range.high.text}`, (each) => {
      const [least, most] = [
        principal(each)?.base ?? each.low?.base,
        principal(each)?.base ?? each.high?.base,
      ];
      return !(low && least && least.compare(low) < 0) && !(high && most && most.compare(high) > 0);
    });
  }
  if (isFigure) found.push(...worked(size, written, sheet, context));
  return found;
}

function readOf(size: PlacedSize | null): Statement | null {
  return size?.reading.ok === true && size.reading.statement.condition === null
    ? size.reading.statement
    : null;
}

function fits(first: Statement, second: Statement): boolean {
  const { verdict } = agree(first, second, { gauges: null });
  return verdict === 'same' || verdict === 'agrees' || verdict === 'chopped';
}

/** Which of the two figures the others of the sheet come to. */
function worked(
  { span }: PlacedSize,
  written: string,
  sheet: Sheet,
  { sheets }: WitnessContext,
): readonly Witness[] {
  if (sheets === null || sheet.family !== null || sheet.kind === null) return [];
  const { text, file } = sheet;
  const altered = readSheet(
    text.slice(0, span.start) + written + text.slice(span.end),
    file,
    sheets,
  );
  const [one, two] = [disputed(sheet, sheets), disputed(altered, sheets)];
  if (one.length === two.length) return [];
  const told = (one.length < two.length ? two : one)[0] ?? '';
  return [{ by: 'worked', text: told, backs: one.length < two.length ? 'first' : 'second' }];
}

function disputed(sheet: Sheet, options: NonNullable<WitnessContext['sheets']>): readonly string[] {
  return workedNumbers(sheet, options).verdicts.flatMap(({ disparity, told, place }) =>
    disparity ? [`${told}, not ${disparity.stated} as ${place.key} says`] : [],
  );
}
