import { gaugeBook } from '../gauges/index.ts';
import { heightText, principal, readStatement } from '../quantity/index.ts';
import type { Statement } from '../quantity/model.ts';
import type { Setting, Sheet } from '../sheet/model.ts';
import { ALTITUDE_RELATION, type Altitude, vacuumByAltitude } from './altitude-table.ts';

/** What a reading that falls with altitude comes to where the club is. */
export interface ClubFigure {
  /** As the sheet has it, else as worked: `17.1 inHg min`. */
  readonly text: string;
  /** Whether the sheet states it; else it is worked by the standard barometer. */
  readonly stated: boolean;
  /** The club's altitude, as written. */
  readonly altitude: string;
  /** Where the source read its own: `sea level`, where nothing else is said. */
  readonly readAt: string;
}

/** A reading of a setting that depends on where it is taken, and how its sheet says so. */
export interface AltitudeReading {
  /** Where the source read it; null for the sea, of which nothing need be said. */
  readonly from: Altitude | null;
  /** The same in words: `sea level`. */
  readonly readAt: string;
  /** Keys beside the value that tell where it was read and what it comes to at the club's altitude. */
  readonly keys: readonly string[];
  /** The sheet's own figure for the club's altitude, as written; null where it has none. */
  readonly atClub: string | null;
}

/** An altitude as written, `1350 ft`; null where it is none. */
export function altitudeNamed(written: string | null): Altitude | null {
  if (written === null) return null;
  const reading = readStatement(heightText(written), { gauges: gaugeBook(), expect: ['length'] });
  const amount = reading.ok ? principal(reading.statement) : null;
  return amount === null ? null : { text: written, mm: amount.base };
}

/** How a setting depends on altitude, as its kind binds it; null for one that does not. */
export function altitudeReading(setting: Setting, sheet: Sheet): AltitudeReading | null {
  const binding = sheet.kind?.relations.bindings.find(({ relation, quantities }) => {
    const reading = quantities.get('reading');
    return (
      relation === ALTITUDE_RELATION && reading?.is === 'setting' && reading.setting === setting.id
    );
  });
  if (binding === undefined) return null;
  const keyOf = (quantity: string): string | null => {
    const place = binding.quantities.get(quantity);
    return place?.is === 'setting' ? place.key : null;
  };
  const saidOf = (key: string | null) =>
    key === null ? null : (setting.said.get(key)?.value ?? null);
  const [altitude, expected] = [keyOf('altitude'), keyOf('expected')];
  const from = altitudeNamed(saidOf(altitude));
  return {
    from,
    readAt: from?.text ?? 'sea level',
    keys: [altitude, expected].filter((key) => key !== null),
    atClub: saidOf(expected),
  };
}

/**
 * The figure of a setting at the club's altitude, for its value (null `place`) or that of a barrel: the
 * sheet's own, without a second rounding, or else the worked one. Null where the setting does not depend
 * on altitude, the edition names none, the source read it there, or none can be given.
 */
export function clubFigure(
  setting: Setting,
  sheet: Sheet,
  place: string | null,
  altitude: string | null,
): ClubFigure | null {
  const club = altitudeNamed(altitude);
  const reading = club === null ? null : altitudeReading(setting, sheet);
  if (club === null || reading === null) return null;
  const { from, readAt, atClub } = reading;
  const statement = statementOf(setting, place);
  if (statement === null || isSameHeight(from, club)) return null;
  const around = { altitude: club.text, readAt };
  // What a sheet says beside several places is said of none in particular.
  if (atClub !== null && place === null) return { text: atClub, stated: true, ...around };
  const [worked] = vacuumByAltitude(statement, from, [club]);
  if (!worked?.reading) return null;
  return { text: worked.reading, stated: false, ...around };
}

/** Whether two heights are one; null is the sea. */
export function isSameHeight(one: Altitude | null, other: Altitude | null): boolean {
  if (one === null || other === null) return (one ?? other)?.mm.equals(0) ?? true;
  return one.mm.equals(other.mm);
}

function statementOf(setting: Setting, place: string | null): Statement | null {
  const size = place === null ? setting.value : (setting.places.get(place) ?? null);
  return size?.reading.ok ? size.reading.statement : null;
}
