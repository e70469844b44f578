import { Projects, Refusal, sheetNamed } from '../../project/index.ts';
import { askCurve, curveData, curveText } from '../../report/index.ts';
import { curvesOf, settingNamed } from '../../sheet/index.ts';
import type { Setting, Sheet } from '../../sheet/model.ts';
import { jsonText, nearestName } from '../../text/index.ts';
import type { Io } from '../io.ts';
import { candidate } from '../printing.ts';
import type { ExitStatus } from '../run.ts';

export interface CurveOptions {
  /** A station to be told of, which need not be a row. */
  readonly at?: string;
  readonly json?: boolean;
}

/** `gaugeleaf curve`: the tables of a sheet, or what one says at a station. 1 where it says nothing there. */
export async function curve(
  name: string,
  asked: string | undefined,
  options: CurveOptions,
  io: Io,
): Promise<ExitStatus> {
  const { project, path } = sheetNamed(name, new Projects(io.cwd), io.cwd);
  const found = candidate(project, path, io);
  if (found === null) return 2;
  const { sheet } = found;
  const curves = curvesAsked(sheet, asked);
  const { at } = options;
  if (at !== undefined && curves.length > 1) {
    const names = curves.map((each) => `\`${each.name.value}\``).join(', ');
    throw new Refusal(`${sheet.file} has ${curves.length} tables`, `say which: ${names}`);
  }
  const { gauges } = project.context(found.path);
  const answers = curves.map((each) => (at === undefined ? null : askCurve(each, at, gauges)));
  const [answer] = answers;
  if (answer && 'problem' in answer) {
    const first = curves[0]?.rows[0]?.station?.text ?? '';
    throw new Refusal(answer.problem, `write one as the table does: ${first}`);
  }
  if (options.json === true) {
    const data = curves.map((each, i) => curveData(each, answers[i] ?? null));
    io.stdout.write(`${jsonText({ sheet: sheet.file, curves: data })}\n`);
  } else if (answer) io.stdout.write(`${answer.told}\n`);
  else io.stdout.write(curves.map(curveText).join('\n'));
  return answer && !('low' in answer.reading) ? 1 : 0;
}

function curvesAsked(sheet: Sheet, asked: string | undefined): readonly Setting[] {
  const all = curvesOf(sheet);
  if (all.length === 0) {
    throw new Refusal(
      `${sheet.file} has no table`,
      'a setting that is a curve has `table:` in place of `value:`; `gaugeleaf kind` says which are',
    );
  }
  if (asked === undefined) return all;
  const setting = settingNamed(asked, sheet);
  if (setting !== null && setting.rows.length > 0) return [setting];
  const names = all.map(({ id }) => id);
  const near = nearestName(asked, names);
  throw new Refusal(
    `${asked} is no table of ${sheet.file}`,
    near === null ? `it has ${names.join(', ')}` : `did you mean \`${near}\`?`,
  );
}
