import { join, resolve } from 'node:path';
import { draftKind, draftVariant } from '../import/index.ts';
import { commonHazards } from '../kinds/index.ts';
import {
  fileId,
  isTaken,
  openProject,
  Projects,
  Refusal,
  schemaWay,
  sheetNamed,
  writeWhole,
} from '../project/index.ts';
import { kindPlan } from './draft-kind-answers.ts';
import { type Io, say } from './io.ts';
import type { ExitStatus } from './run.ts';
import { talking } from './talk.ts';

/** `gaugeleaf draft --based-on`: a variant beside the sheet that it is based on. */
export function draftBasedOn(
  name: string,
  options: { readonly out?: string; readonly title?: string; readonly date: string },
  io: Io,
): ExitStatus {
  const { project, path: base } = sheetNamed(name, new Projects(io.cwd), io.cwd);
  if (options.out === undefined) {
    throw new Refusal(
      'a variant needs a name',
      'name its file: --out sheets/orlo-t72-wexcombe-six.md',
    );
  }
  const written = resolve(io.cwd, options.out);
  const path = /\.md$/i.test(written) ? written : `${written}.md`;
  const id = fileId(path);
  refuseName(id, 'a sheet');
  refuseTaken(path, project.show(path));
  const text = draftVariant({
    id,
    base: fileId(base),
    title: options.title ?? id,
    date: options.date,
  });
  writeWhole(path, text, { within: written });
  io.stdout.write(`${project.show(path)}\n`);
  say(io, 'Now say what differs: everything else is taken from the base.');
  return 0;
}

/** `gaugeleaf draft --new-kind`: a kind of unit of the project's own; on a terminal by asking. */
export async function draftNewKind(
  name: string,
  title: string | undefined,
  io: Io,
): Promise<ExitStatus> {
  const project = openProject(io.cwd, io.cwd);
  refuseName(name, 'a kind');
  if (project.kinds.has(name)) {
    throw new Refusal(`there is a kind ${name} already`, 'give another name');
  }
  const path = join(project.root, 'kinds', `${name}.yaml`);
  refuseTaken(path, project.show(path));
  const plan =
    io.stdin.isTTY === true ? await talking(io, (ask) => kindPlan(ask, commonHazards())) : null;
  const schema = schemaWay('kind', path, project.root);
  writeWhole(path, draftKind({ name, title: title ?? name, schema, plan }), {
    within: project.root,
  });
  io.stdout.write(`${project.show(path)}\n`);
  say(
    io,
    plan === null
      ? 'Now name its settings, operations, features and hazards in that file.'
      : 'Now say in that file why each need is there, and what is noticed when a setting is out.',
  );
  return 0;
}

function refuseName(name: string, what: string): void {
  if (/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(name) && name.length <= 100) return;
  throw new Refusal(
    `${name} cannot be the name of ${what}`,
    'small letters, digits and hyphens only',
  );
}

function refuseTaken(path: string, shown: string): void {
  if (!isTaken(path)) return;
  throw new Refusal(
    `${shown} is there already, and a draft never replaces a file`,
    'give another name',
  );
}
