import type { GivenSetting, ListedUnit } from '../import/listed-unit.ts';
import type { Slip } from '../import/slip.ts';
import { readSize, type SizeTools } from '../import/written-size.ts';
import type { Kind } from '../kinds/model.ts';
import type { KnownSheet } from '../project/known-units.ts';
import { agree } from '../quantity/index.ts';
import { type Paint, visible, wrap } from '../report/index.ts';

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

/** What a list says of a unit otherwise than its sheet, a line each; none where they agree. */
export function differencesText(
  { sheet, file }: KnownSheet,
  unit: ListedUnit,
  kind: Kind,
  tools: SizeTools,
): readonly string[] {
  const values = new Map(
    [...sheet.settings.values()].map((setting) => [setting.id, setting.value?.text ?? null]),
  );
  const lines: string[] = [];
  for (const given of unit.settings.values()) {
    if (given.value === null) continue;
    const there = values.get(given.name);
    if (there != null && isSame(there, given, kind, tools)) continue;
    const says = there == null ? 'is not there' : `is \`${there}\` there`;
    lines.push(visible(`${file}: ${given.name} ${says}; ${given.cell} says \`${given.value}\``));
  }
  return lines;
}

function isSame(there: string, given: GivenSetting, kind: Kind, tools: SizeTools): boolean {
  const value = given.value ?? '';
  if (there.trim() === value) return true;
  const dimensions = kind.settings.get(given.name)?.dimensions ?? [];
  const [one, two] = [readSize(there, dimensions, tools), readSize(value, dimensions, tools)];
  if (!one.ok || !two.ok) return false;
  const { verdict } = agree(one.statement, two.statement, { gauges: tools.gauges });
  return verdict === 'same' || verdict === 'agrees';
}
