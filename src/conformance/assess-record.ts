import type { ReadOptions } from '../quantity/index.ts';
import type { Statement } from '../quantity/model.ts';
import { settingNamed } from '../sheet/index.ts';
import type { Setting, Sheet } from '../sheet/model.ts';
import { nearestName, type Span } from '../text/index.ts';
import { type Assessed, assess } from './assess.ts';
import type { AcceptanceRule } from './model.ts';
import { takeReading } from './reading.ts';
import type { BenchRecord, RecordEntry, RecordFault, WrittenReading } from './record.ts';
import { type CarriedFigures, type Wanted, wantedOf, wantedThere } from './stated-limits.ts';

/** One setting of a record, or one place of it, judged. */
export interface AssessedEntry {
  readonly setting: Setting;
  readonly place: string | null;
  readonly wanted: Wanted;
  readonly found: Assessed | null;
  readonly left: Assessed | null;
  /** The gauge that the record names, in words. */
  readonly gauge: string | null;
}

/** A record held against its sheet. */
export interface AssessedRecord {
  readonly rule: AcceptanceRule;
  /** In the order of the record; entries with an error are left out. */
  readonly entries: readonly AssessedEntry[];
  /** Settings of the sheet that the record does not have at all. */
  readonly missing: readonly Setting[];
  /** By place in the file. */
  readonly faults: readonly RecordFault[];
}

/** Where a record was taken, and how the sheet's figures are carried there. */
export interface RecordPlace {
  /**
   * Null for a setting that reads alike everywhere; `unsaid` for one that does not, where the record
   * states neither altitude nor barometer.
   */
  carriedFor(setting: Setting, statement: Statement): CarriedFigures | 'unsaid' | null;
  /** What is amiss with the altitude or barometer that it states. */
  readonly faults: readonly RecordFault[];
}

const NOWHERE: RecordPlace = { carriedFor: () => null, faults: [] };

/** Holds every reading of a record against the sheet as it stands now. Never throws. */
export function assessRecord(
  record: BenchRecord,
  sheet: Sheet,
  rule: AcceptanceRule,
  options: ReadOptions,
  place: RecordPlace = NOWHERE,
): AssessedRecord {
  const faults: RecordFault[] = [...unsaid(record), ...place.faults];
  const entries: AssessedEntry[] = [];
  const seen = new Set<Setting>();
  let changed = false;
  for (const entry of record.entries) {
    const setting = settingNamed(entry.setting.value, sheet);
    if (setting === null) {
      faults.push(noSuchSetting(entry, sheet));
      continue;
    }
    seen.add(setting);
    const wanted = wantedOf(setting, entry.place?.value ?? null);
    if (wanted === null) {
      faults.push(placeFault(entry, setting));
      continue;
    }
    if (entry.wanted !== null && entry.wanted.value.trim() !== wanted.text.trim()) {
      changed = true;
      faults.push(outdated(entry.wanted.span, entry.wanted.value, wanted.text));
    }
    const by = wanted.statement && place.carriedFor(setting, wanted.statement);
    const there = by === null || by === 'unsaid' ? wanted : wantedThere(wanted, by);
    if (by === 'unsaid') faults.push(placeUnsaid(entry));
    const { found, left, problems } = judged(entry, setting, there, rule, options);
    faults.push(...problems);
    entries.push({
      setting,
      place: entry.place?.value ?? null,
      wanted: there,
      found,
      left,
      gauge: entry.gauge?.value ?? null,
    });
  }
  faults.push(...revisionFault(record, sheet, changed));
  faults.sort((first, second) => first.span.start - second.span.start);
  const missing = [...sheet.settings.values()].filter((setting) => !seen.has(setting));
  return { rule, entries, missing, faults };
}

function placeUnsaid({ setting }: RecordEntry): RecordFault {
  return {
    kind: 'incomplete',
    span: setting.span,
    message: `${setting.value} reads less the higher the shop lies, and the record says neither \`altitude\` nor \`barometer\``,
    fix: "say one of them; until then the sheet's figure counts as it stands",
  };
}

