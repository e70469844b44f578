import type { GapPlace } from '../gauges/index.ts';
import type { Rational, Statement } from '../quantity/model.ts';
import type { PlacedSize, Setting, Sheet } from './model.ts';

/** A gap that a setting asks for: a length that a gauge is passed through. */
export interface SettingGap {
  readonly size: PlacedSize;
  readonly statement: Statement;
  readonly place: GapPlace;
  /** The barrel or place that it is said for; null where one value serves all. */
  readonly barrel: string | null;
  /**
   * Whether the sheet says with what it is measured: by a gauge beside it, or because the size is
   * itself a gauge's name.
   */
  readonly isGauged: boolean;
  /** The size of the unit that says how wide the bore is; null where there is none. */
  readonly bore: PlacedSize | null;
}

/**
 * The gaps of a setting, the value's first; none where the kind does not say that it is one, and
 * none for what is told as an angle or could not be read. The bore is that of the value: which of
 * several bores a barrel's figure is for, a sheet does not say.
 */
export function gapsOf(setting: Setting, sheet: Sheet): readonly SettingGap[] {
  const { known } = setting;
  if (!known || known.measured === null || known.measured === 'travel') return [];
  const inBore = known.measured === 'in-bore';
  const bore = known.bore === null ? null : (sheet.unit.sizes.get(known.bore) ?? null);
  const boreMm = widthOf(bore);
  const named = setting.gauge ?? setting.go ?? setting.noGo;
  const gap = (size: PlacedSize, barrel: string | null): SettingGap[] => {
    const statement = size.reading.ok ? size.reading.statement : null;
    if (statement?.dimension !== 'length') return [];
    const place = { inBore, boreMm: barrel === null ? boreMm : null };
    const isGauged = named !== null || (statement.nominal?.gauge ?? null) !== null;
    return [
      { size, statement, place, barrel, isGauged, bore: place.boreMm === null ? null : bore },
    ];
  };
  return [
    ...(setting.value === null ? [] : gap(setting.value, null)),
    ...[...setting.places].flatMap(([barrel, size]) => gap(size, barrel)),
  ];
}

function widthOf(bore: PlacedSize | null): Rational | null {
  if (!bore?.reading.ok) return null;
  const { dimension, nominal } = bore.reading.statement;
  return dimension === 'length' && nominal && nominal.base.s > 0n && nominal.base.n > 0n
    ? nominal.base
    : null;
}
