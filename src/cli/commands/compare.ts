import { compareEditions } from '../../compare/index.ts';
import type { SlipOrder } from '../../press/index.ts';
import {
  editionNamed,
  flate,
  type Project,
  Projects,
  projectSnapshot,
  readTemplates,
  sizeReading,
} from '../../project/index.ts';
import { comparisonText, paint } from '../../report/index.ts';
import { jsonText } from '../../text/index.ts';
import { type Io, say, usesColor, widthOf } from '../io.ts';
import { outlet } from '../outlet.ts';
import { browserFor, deliver, type PrintOptions } from '../printing.ts';
import { startProgress } from '../progress.ts';
import type { ExitStatus } from '../run.ts';
import { styleStops } from '../style-stops.ts';

export interface CompareOptions extends Pick<PrintOptions, 'paper' | 'out' | 'browser'> {
  readonly format: 'text' | 'json';
  /** An errata slip in place of the comparison. */
  readonly slip?: boolean;
}

/**
 * `gaugeleaf compare`: what one edition says otherwise than another; without a second, this project
 * as it stands. Ends with 1 where a released sheet changed and its revision did not rise.
 */
export async function compare(
  before: string,
  after: string | undefined,
  options: CompareOptions,
  io: Io,
): Promise<ExitStatus> {
  const project = new Projects(io.cwd).of(io.cwd);
  const old = editionNamed(before, project, io.cwd);
  const now =
    after === undefined
      ? { snapshot: projectSnapshot(project), label: 'the sheets as they stand' }
      : editionNamed(after, project, io.cwd);
  const changes = compareEditions(old.snapshot, now.snapshot, sizeReading(project));
  if (options.slip === true) {
    const labels = { before: old.label, after: after === undefined ? 'new edition' : now.label };
    const printed = await slip(
      { changes, before: old.snapshot, after: now.snapshot, labels },
      project,
      options,
      io,
    );
    if (!printed) return 1;
  } else if (options.format === 'json') {
    io.stdout.write(`${jsonText(changes, 2)}\n`);
  } else {
    const color = paint(usesColor(io, io.stdout));
    const labels = { before: old.label, after: now.label };
    io.stdout.write(comparisonText(changes, labels, { color, width: widthOf(io.stdout) }));
  }
  const unraised = changes.sheets.filter((sheet) => sheet.unraised && sheet.status === 'released');
  for (const { id, revisions } of unraised) {
    say(
      io,
      `gaugeleaf: ${id} is released and changed, but its revision is still ${revisions.after ?? 'not given'}: ` +
        `write \`revision: ${(revisions.before ?? 0) + 1}\``,
    );
  }
  return unraised.length > 0 ? 1 : 0;
}

/** Prints the errata slip; false where it has a fault that holds it back. */
async function slip(
  compared: Pick<SlipOrder, 'changes' | 'before' | 'after' | 'labels'>,
  project: Project,
  options: CompareOptions,
  io: Io,
): Promise<boolean> {
  if (await styleStops([project], io)) return false;
  const progress = startProgress(io);
  io.expectLongWork?.();
  const press = await import('../../press/index.ts');
  const browser = await browserFor(options, io, progress);
  const edition = project.edition().edition;
  const printed = await press.printSlip({
    ...compared,
    edition: edition?.facts ?? null,
    paper: options.paper ?? edition?.paper ?? 'letter',
    templates: readTemplates(project.root),
    flate,
    browser,
  });
  progress.clear();
  const path = outlet(options.out, 'corrections.pdf', project, io);
  return deliver(printed, path, false, project.show, io);
}
