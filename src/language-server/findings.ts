import {
  type Diagnostic,
  type DiagnosticRelatedInformation,
  DiagnosticSeverity,
} from 'vscode-languageserver/node';
import type { Severity } from '../checks/index.ts';
import { findings } from '../desk/index.ts';
import type { DeskDocument } from '../desk/model.ts';
import type { FileFaults } from '../project/index.ts';
import { type PlacedFinding, placeFindings } from '../report/index.ts';
import { LineIndex } from '../text/index.ts';
import { rangeOf, rangeOfRegion, uriOf } from './places.ts';
import type { Shelf } from './shelf.ts';

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  note: DiagnosticSeverity.Information,
};

/** The name that editors show beside a finding. */
const source = 'gaugeleaf';

/** The findings of a sheet by itself; what its editor accepted is not shown. */
export function sheetDiagnostics(document: DeskDocument, shelf: Shelf): Diagnostic[] {
  const linesOf = new Map([[document.file, document.lines]]);
  for (const { file, text } of document.sheet.family?.members ?? []) {
    if (!linesOf.has(file)) linesOf.set(file, new LineIndex(text));
  }
  return findings(document)
    .filter(({ accepted }) => accepted === null)
    .map(({ check, severity, span, message, fix, related }) => {
      const relatedInformation = related.flatMap((place): DiagnosticRelatedInformation[] => {
        const lines = linesOf.get(place.file);
        if (lines === undefined) return [];
        const uri = uriOf(shelf.pathOf(place.file));
        return [{ location: { uri, range: rangeOf(place.span, lines) }, message: place.label }];
      });
      return {
        range: rangeOf(span, document.lines),
        severity: severities[severity],
        code: check,
        source,
        message: worded(message, fix),
        ...(relatedInformation.length > 0 ? { relatedInformation } : {}),
      };
    });
}

/** Findings whose places are known already: those between sheets, and those of other files. */
export function placedDiagnostics(
  found: readonly PlacedFinding[],
  pathOf: (file: string) => string,
): Diagnostic[] {
  return found
    .filter(({ accepted }) => accepted === null)
    .map((finding) => ({
      range: rangeOfRegion(finding),
      severity: severities[finding.severity],
      code: finding.name,
      source,
      message: worded(finding.message, finding.fix),
      ...(finding.related.length > 0
        ? {
            relatedInformation: finding.related.map(({ label, file, ...region }) => ({
              location: { uri: uriOf(pathOf(file ?? finding.file)), range: rangeOfRegion(region) },
              message: label,
            })),
          }
        : {}),
    }));
}

/** The faults of an edition file, `sources.yaml` or a file of a kind. */
export function faultDiagnostics(
  { findings: found, lines }: FileFaults,
  pathOf: (file: string) => string,
): Diagnostic[] {
  return placedDiagnostics(placeFindings(found, lines), pathOf);
}

function worded(message: string, fix: string | null): string {
  return fix === null ? message : `${message}\nfix: ${fix}`;
}
