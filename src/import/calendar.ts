/** A day, or a day of no stated year; a year as it was written, two digits made four. */
export interface CalendarDay {
  readonly year: number | null;
  readonly month: number;
  readonly day: number;
}

const MS_A_DAY = 86_400_000;

/**
 * The day of a spreadsheet's serial number as YYYY-MM-DD, with hh:mm behind it where there is a
 * time. Days count from 30 December 1899, which is right from March 1900 on (ECMA-376 part 1,
 * 18.17.4.1), or from 1 January 1904. A number beyond the year 9999 comes back as it is.
 */
export function dayOfSerial(serial: number, from1904: boolean): string {
  if (serial < 0 || serial > 2_958_465) return String(serial);
  const start = from1904 ? Date.UTC(1904, 0, 1) : Date.UTC(1899, 11, 30);
  const whole = Math.floor(serial);
  const day = new Date(start + whole * MS_A_DAY).toISOString().slice(0, 10);
  const minutes = Math.round((serial - whole) * 1440);
  if (minutes === 0) return day;
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  const time = `${String(hours).padStart(2, '0')}:${String(rest).padStart(2, '0')}`;
  return serial < 1 ? time : `${day} ${time}`;
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const MONTH =
  '(jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)';
const DAY_MONTH = new RegExp(`^(\\d{1,2})[-. /]*${MONTH}\\.?(?:[-., /]*(\\d{2}|\\d{4}))?$`, 'i');
const MONTH_DAY = new RegExp(`^${MONTH}\\.?[-. /]*(\\d{1,2})(?:[-., /]+(\\d{4}))?$`, 'i');

/**
 * The day that a text names, as spreadsheets write days: `2026-08-03`, `3-Aug`, `Aug 3`,
 * `03/08/2026` (the first number is taken for the month), `3.8.2026`; null for anything else.
 */
export function dayIn(text: string): CalendarDay | null {
  const iso = /^(\d{4})-(\d{2})-(\d{2})(?:[T ][\d:.]+)?$/.exec(text);
  if (iso) return day(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const named = DAY_MONTH.exec(text);
  if (named) return day(yearOf(named[3]), monthOf(named[2] ?? ''), Number(named[1]));
  const other = MONTH_DAY.exec(text);
  if (other) {
    // `Sep-64` is a month of a year: no month has so many days.
    const number = Number(other[2]);
    if (number > 31) return day(yearOf(other[2]), monthOf(other[1] ?? ''), 1);
    return day(yearOf(other[3]), monthOf(other[1] ?? ''), number);
  }
  const figures = /^(\d{1,2})([/.-])(\d{1,2})\2(\d{2}|\d{4})$/.exec(text);
  if (figures === null) return null;
  const [first, second] = [Number(figures[1]), Number(figures[3])];
  const year = yearOf(figures[4]);
  const monthFirst = figures[2] === '/' && first <= 12;
  return monthFirst
    ? day(year, first, second)
    : (day(year, second, first) ?? day(year, first, second));
}

/**
 * The sizes that a spreadsheet may have turned into a day, likeliest first: month and day either way
 * around, and the month with a two-digit year where the day is the first. `3-8` and `3/8` become a
 * day of March or of August, `9/64` the first of September 1964.
 */
export function typedBefore({ year, month, day }: CalendarDay): readonly string[] {
  const pairs: [number, number][] = [
    [month, day],
    [day, month],
  ];
  if (day === 1 && year !== null) pairs.unshift([month, year % 100]);
  const isInchFraction = ([top, bottom]: [number, number]) =>
    top < bottom && [2, 4, 8, 16, 32, 64].includes(bottom) && top % 2 === 1;
  const likely = pairs.filter(isInchFraction);
  const taken = likely.length > 0 ? likely : pairs.filter(([top, bottom]) => top < bottom);
  const texts = (taken.length > 0 ? taken : pairs).map(([top, bottom]) => `${top}/${bottom}`);
  return [...new Set(texts)];
}

function day(year: number | null, month: number, date: number): CalendarDay | null {
  if (month < 1 || month > 12 || date < 1 || date > 31) return null;
  return { year, month, day: date };
}

function monthOf(name: string): number {
  return MONTHS.indexOf(name.slice(0, 3).toLowerCase()) + 1;
}

/** Two digits from 30 on are of the last century, as spreadsheets take them. */
function yearOf(text: string | undefined): number | null {
  if (text === undefined) return null;
  const year = Number(text);
  return text.length === 4 ? year : year + (year < 30 ? 2000 : 1900);
}
