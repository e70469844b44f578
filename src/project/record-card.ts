import {
  type Assessed,
  type AssessedEntry,
  type AssessedSize,
  readingText,
  ruleWords,
  uncertaintyFigure,
  verdictWord,
} from '../conformance/index.ts';
import type { CardReading, CardReadings } from '../press/index.ts';
import type { JudgedRecord } from '../report/index.ts';

/**
 * What a card is filled in with from a judged record. Where a record tells places apart that the
 * sheet has one figure for, they share its line: `left 1 turn out; right 1-1/4 turns out`.
 */
export function cardReadings({
  record,
  assessed,
}: Pick<JudgedRecord, 'record' | 'assessed'>): CardReadings {
  const fromTable = assessed.entries.some(({ found, left }) => isFromTable(left ?? found));
  const lines = new Map<string, Map<string | null, AssessedEntry[]>>();
  for (const entry of assessed.entries) {
    const { setting } = entry;
    const place = entry.place !== null && setting.places.has(entry.place) ? entry.place : null;
    const places = lines.get(setting.name.value) ?? new Map<string | null, AssessedEntry[]>();
    lines.set(setting.name.value, places);
    places.set(place, [...(places.get(place) ?? []), entry]);
  }
  const simple = assessed.rule === 'simple';
  const settings = [...lines].map(([name, places]): [string, CardReading[]] => [
    name,
    [...places].map(([place, entries]) => cardReading(place, entries, simple)),
  ]);
  return {
    serial: record.serial?.value ?? null,
    by: record.by?.value ?? null,
    date: record.date?.value ?? null,
    rule: `${ruleWords(assessed.rule)}${fromTable ? `; ${mark} ${tableSource}` : ''}.`,
    settings: new Map(settings),
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
  const { gauge, ofGauge: value, basis } = trust;
  if (value === null) return gauge;
  const uncertainty = `± ${uncertaintyFigure(value, unit)}${basis === 'table' ? mark : ''}`;
  return gauge === null ? uncertainty : `${gauge} ${uncertainty}`;
}

function cardReading(
  place: string | null,
  entries: readonly AssessedEntry[],
  simple: boolean,
): CardReading {
  const told = (tell: (entry: AssessedEntry) => string | null) => shared(place, entries, tell);
  return {
    place,
    found: told(({ found }) => (found === null ? null : readingText(found))),
    left: told(({ left }) => (left === null ? null : readingText(left))),
    gauge: told(({ found, left, gauge }) => {
      const shown = left ?? found;
      return shown?.form === 'size' ? trustMark(shown) : gauge;
    }),
    verdict: told(({ left }) => {
      if (left === null) return null;
      const word = verdictWord(left);
      return simple && word !== 'no limits' ? `${word} (simple)` : word;
    }),
  };
}

/** What the entries of one line say: once where all say the same, else each with its place. */
function shared(
  place: string | null,
  entries: readonly AssessedEntry[],
  tell: (entry: AssessedEntry) => string | null,
): string | null {
  const told = entries.map((entry) => ({ entry, text: tell(entry) }));
  const [first] = told;
  if (first !== undefined && told.every(({ text }) => text === first.text)) return first.text;
  const parts = told.flatMap(({ entry, text }) => {
    if (text === null) return [];
    return [entry.place === null || entry.place === place ? text : `${entry.place} ${text}`];
  });
  return parts.join('; ');
}
