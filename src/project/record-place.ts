import type { BenchRecord, RecordFault, RecordPlace } from '../conformance/index.ts';
import type { Kind } from '../kinds/model.ts';
import type { ReadOptions } from '../quantity/index.ts';
import {
  isReduced,
  placeAtAltitude,
  placeAtBarometer,
  type ReadingPlace,
  vacuumCarried,
} from '../relations/index.ts';
import type { Placed } from '../text/index.ts';

/**
 * Where a record was taken: at its barometer, where it states one, else at its altitude. What cannot be
 * read as either is a fault, and so is a barometer that no weather makes of the altitude beside it.
 */
export function recordPlace(
  { altitude, barometer }: Pick<BenchRecord, 'altitude' | 'barometer'>,
  kind: Kind | null,
  options: ReadOptions,
): RecordPlace {
  const faults: RecordFault[] = [];
  const read = (
    placed: Placed<string> | null,
    reader: typeof placeAtAltitude,
  ): ReadingPlace | null => {
    if (placed === null) return null;
    const found = reader(placed.value, options);
    if ('barometerPa' in found) return found;
    faults.push({ kind: 'invalid', span: placed.span, ...found });
    return null;
  };
  const height = read(altitude, placeAtAltitude);
  const column = read(barometer, placeAtBarometer);
  if (height && column && barometer && isReduced(column, height)) {
    faults.push({
      kind: 'invalid',
      span: barometer.span,
      message: `a barometer of ${column.text} does not belong to ${height.text}`,
      fix: 'write what it stood at in the shop: weather reports tell it as if the shop lay at the sea',
    });
  }
  const place = column ?? height;
  return {
    faults,
    carriedFor: (setting, statement) => {
      // Nowhere in particular: only whether it matters is asked.
      const to = place ?? { text: 'sea level', barometerPa: 101_325 };
      const by = vacuumCarried(setting, statement, kind, to, options);
      return by && place === null ? 'unsaid' : by;
    },
  };
}
