import { validate } from '../../generated/validate-reading.js';
import { readReading } from '../../rereading/index.ts';
import type { ReadingFault, SecondReading } from '../../rereading/model.ts';
import { type FileFaults, fileFaults } from '../file-faults.ts';
import { sheetItNames, textOfSheet } from '../file-of-sheet.ts';
import type { Project } from '../project.ts';

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
  const { fault, ...read } = textOfSheet(project, path, {
    called: 'second reading',
    begins: 'reread',
  });
  const bare = { ...read, reading: null, sheet: null };
  if (fault !== null) return { ...bare, faults: [fault] };
  const { reading, faults } = readReading(read.text, validate);
  if (reading === null) return { ...bare, faults };
  const named = sheetItNames(project, reading.sheet.value);
  return 'sheet' in named
    ? { ...bare, reading, ...named, faults }
    : { ...bare, faults: [...faults, { span: reading.sheet.span, ...named }] };
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
