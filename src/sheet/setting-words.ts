import { equivalents } from '../quantity/index.ts';
import { capitalized } from '../text/index.ts';
import type { PlacedSize, Setting } from './model.ts';

/** The kind's label for a setting, or the sheet's own name in words: `float-level` → `Float level`. */
export function settingLabel(setting: Setting): string {
  if (setting.known) return setting.known.label;
  const words = setting.name.value.replaceAll('-', ' ');
  return capitalized(words);
}

/** Keys of a setting that are said elsewhere in its row. */
const shownElsewhere = new Set([
  'value',
  'also',
  'gauge',
  'go',
  'no-go',
  'from',
  'but',
  'places',
  'rounding',
  'note',
  'at',
  'travel',
  'places-differ',
  'accept',
]);

/** A size as written with its inch and millimeter equivalents behind: `0.039 in (0.991 mm)`. */
export function withEquivalents(size: PlacedSize): string {
  if (!size.reading.ok) return size.text;
  const { inch, mm } = equivalents(size.reading.statement);
  const both = [inch, mm].filter((text) => text !== null).join(', ');
  return both === '' ? size.text : `${size.text} (${both})`;
}

/** What to measure a setting with, as the sheet names it: `go No. 8 drill, no-go No. 3 drill`; null for nothing. */
export function gaugeWords(setting: Setting): string | null {
  if (setting.gauge) return setting.gauge.text;
  const pair = [
    setting.go === null ? null : `go ${setting.go.text}`,
    setting.noGo === null ? null : `no-go ${setting.noGo.text}`,
  ].filter((text) => text !== null);
  return pair.length === 0 ? null : pair.join(', ');
}

/**
 * Where and in what state a setting is measured; null where the sheet does not say. `without`: keys that
 * are told elsewhere.
 */
export function whereWords(setting: Setting, without: readonly string[] = []): string | null {
  const words = setting.at === null ? [] : [setting.at.value];
  for (const [key, said] of setting.said) {
    if (!shownElsewhere.has(key) && !without.includes(key))
      words.push(`${key.replaceAll('-', ' ')} ${said.value}`);
  }
  if (setting.travel) words.push(`travel ${withEquivalents(setting.travel)}`);
  if (setting.placesDiffer) words.push(`places differ: ${setting.placesDiffer.value}`);
  return words.length === 0 ? null : words.join('; ');
}
