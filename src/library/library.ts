import { allChecks, type CheckContext, type CheckId, examineParsed } from '../checks/index.ts';
import { gaugeBook, sizeFacts } from '../gauges/index.ts';
import { builtInKinds, readKind } from '../kinds/index.ts';
import { exportRows } from '../report/export/index.ts';
import { findingJson, placeSheet, sizeJson, unreadSizeJson } from '../report/index.ts';
import { readSheet } from '../sheet/index.ts';
import type {
  Around,
  Examination,
  FoundThing,
  KnownSize,
  ToldFinding,
  UnknownSize,
} from './model.ts';

/** The check of a file's name. */
const NAME: CheckId = 'sheet-misnamed';

/**
 * Reads the text of a sheet and checks it by itself: what needs its folder (pictures, a sheet that it is
 * based on, other sheets) is not looked for. Never throws for what the text says; fails with a
 * `RangeError` where one of `kinds` is no kind of unit.
 */
export function examine(text: string, around: Around = {}): Examination {
  const { altitude = null, wireGauge = null } = around;
  const context: CheckContext = {
    gauges: gaugeBook(),
    kinds: kindsWith(around.kinds ?? []),
    wireGauge,
    altitude,
    picture: null,
  };
  const sheet = readSheet(text, around.file ?? 'sheet.md', context);
  const found = examineParsed(sheet, context);
  // A text without a file has no name that could be another one than its own.
  const named = around.file === undefined ? found.filter(({ check }) => check !== NAME) : found;
  const placed = placeSheet(sheet, named);
  return {
    findings: placed.flatMap((report) =>
      report.findings.map((finding) => JSON.parse(findingJson(finding)) as FoundThing),
    ),
    settings: exportRows([{ sheet }]),
  };
}

/** Reads one size as a manual prints it. Never throws for what the text says. */
export function readSize(
  text: string,
  { wireGauge = null }: { readonly wireGauge?: 'imperial' | 'us-steel' | null } = {},
): KnownSize | UnknownSize {
  const answer = sizeFacts(text, wireGauge);
  return JSON.parse(
    answer.ok ? sizeJson(text, answer.facts) : unreadSizeJson(text, answer.problem),
  ) as KnownSize | UnknownSize;
}

/** Every finding that there is, with what it means. */
export function findings(): readonly ToldFinding[] {
  return allChecks.map(({ id, severity, summary, explain }) => ({
    name: id,
    severity,
    summary,
    explain,
  }));
}

function kindsWith(texts: readonly string[]): CheckContext['kinds'] {
  const kinds = new Map(builtInKinds());
  for (const [index, text] of texts.entries()) {
    const { kind, problems } = readKind(text, `kind ${index + 1}`);
    if (kind === null) {
      const [first] = problems;
      throw new RangeError(
        `kinds[${index}] is no kind of unit: ${first?.message ?? 'it is empty'}`,
      );
    }
    kinds.set(kind.name, kind);
  }
  return kinds;
}
