import { samplesOf, summaryOf } from '../../measured/index.ts';
import { Projects, Refusal, sheetNamed } from '../../project/index.ts';
import { measuredText } from '../../report/index.ts';
import { settingNamed } from '../../sheet/index.ts';
import { jsonText, nearestName } from '../../text/index.ts';
import { type Io, say, widthOf } from '../io.ts';
import { candidate } from '../printing.ts';
import type { ExitStatus } from '../run.ts';

export interface MeasuredOptions {
  readonly json?: boolean;
}

/** Columns of a table that goes into a pipe. */
const PIPED_WIDTH = 80;

/** `gaugeleaf measured`: what the readings of measured units come to, for one setting of a sheet or for all. */
export async function measured(
  name: string,
  setting: string | undefined,
  options: MeasuredOptions,
  io: Io,
): Promise<ExitStatus> {
  const { project, path } = sheetNamed(name, new Projects(io.cwd), io.cwd);
  const found = candidate(project, path, io);
  if (found === null) return 2;
  const { sheet } = found;
  const all = samplesOf(sheet).map(summaryOf);
  const id = setting === undefined ? null : (settingNamed(setting, sheet)?.id ?? setting);
  const summaries = id === null ? all : all.filter((each) => each.setting === id);
  if (id !== null && summaries.length === 0) {
    const names = [...new Set(all.map((each) => each.setting))];
    const near = nearestName(id, names);
    throw new Refusal(
      `${sheet.file} has no readings of \`${setting}\``,
      near === null
        ? `it has some of ${names.join(', ') || 'nothing'}`
        : `did you mean \`${near}\`?`,
    );
  }
  if (options.json === true) {
    io.stdout.write(`${jsonText({ sheet: sheet.file, settings: summaries })}\n`);
  } else if (summaries.length === 0) {
    say(
      io,
      `${sheet.file} has no readings of measured units: \`readings:\` of a source holds them`,
    );
  } else {
    io.stdout.write(measuredText(summaries, widthOf(io.stdout) ?? PIPED_WIDTH));
  }
  return 0;
}
