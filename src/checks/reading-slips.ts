import { numberIn } from '../measured/index.ts';
import type { Sample } from '../measured/model.ts';
import { likelySlips, type RankedMisprint, wireGaugeNamed } from '../quantity/index.ts';
import type { Rational } from '../quantity/model.ts';
import type { PlacedSize, Sheet } from '../sheet/model.ts';
import type { CheckContext } from './define.ts';

/** How well a number would do in place of the one that is doubted. */
type Suits = (number: Rational) => 'right' | 'unlikely' | 'wrong';

/** The single slips of a size after which it suits what was measured, the likeliest first. */
export function slipsToSuit(
  { text, reading }: PlacedSize,
  sample: Sample,
  sheet: Sheet,
  { gauges, wireGauge }: CheckContext,
  suits: Suits,
): readonly RankedMisprint[] {
  const wrong = reading.ok ? reading.statement : null;
  const options = {
    gauges,
    expect: [sample.dimension],
    swg: wireGaugeNamed(sheet.wireGauge?.value ?? wireGauge),
    jets: sample.setting?.jets,
  } as const;
  const [near = null] = sample.readings
    .filter(({ size }) => size.text !== text)
    .map(({ statement }) => statement.nominal);
  return likelySlips(text, wrong, near, options, (candidate) => {
    const number = numberIn(candidate, sample);
    return number === null ? 'wrong' : suits(number);
  });
}
