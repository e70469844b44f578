import {
  type Altitude,
  altitudeNamed,
  altitudeReading,
  clubFigure,
  isSameHeight,
  usualAltitudes,
  vacuumByAltitude,
} from '../../relations/index.ts';
import type { Setting, Sheet } from '../../sheet/model.ts';

/** A reading of a setting, carried to some altitudes. */
export interface AltitudeReadings {
  readonly setting: Setting;
  /** As the sheet states it, with the place where there are several. */
  readonly stated: string;
  /** Where it was read: `sea level` is taken where the sheet says nothing. */
  readonly readAt: string;
  /** One to each altitude; null where none can be given. */
  readonly readings: readonly (string | null)[];
}

/** The altitudes of a table, from the sea up, the club's among them; `clubs` as written, null for none. */
export function tableAltitudes(clubs: string | null): {
  readonly club: Altitude | null;
  readonly altitudes: readonly Altitude[];
} {
  const club = altitudeNamed(clubs);
  const usual = usualAltitudes(clubs?.trim().endsWith('m') ? 'm' : 'ft');
  const altitudes = [...usual.filter(({ mm }) => !club?.mm.equals(mm)), ...(club ? [club] : [])];
  altitudes.sort((first, second) => first.mm.compare(second.mm));
  return { club, altitudes };
}

/**
 * What the settings of a sheet that fall with altitude read at each of some altitudes. What the sheet itself
 * says of a height is said here too, and not worked a second time.
 */
export function altitudeReadings(
  sheet: Sheet,
  altitudes: readonly Altitude[],
  clubs: string | null,
): readonly AltitudeReadings[] {
  return [...sheet.settings.values()].flatMap((setting) => {
    const found = altitudeReading(setting, sheet);
    if (found === null) return [];
    return sizesOf(setting).flatMap(({ place, stated, text, statement }) => {
      const own = clubFigure(setting, sheet, place, clubs);
      const carried = vacuumByAltitude(statement, found.from, altitudes);
      if (carried.every(({ reading }) => reading === null)) return [];
      const readings = altitudes.map((altitude, row) => {
        if (isSameHeight(found.from, altitude)) return text;
        if (own !== null && altitude.text === own.altitude) return own.text;
        return carried[row]?.reading ?? null;
      });
      return [{ setting, stated, readAt: found.readAt, readings }];
    });
  });
}

function sizesOf(setting: Setting) {
  const whole = setting.value === null ? [] : [[null, setting.value] as const];
  return [...whole, ...setting.places].flatMap(([place, { text, reading }]) => {
    const stated = place === null ? text : `${place} ${text}`;
    return reading.ok ? [{ place, stated, text, statement: reading.statement }] : [];
  });
}
