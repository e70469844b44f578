import {
  type Assessed,
  isAllRight,
  limitsText,
  readingText,
  reasonFor,
  uncertaintyFigure,
  verdictWord,
} from '../conformance/index.ts';
import { settingLabel, tasksOf } from '../sheet/index.ts';
import { jsonText } from '../text/index.ts';
import { findingJson } from './json.ts';
import type { JudgedRecord } from './judged-record.ts';
import type { FileReport } from './placed.ts';

/** A judged record as one JSON object, on one line; the same figures as the table. */
export function recordJson(judged: JudgedRecord): string {
  const { file, record, sheet, assessed, tally, report } = judged;
  const { settings } = tasksOf(sheet);
  return `${jsonText({
    file,
    sheet: record.sheet.value,
    title: sheet.title?.value ?? null,
    revision: record.revision?.value ?? null,
    serial: record.serial?.value ?? null,
    by: record.by?.value ?? null,
    date: record.date?.value ?? null,
    place: record.place?.value ?? null,
    altitude: record.altitude?.value ?? null,
    barometer: record.barometer?.value ?? null,
    temperature: record.temperature?.value ?? null,
    rule: assessed.rule === 'simple' ? 'simple acceptance' : 'guarded acceptance',
    conforms: isAllRight(tally),
    counts: tally,
    settings: assessed.entries.map(({ setting, place, wanted, found, left }) => ({
      setting: setting.name.value,
      number: settings.find((each) => each.setting === setting)?.number,
      label: settingLabel(setting),
      place,
      wanted: wanted.text,
      limitsFrom: wanted.limitsFrom ?? undefined,
      carried: wanted.carried ?? undefined,
      found: reading(found, wanted.text),
      left: reading(left, wanted.text),
    })),
    missing: assessed.missing.map((setting) => setting.name.value),
    findings: findings(report),
  })}\n`;
}

/** A record in which nothing could be judged, with what is wrong in it. */
export function faultyRecordJson(report: FileReport): string {
  return `${jsonText({ file: report.file, settings: [], findings: findings(report) })}\n`;
}

function findings(report: FileReport): unknown[] {
  return report.findings.map((finding) => JSON.parse(findingJson(finding)));
}

function reading(assessed: Assessed | null, wanted: string): object | null {
  if (assessed === null) return null;
  const told = {
    reading: readingText(assessed),
    verdict: verdictWord(assessed),
    reason: reasonFor(assessed, wanted),
  };
  if (assessed.form === 'condition') return told;
  const { judgment, limits, probability, trust, unit } = assessed;
  return {
    ...told,
    gauge: trust.gauge,
    uncertainty: trust.value === null ? null : uncertaintyFigure(trust.value, unit),
    uncertaintyFrom: trust.source ?? trust.basis,
    limits: limitsText(limits, unit),
    accepted: judgment === null || judgment.hopeless ? null : limitsText(judgment.accepted, unit),
    probability: probability === null ? null : Number(probability.toFixed(4)),
  };
}
