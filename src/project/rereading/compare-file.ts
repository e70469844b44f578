import { wireGaugeNamed } from '../../quantity/index.ts';
import { type FileReport, placeFindings, type Refused } from '../../report/index.ts';
import { askedOf, compareReading, readableSources } from '../../rereading/index.ts';
import type { Comparison, ReadingFault, SecondReading } from '../../rereading/model.ts';
import type { Sheet } from '../../sheet/model.ts';
import { nearestName } from '../../text/index.ts';
import { type Examined, examineFile } from '../examine-file.ts';
import type { Project } from '../project.ts';
import { wordsDigest } from './digest.ts';
import { type ReadingFile, readingFindings, readReadingFile } from './reading-file.ts';

/** A second reading held against its sheet, with both. */
export interface ComparedReading {
  readonly compared: Comparison;
  readonly file: ReadingFile;
  readonly examined: Examined & { readonly ok: true };
}

/** A second reading held against its sheet, what is wrong with it, or why its sheet can't be read. */
export type ComparedFile =
  | ComparedReading
  | { readonly report: FileReport }
  | { readonly refused: Refused };

/** Reads a second reading at an absolute path and compares it. Fails with `Refusal` where there is none. */
export function compareReadingFile(project: Project, path: string): ComparedFile {
  const file = readReadingFile(project, path);
  if (file.reading === null || file.sheet === null) return { report: reportOf(file, file.faults) };
  const examined = examineFile(project, file.sheet);
  if (!examined.ok) return { refused: examined.refused };
  const faults = strangeAnswers(file.reading, examined.sheet);
  if (faults.length > 0) return { report: reportOf(file, faults) };
  return { compared: compareWith(project, file.reading, examined), file, examined };
}

/** Holds a second reading against a sheet as it was read. */
export function compareWith(
  project: Project,
  reading: SecondReading,
  { sheet, path }: { readonly sheet: Sheet; readonly path: string },
): Comparison {
  const context = project.context(path);
  const swg = wireGaugeNamed(sheet.wireGauge?.value ?? context.wireGauge);
  return compareReading(reading, sheet, {
    read: { gauges: context.gauges, swg },
    sheets: context,
    digest: wordsDigest,
  });
}

/** A source that the sheet does not cite: every answer would be passed over. */
function strangeAnswers({ source }: SecondReading, sheet: Sheet): readonly ReadingFault[] {
  const sources = [...readableSources(sheet).keys()];
  if (sources.includes(source.value)) return [];
  const near = nearestName(source.value, sources);
  return [
    {
      span: source.span,
      message: `${sheet.file} cites no source \`${source.value}\` that can be read a second time`,
      fix:
        near !== null
          ? `did you mean \`${near}\`?`
          : askedOf(sheet).length === 0
            ? 'cite the papers on the sheet first, with their pages'
            : `name one of ${sources.join(', ')}`,
    },
  ];
}

function reportOf({ file, text }: ReadingFile, faults: readonly ReadingFault[]): FileReport {
  const { findings, lines } = readingFindings(file, text, faults);
  return { file, findings: placeFindings(findings, lines) };
}
