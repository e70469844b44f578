import { likeNames } from '../../kinds/index.ts';
import type { Kind } from '../../kinds/model.ts';
import { entriesNamed, kindReference } from '../../kinds/reference/index.ts';
import { namedKind, openProject, Refusal } from '../../project/index.ts';
import { paint } from '../../report/index.ts';
import { entriesText, kindList, kindText } from '../../report/kind/index.ts';
import { type Io, usesColor, widthOf } from '../io.ts';
import type { ExitStatus } from '../run.ts';

export interface KindOptions {
  readonly json?: boolean;
}

/**
 * `gaugeleaf kind`: the kinds that the project around knows; all that one of them knows; or all of one
 * entry of it. 2 where a name is of nothing, with those that are like it.
 */
export async function kind(
  name: string | undefined,
  entry: string | undefined,
  options: KindOptions,
  io: Io,
): Promise<ExitStatus> {
  const project = openProject(io.cwd, io.cwd);
  const written = { ink: paint(usesColor(io, io.stdout)), width: widthOf(io.stdout) };
  const json = (value: unknown) => io.stdout.write(`${JSON.stringify(value, null, 2)}\n`);
  if (name === undefined) {
    const kinds = [...project.kinds.values()].map((each) => ({
      reference: kindReference(each),
      file: project.kindFile(each.name),
    }));
    if (options.json === true)
      json(
        kinds.map(({ reference, file }) => ({
          kind: reference.kind,
          title: reference.title,
          file,
        })),
      );
    else io.stdout.write(kindList(kinds, written));
    return 0;
  }
  const found = namedKind(name, project);
  const reference = kindReference(found);
  if (entry === undefined) {
    if (options.json === true) json(reference);
    else io.stdout.write(kindText(reference, written));
    return 0;
  }
  const entries = entriesNamed(entry, found, reference);
  if (entries.length === 0) throw unknown(entry, found);
  if (options.json === true) json({ kind: found.name, entries });
  else io.stdout.write(entriesText(entries, found.name, written));
  return 0;
}

function listed(names: readonly string[]): string {
  return [names.slice(0, -1).join(', '), names.at(-1)].filter(Boolean).join(' or ');
}

function unknown(text: string, kind: Kind): Refusal {
  const like = likeNames(text, [
    ...kind.settings.values(),
    ...kind.operations.values(),
    ...kind.parts.values(),
    ...kind.hazards.values(),
    ...kind.features.values(),
    ...[...kind.dimensionsOfUnit.keys(), ...kind.threadsOfUnit].map((name) => ({ name })),
  ]);
  const all = `gaugeleaf kind ${kind.name} lists all`;
  return new Refusal(
    `the kind ${kind.name} knows nothing called ${text.trim() || 'nothing at all'}`,
    like.length === 0 ? all : `perhaps ${listed(like)} was meant; ${all}`,
  );
}
