import { fileId, openProject, projectSheets, Refusal } from '../../project/index.ts';
import { paint, readingsJson, readingsText } from '../../report/index.ts';
import { editionReadings } from '../../rereading/index.ts';
import { type Io, usesColor } from '../io.ts';
import type { ExitStatus } from '../run.ts';

export interface ReadingsOptions {
  readonly json?: boolean;
}

/** `gaugeleaf readings`: how far the second reading of each sheet of the project has come. */
export async function readings(options: ReadingsOptions, io: Io): Promise<ExitStatus> {
  const project = openProject(io.cwd, io.cwd);
  const sheets = project.isProject ? projectSheets(project) : [];
  if (sheets.length === 0) {
    throw new Refusal(
      'there is no project with sheets here',
      'change into its folder, or name it: gaugeleaf -C FOLDER readings',
    );
  }
  const folder = project.readings();
  const files = (folder?.files() ?? []).flatMap(({ reading }) => reading ?? []);
  const counts = editionReadings(
    sheets.map(({ sheet }) => {
      const id = fileId(sheet.file);
      const own = files.filter((each) => each.sheet.value === id);
      return { id, sheet, kept: folder?.of(id) ?? null, readings: own };
    }),
  );
  io.stdout.write(
    options.json === true
      ? readingsJson(counts)
      : readingsText(counts, paint(usesColor(io, io.stdout))),
  );
  return 0;
}
