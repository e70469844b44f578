import { realpathSync } from 'node:fs';
import { validate } from '../../generated/validate-reading.js';
import { readReading } from '../../rereading/index.ts';
import type { ReadingFault, SecondReading } from '../../rereading/model.ts';
import { nearestName } from '../../text/index.ts';
import { type FileFaults, fileFaults } from '../file-faults.ts';
import { fileId } from '../file-id.ts';
import type { Project } from '../project.ts';
import { readOwnText } from '../read-text.ts';
import { causeInWords, Refusal } from '../refusal.ts';

/** The file of a second reading, with the sheet that it belongs to. */
export interface ReadingFile {
  /** Absolute, links resolved. */
  readonly path: string;
  /** As reports show it. */
  readonly file: string;
  readonly text: string;
  /** Null, with the reasons in `faults`, where it cannot be read or its sheet is not there. */
  readonly reading: SecondReading | null;
  /** Absolute path of its sheet; null where there is none. */
  readonly sheet: string | null;
  readonly faults: readonly ReadingFault[];
}

/**
 * Reads the second reading at an absolute path. Mistakes in it come back as faults; fails with `Refusal`
 * where there is no such file, or none that is text.
 */
export function readReadingFile(
  project: Pick<Project, 'root' | 'show' | 'sheets'>,
  path: string,
): ReadingFile {
  const file = project.show(path);
  let real: string;
  try {
    real = realpathSync(path);
  } catch (error) {
    throw new Refusal(
      `the second reading ${file} cannot be read: ${causeInWords(error)}`,
      'to begin one, name the sheet: gaugeleaf reread orlo-t71-wexcombe-six',
    );
  }
  const read = readOwnText(project.root, real, file);
  if (!read.ok) throw new Refusal(read.message, read.fix);
  const { text } = read;
  const bare = { path: real, file, text, reading: null, sheet: null };
  if (read.fault !== null) {
    const { start, end, message, fix } = read.fault;
    return { ...bare, faults: [{ span: { start, end }, message, fix }] };
  }
  const { reading, faults } = readReading(text, validate);
  if (reading === null) return { ...bare, faults };
  const sheets = project.sheets();
  const sheet = sheets.find((each) => fileId(each) === reading.sheet.value) ?? null;
  if (sheet !== null) return { ...bare, reading, sheet, faults };
  const near = nearestName(reading.sheet.value, sheets.map(fileId));
  const missing: ReadingFault = {
    span: reading.sheet.span,
    message: `this project has no sheet \`${reading.sheet.value}\``,
    fix: near === null ? 'correct the name of the sheet' : `did you mean \`${near}\`?`,
  };
  return { ...bare, faults: [...faults, missing] };
}

/** The faults of a second reading as findings, by place. */
export function readingFindings(
  file: string,
  text: string,
  faults: readonly ReadingFault[],
): FileFaults {
  return fileFaults(
    file,
    text,
    faults.map((fault) => ({ check: 'reading-invalid', ...fault })),
  );
}
