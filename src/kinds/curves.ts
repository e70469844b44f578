import { rational } from '../quantity/index.ts';
import type { Dimension } from '../quantity/model.ts';
import { readUsual } from './build.ts';
import type { SettingData } from './data.ts';
import type { KindCurve, KindScale, KindSum } from './model.ts';

type CurveData = NonNullable<SettingData['curve']>;
type SumData = NonNullable<SettingData['sum']>;
type ScaleData = NonNullable<CurveData['scale']>;

/** What a kind says of a setting that is a table. */
export function buildCurve(data: CurveData): KindCurve {
  return {
    against: data.against as readonly Dimension[],
    label: data.label,
    course: data.course ?? 'any',
    // Read when somebody asks: most sheets have no curve.
    get within() {
      const { within, against } = data;
      return within
        ? (readUsual({ usual: { [against[0] ?? '']: within } }).ranges[0] ?? null)
        : null;
    },
    scale: scaleOf(data.scale),
    below: data.below ?? null,
    points: (data.points ?? []).map((point) => ({
      setting: point.setting,
      key: point.key ?? null,
      stationOf: point['station-of'] ?? null,
      begins: point.begins ?? false,
    })),
  };
}

/** What a kind says of a setting that is a sum. */
export function buildSum(data: SumData): KindSum {
  return {
    scale: scaleOf(data.scale),
    parts: data.parts.map((part) => ({
      settings: part.setting,
      times: rational(part.times ?? 1),
      key: part.key ?? null,
      stationTimes: rational(part['station-times'] ?? 1),
    })),
  };
}

function scaleOf(data: ScaleData | undefined): KindScale | null {
  if (!data) return null;
  const { words, times } = data;
  return { words, times: rational(times), unlessFeature: data['unless-feature'] ?? [] };
}
