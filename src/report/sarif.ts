import type { Check } from '../checks/index.ts';
import type { Region } from '../text/index.ts';
import { jsonText } from '../text/index.ts';
import type { FileReport, PlacedFinding, Refused } from './placed.ts';

export interface SarifOptions {
  readonly checks: readonly Pick<Check, 'id' | 'severity' | 'group' | 'summary' | 'explain'>[];
  /** The tool's own version, as `package.json` states it. */
  readonly version: string;
  readonly refused?: readonly Refused[];
}

const schema =
  'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

function region(place: Region) {
  return {
    startLine: place.line,
    startColumn: place.column,
    endLine: place.endLine,
    endColumn: place.endColumn,
  };
}

function artifactLocation(file: string) {
  // `%SRCROOT%` is the base that readers resolve against their own checkout: no machine's path.
  const absolute = file.startsWith('/');
  const uri = file.split('/').map(encodeURIComponent).join('/');
  return absolute ? { uri: `file://${uri}` } : { uri, uriBaseId: '%SRCROOT%' };
}

function result(finding: PlacedFinding, rules: ReadonlyMap<string, number>) {
  const ruleIndex = rules.get(finding.name);
  const location = (place: Region, file = finding.file) => ({
    physicalLocation: {
      artifactLocation: artifactLocation(file),
      region: region(place),
    },
  });
  return {
    ruleId: finding.name,
    ...(ruleIndex === undefined ? {} : { ruleIndex }),
    level: finding.severity,
    message: {
      text: finding.fix === null ? finding.message : `${finding.message}\nfix: ${finding.fix}`,
    },
    locations: [location(finding)],
    ...(finding.related.length === 0
      ? {}
      : {
          relatedLocations: finding.related.map((place, index) => ({
            id: index + 1,
            ...location(place, place.file),
            message: { text: place.label },
          })),
        }),
    ...(finding.edits === null || finding.edits.length === 0
      ? {}
      : {
          fixes: [
            {
              description: { text: finding.fix ?? finding.message },
              artifactChanges: [
                {
                  artifactLocation: artifactLocation(finding.file),
                  replacements: finding.edits.map((edit) => ({
                    deletedRegion: region(edit),
                    insertedContent: { text: edit.text },
                  })),
                },
              ],
            },
          ],
        }),
    // An empty list says "known not to be suppressed" (SARIF 2.1.0, 3.27.23).
    suppressions:
      finding.accepted === null
        ? []
        : [{ kind: 'inSource', status: 'accepted', justification: finding.accepted }],
  };
}

function rule(check: SarifOptions['checks'][number]) {
  return {
    id: check.id,
    shortDescription: { text: check.summary },
    fullDescription: { text: check.explain },
    help: { text: check.explain },
    defaultConfiguration: { level: check.severity },
    properties: { tags: [check.group] },
  };
}

/**
 * All findings as one SARIF 2.1.0 log. Its rules come from the checks themselves; columns count
 * UTF-16 units; an accepted finding is carried as suppressed, with the editor's reason.
 */
export function toSarif(reports: readonly FileReport[], options: SarifOptions): string {
  const rules = new Map(options.checks.map((check, index) => [check.id, index] as const));
  const refused = options.refused ?? [];
  const log = {
    $schema: schema,
    version: '2.1.0',
    runs: [
      {
        tool: {
          driver: {
            name: 'gaugeleaf',
            semanticVersion: options.version,
            rules: options.checks.map(rule),
          },
        },
        columnKind: 'utf16CodeUnits',
        invocations: [
          {
            executionSuccessful: refused.length === 0,
            toolExecutionNotifications: refused.map(({ file, message }) => ({
              level: 'error',
              message: { text: message },
              locations: [{ physicalLocation: { artifactLocation: artifactLocation(file) } }],
            })),
          },
        ],
        results: reports.flatMap((report) =>
          report.findings.map((finding) => result(finding, rules)),
        ),
      },
    ],
  };
  return `${jsonText(log, 2)}\n`;
}