function judged(
  entry: RecordEntry,
  setting: Setting,
  wanted: Wanted,
  rule: AcceptanceRule,
  options: ReadOptions,
): { found: Assessed | null; left: Assessed | null; problems: RecordFault[] } {
  const problems: RecordFault[] = [];
  const one = (written: WrittenReading | null): Assessed | null => {
    if (written === null || written.form === 'as-found') return null;
    const { statement } = wanted;
    const span = spanOf(written);
    if (statement === null) {
      const message = `the sheet's own figure for ${setting.name.value}, ${wanted.text}, cannot be read`;
      problems.push({ kind: 'invalid', span, message, fix: 'mend the sheet first' });
      return null;
    }
    const taken = takeReading(written, statement, setting, options);
    if ('fault' in taken) {
      problems.push(taken.fault);
      return null;
    }
    const assessed = assess(taken, entry, wanted, rule, options);
    if (!('fault' in assessed)) return assessed;
    const place = entry.uncertainty?.span ?? span;
    if (!problems.some((problem) => problem.span.start === place.start)) {
      problems.push({ kind: 'invalid', span: place, ...assessed.fault });
    }
    return null;
  };
  const found = one(entry.found);
  const asFound = entry.left?.form === 'as-found';
  if (entry.left?.form === 'as-found' && entry.found === null) {
    problems.push({
      kind: 'invalid',
      span: entry.left.span,
      message: '`left` is as found, and `found` says nothing',
      fix: 'write the as-found reading',
    });
  }
  if (entry.found?.form === 'as-found') {
    problems.push({
      kind: 'invalid',
      span: entry.found.span,
      message: '`found` is the reading itself, and it says only that it is as found',
      fix: 'write what was read',
    });
  }
  return { found, left: asFound ? found : one(entry.left), problems };
}

function spanOf(written: Exclude<WrittenReading, { form: 'as-found' }>): Span {
  return written.form === 'size' ? written.text.span : written.span;
}

function noSuchSetting({ setting }: RecordEntry, sheet: Sheet): RecordFault {
  const near = nearestName(setting.value, sheet.settings.keys());
  return {
    kind: 'invalid',
    span: setting.span,
    message: `the sheet ${sheet.file} has no setting \`${setting.value}\``,
    fix: near === null ? 'take it out, or name it as the sheet does' : `did you mean \`${near}\`?`,
  };
}

/** Of a table: readings belong to stations, and none outside of it can be judged. */
function stationFault({ setting: named, place }: RecordEntry, setting: Setting): RecordFault {
  const first = setting.rows[0]?.station?.text ?? '';
  const last = setting.rows.at(-1)?.station?.text ?? '';
  if (place === null) {
    return {
      kind: 'invalid',
      span: named.span,
      message: `${named.value} is a table from ${first} to ${last}`,
      fix: 'put the readings under `places:`, each under its station',
    };
  }
  return {
    kind: 'invalid',
    span: place.span,
    message: `${place.value} is no station of ${named.value}, whose table goes from ${first} to ${last}`,
    fix: 'read it at a station of the table or between two, and write that with its unit',
  };
}

function placeFault(entry: RecordEntry, setting: Setting): RecordFault {
  const { setting: named, place } = entry;
  if (setting.rows.length > 0) return stationFault(entry, setting);
  const places = [...setting.places.keys()].join(', ');
  if (place === null) {
    return {
      kind: 'invalid',
      span: named.span,
      message: `the sheet states ${named.value} place by place: ${places}`,
      fix: 'put the readings under `places:`, each under the name of its place',
    };
  }
  const near = nearestName(place.value, setting.places.keys());
  return {
    kind: 'invalid',
    span: place.span,
    message: `the sheet has no ${place.value} of ${named.value}; it has ${places}`,
    fix: near === null ? `write one of ${places}` : `did you mean \`${near}\`?`,
  };
}

function outdated(span: Span, then: string, now: string): RecordFault {
  return {
    kind: 'outdated',
    span,
    message: `${then} was wanted when this was measured, and the sheet now says ${now}`,
    fix: `the reading is judged by ${now}; write that here once the unit has been looked at again`,
  };
}

function revisionFault(record: BenchRecord, sheet: Sheet, changed: boolean): RecordFault[] {
  const then = record.revision;
  const now = sheet.revision?.value ?? null;
  if (then === null || now === null || then.value === now) return [];
  const older = then.value < now;
  return [
    {
      kind: 'outdated',
      span: then.span,
      message: older
        ? `the record was made by revision ${then.value} of the sheet, which is now at revision ${now}`
        : `the record was made by revision ${then.value} of the sheet, and the one here is revision ${now}`,
      fix: older
        ? changed
          ? 'see which of its figures have changed since, below'
          : `none of the figures it names has changed: write revision: ${now}`
        : 'get the newer sheet',
    },
  ];
}

function unsaid(record: BenchRecord): RecordFault[] {
  const keys = (['serial', 'by', 'date'] as const).filter((key) => record[key] === null);
  if (keys.length === 0) return [];
  return [
    {
      kind: 'incomplete',
      span: record.sheet.span,
      message: `the record does not say ${keys.map((key) => `\`${key}\``).join(', ')}`,
      fix: 'fill it in: a reading that nobody signed for proves nothing later',
    },
  ];
}
