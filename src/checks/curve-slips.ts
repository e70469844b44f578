import { likelySlips, principal, type RankedMisprint, wireGaugeNamed } from '../quantity/index.ts';
import type { Dimension } from '../quantity/model.ts';
import type { PlacedSize, Sheet } from '../sheet/model.ts';
import type { CheckContext } from './define.ts';

/** A size of a row that is doubted, one that stands beside it, and what it may be told in. */
interface Doubted {
  readonly size: PlacedSize | null | undefined;
  readonly near: PlacedSize | null | undefined;
  readonly expect: readonly Dimension[] | undefined;
}

/** The single slips of a size of a row after which it suits its neighbors, the likeliest first. */
export function rowSlips(
  { size, near, expect }: Doubted,
  sheet: Sheet,
  { gauges, wireGauge }: CheckContext,
  suits: (slipped: PlacedSize) => boolean,
): readonly RankedMisprint[] {
  if (!size?.reading.ok || !near?.reading.ok) return [];
  const { statement } = near.reading;
  const amount = principal(statement) ?? statement.low?.amount ?? statement.high?.amount;
  if (!amount) return [];
  const swg = wireGaugeNamed(sheet.wireGauge?.value ?? wireGauge);
  const options = { gauges, expect, swg } as const;
  return likelySlips(size.text, size.reading.statement, amount, options, (slip) =>
    suits({ ...size, text: slip.text, reading: { ok: true, statement: slip } }) ? 'right' : 'wrong',
  );
}
