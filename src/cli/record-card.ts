import {
  type Assessed,
  type AssessedEntry,
  type AssessedSize,
  figure,
  ruleWords,
  verdictWord,
} from '../conformance/index.ts';
import type { CardReading, CardReadings } from '../press/index.ts';
import type { JudgedRecord } from './record-judged.ts';
import { readingText } from './record-text.ts';

/**
 * What a card is filled in with from a judged record. Where a record tells places apart that the
 * sheet has one figure for, they share its line: `left 1 turn out; right 1-1/4 turns out`.
 */
export function cardReadings({ record, assessed }: JudgedRecord): CardReadings {
  const simple = assessed.rule === 'simple';
  const fromTable = assessed.entries.some(({ found, left }) => isFromTable(left ?? found));
  const settings = new Map<string, CardReading[]>();
  for (const entry of assessed.entries) {
    const { setting } = entry;
    const place = entry.place !== null && setting.places.has(entry.place) ? entry.place : null;
    const readings = settings.get(setting.name.value) ?? [];
    settings.set(setting.name.value, readings);
    const reading = cardReading(entry, place, simple);
    const shared = readings.findIndex((other) => other.place === place);
    const first = readings[shared];
    if (first === undefined) readings.push(reading);
    else readings[shared] = joined(first, reading);
  }
  return {
    serial: record.serial?.value ?? null,
    by: record.by?.value ?? null,
    date: record.date?.value ?? null,
    rule: `${ruleWords(assessed.rule)}${fromTable ? `; ${mark} ${tableSource}` : ''}.`,
    settings,
  };
}

/** Stands behind an uncertainty that is an ordinary instrument's and not the record's own. */
const mark = '*';
const tableSource = "an ordinary instrument's: common practice, no source";

function isFromTable(assessed: Assessed | null): boolean {
  return assessed?.form === 'size' && assessed.trust.basis === 'table';
}

/** `caliper ± 0.002 in*`: the columns of a card have no room for the reason. */
function trustMark({ trust, unit }: AssessedSize): string | null {
  const { gauge, value, basis } = trust;
  if (value === null) return gauge;
  const uncertainty = `± ${figure(value, unit)}${basis === 'table' ? mark : ''}`;
  return gauge === null ? uncertainty : `${gauge} ${uncertainty}`;
}

function cardReading(entry: AssessedEntry, place: string | null, simple: boolean): CardReading {
  const { found, left, gauge } = entry;
  const own = place === null && entry.place !== null ? `${entry.place} ` : '';
  const told = (assessed: Assessed | null) =>
    assessed === null ? null : `${own}${readingText(assessed)}`;
  const shown = left ?? found;
  const word = left === null ? null : verdictWord(left);
  const judged = word !== null && word !== 'no limits';
  return {
    place,
    found: told(found),
    left: told(left),
    gauge: shown?.form === 'size' ? trustMark(shown) : gauge,
    verdict: word === null ? null : `${own}${word}${judged && simple ? ' (simple)' : ''}`,
  };
}

/** Two readings on one line; a gauge that served both is named once. */
function joined(first: CardReading, second: CardReading): CardReading {
  const both = (one: string | null, other: string | null) =>
    one === null || one === other ? other : other === null ? one : `${one}; ${other}`;
  return {
    place: first.place,
    found: both(first.found, second.found),
    left: both(first.left, second.left),
    gauge: both(first.gauge, second.gauge),
    verdict: both(first.verdict, second.verdict),
  };
}
