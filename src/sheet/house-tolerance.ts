import type { Kind, KindSetting } from '../kinds/model.ts';
import { readStatement, unitById } from '../quantity/index.ts';
import type { Amount, GaugeBook, Rational } from '../quantity/model.ts';
import type { HouseTolerance } from './model.ts';

/** What an edition takes where no source states limits: kind, then setting, each tolerance as written. */
export type HouseTolerances = Readonly<Record<string, Readonly<Record<string, string>>>>;

/** Why a tolerance of the house is none that its setting can have. */
export interface ToleranceFault {
  readonly message: string;
  readonly fix: string;
}

/** A house tolerance of a setting, from `± 1/64 in` or `+0.002 / -0.001 in`, or what is wrong with it. */
export function readHouseTolerance(
  text: string,
  { name, dimensions }: KindSetting,
  gauges: GaugeBook,
): HouseTolerance | ToleranceFault {
  const both = /^\s*(?:\u00b1|\+\s*\/\s*-|\+-)\s*(\S.*)$/.exec(text)?.[1];
  const apart = /^\s*\+\s*(\S+(?: \S+)?)\s*\/\s*[-\u2212]\s*(\S.*)$/.exec(text);
  const [, over = both ?? '', under = both ?? ''] = apart ?? [];
  if (both === undefined && apart === null) {
    return {
      message: `${text} for ${name} does not say which way`,
      fix: `write ± ${text.trim()}, if it is a tolerance to both sides`,
    };
  }
  const last = amountOf(under, gauges);
  const unit = /[^\d./\s-].*$/.exec(under)?.[0] ?? '';
  const first = amountOf(over, gauges) ?? amountOf(`${over} ${unit}`, gauges);
  if (first === null || last === null) {
    return {
      message: `${text} for ${name} cannot be read as a tolerance`,
      fix: 'write ± and a size with its unit, such as ± 1/64 in',
    };
  }
  const { dimension } = unitById(last.unit);
  if (dimension !== unitById(first.unit).dimension || !dimensions.includes(dimension)) {
    return {
      message: `${text} is of another dimension than ${name} is stated in`,
      fix: 'correct the unit, or move it to the setting that it belongs to',
    };
  }
  return { text: text.trim(), plus: widthOf(first), minus: widthOf(last), dimension };
}

function amountOf(text: string, gauges: GaugeBook): Amount | null {
  const reading = readStatement(text, { gauges });
  return reading.ok && reading.statement.form === 'exact' && reading.statement.qualifier === null
    ? reading.statement.nominal
    : null;
}

/** In base units; a difference of temperatures has no offset. */
function widthOf({ number, unit }: Amount): Rational {
  return number.mul(unitById(unit).factor);
}

/** The tolerances of a kind's settings by their ids, as far as they can be read. */
export function houseTolerancesOf(
  all: HouseTolerances | null,
  kind: Kind | null,
  gauges: GaugeBook,
): ReadonlyMap<string, HouseTolerance> {
  const found = new Map<string, HouseTolerance>();
  for (const [setting, text] of Object.entries((kind && all?.[kind.name]) ?? {})) {
    const known = kind?.settingNamed(setting) ?? null;
    const read = known && readHouseTolerance(text, known, gauges);
    if (known && read && 'plus' in read) found.set(known.name, read);
  }
  return found;
}
