import { isAllSame, tallyOf } from '../rereading/index.ts';
import type { Comparison } from '../rereading/model.ts';
import { settingLabel } from '../sheet/index.ts';
import { jsonText } from '../text/index.ts';

/** A comparison as one JSON object, on one line; the same facts as the text. */
export function rereadJson(file: string, comparison: Comparison): string {
  const { reading, compared, unasked } = comparison;
  const tally = tallyOf(comparison);
  return `${jsonText({
    file,
    sheet: reading.sheet.value,
    source: reading.source.value,
    by: reading.by?.value ?? null,
    date: reading.date?.value ?? null,
    same: isAllSame(tally),
    counts: tally,
    figures: compared.map(({ asked, verdict, parts, settled }) => ({
      setting: asked.setting.id,
      key: asked.key,
      label: settingLabel(asked.setting),
      page: asked.page,
      verdict,
      parts: parts.map(({ part, answer, difference, misprint, witnesses, ...told }) => ({
        key: part.path.join('/'),
        verdict: told.verdict,
        first: part.text,
        second: answer?.value ?? null,
        difference,
        misprint,
        witnesses,
      })),
      settled: settled && { for: settled.for, by: settled.by, why: settled.why },
    })),
    found: [
      ...reading.found.map(({ page, what, value }) => ({ page, what, value })),
      ...unasked.map(({ page, key, given }) => ({
        page,
        what: key,
        value: given.get('value')?.value ?? null,
      })),
    ],
  })}\n`;
}
