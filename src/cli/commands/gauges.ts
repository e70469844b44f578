import { fileId, flate, Projects, readTemplates, sheetNamed } from '../../project/index.ts';
import { type Io, say } from '../io.ts';
import { outlet } from '../outlet.ts';
import {
  browserFor,
  candidate,
  deliver,
  type PrintOptions,
  stopReports,
  tellStops,
} from '../printing.ts';
import { startProgress } from '../progress.ts';
import type { ExitStatus } from '../run.ts';
import { styleStops } from '../style-stops.ts';

/**
 * `gaugeleaf gauges`: the settings of a sheet that paper is fine enough for, as gauges to cut out. 1
 * where findings stop the press; fails with `PressStopped` where paper will do for no setting.
 */
export async function gauges(name: string, options: PrintOptions, io: Io): Promise<ExitStatus> {
  const { project, path } = sheetNamed(name, new Projects(io.cwd), io.cwd);
  const found = candidate(project, path, io);
  if (found === null) return 2;
  const proof = options.proof === true;
  if (found.stops.length > 0 && !proof) {
    tellStops(stopReports(found), 1, io);
    return 1;
  }
  if (await styleStops([project], io)) return 1;
  const progress = startProgress(io);
  io.expectLongWork?.();
  const { printPaperGauges } = await import('../../press/index.ts');
  const edition = project.edition().edition;
  const printed = await printPaperGauges({
    ...found,
    edition: edition?.facts ?? null,
    paper: options.paper ?? edition?.cardPaper ?? 'letter',
    templates: readTemplates(project.root),
    browser: await browserFor(options, io, progress),
    flate,
    draft: proof,
  });
  progress.clear();
  const stem = fileId(path);
  const out = outlet(options.out, `${stem}-gauges${proof ? '-proof' : ''}.pdf`, project, io);
  if (!deliver(printed, out, proof, project.show, io)) return 1;
  const count = printed.count === 1 ? '1 gauge' : `${printed.count} gauges`;
  say(io, `${count}: print at 100 %, and measure the bars before you cut`);
  for (const { why, settings } of printed.refused) say(io, `not for paper: ${settings} (${why})`);
  return 0;
}
