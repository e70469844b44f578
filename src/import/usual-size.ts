import type { KindSetting } from '../kinds/model.ts';
import { principal } from '../quantity/index.ts';
import type { Statement } from '../quantity/model.ts';
import { commonUnits } from './common-units.ts';
import { readSize, type SizeTools, withUnit } from './written-size.ts';

/** What a size is read for: a setting, or a size of the unit itself. */
export type SizePlace = Pick<KindSetting, 'name' | 'label' | 'dimensions' | 'usual'>;

/** Whether all that a size states lies in the usual range of a setting; null where none is known. */
export function isUsual(statement: Statement, setting: SizePlace): boolean | null {
  const range = setting.usual.find(({ dimension }) => dimension === statement.dimension);
  const low = range && principal(range.low);
  const high = range && principal(range.high);
  if (!low || !high) return null;
  const { nominal } = statement;
  const ends = [nominal?.base, statement.low?.base, statement.high?.base].filter(
    (base) => base !== undefined,
  );
  if (ends.length === 0) return null;
  return ends.every((base) => base.compare(low.base) >= 0 && base.compare(high.base) <= 0);
}

/** The usual range as it is written: `0 in to 2 in`; null where none is known. */
export function usualText(statement: Statement, setting: SizePlace): string | null {
  const range = setting.usual.find(({ dimension }) => dimension === statement.dimension);
  return range === undefined ? null : `${range.low.text} to ${range.high.text}`;
}

/** A number in the common units in which it would be usual for a setting. */
export function usualForms(
  number: string,
  setting: SizePlace,
  tools: SizeTools,
): readonly { readonly text: string; readonly statement: Statement }[] {
  const units = setting.dimensions.flatMap((dimension) => commonUnits[dimension] ?? []);
  return units.flatMap((unit) => {
    const text = withUnit(number, unit);
    const reading = readSize(text, setting.dimensions, tools);
    if (!reading.ok || isUsual(reading.statement, setting) !== true) return [];
    return [{ text, statement: reading.statement }];
  });
}
