import { basename, dirname, resolve } from 'node:path';
import {
  featuresNamed,
  guessMapping,
  type List,
  type Mapping,
  mappingText,
  type SettledMapping,
  type SizeTools,
  settledMapping,
  type Told,
} from '../import/index.ts';
import {
  isTaken,
  mappingAt,
  mappingBeside,
  namedKind,
  type Project,
  Refusal,
  schemaWay,
  writeWhole,
} from '../project/index.ts';
import { guessText } from '../report/index.ts';
import { visible } from '../text/index.ts';
import { chosen } from './chosen.ts';
import type { DraftOptions } from './draft-answers.ts';
import { type Io, say } from './io.ts';

/**
 * The mapping of a list: the one beside it, or a proposal, which is written there and told. Null
 * where the proposal waits for the editor. Fails with `Refusal` where the list cannot be read by it.
 */
export function draftMapping(
  listPath: string,
  list: List,
  options: DraftOptions,
  project: Project,
  tools: SizeTools,
  io: Io,
): SettledMapping | null {
  const given = options.mapping;
  const path = given === undefined ? mappingBeside(listPath) : resolve(io.cwd, given);
  const shown = project.show(path);
  const settled = (mapping: Mapping) => chosen(settledMapping(mapping, project.kinds, shown));
  if (isTaken(path)) return settled(told(path, project, tools, io));
  const guess = guessMapping(list, project.kinds, toldBy(options, project), tools);
  if (guess === null) {
    throw new Refusal(
      `no row of ${project.show(listPath)} looks like heads of settings that a kind of unit has`,
      'name its kind with --kind, or give its columns the names of settings; gaugeleaf draft --help',
    );
  }
  const text = mappingText(guess, basename(listPath), schemaWay('mapping', path, project.root));
  for (const line of guessText(guess)) say(io, line);
  if (options.dryRun !== true) {
    writeWhole(path, text, { within: dirname(path) });
    io.stdout.write(`${shown}\n`);
  }
  if (options.yes !== true && options.dryRun !== true) {
    say(io, `Read it, mend what is wrong, and give the command again: ${shown} says how.`);
    return null;
  }
  return settled(guess.mapping);
}

function toldBy(options: DraftOptions, project: Project): Told {
  const kind = options.kind === undefined ? null : namedKind(options.kind, project);
  const kinds = kind === null ? [...project.kinds.values()] : [kind];
  const features = chosen(featuresNamed(options.features ?? '', kinds));
  return { kind: kind?.name ?? null, maker: options.maker?.trim() ?? null, features };
}

function told(path: string, project: Project, tools: SizeTools, io: Io): Mapping {
  const read = mappingAt(path, project, tools);
  if (read.ok) return read.mapping;
  for (const fault of read.faults) say(io, visible(fault));
  const shown = project.show(path);
  throw new Refusal(`the list cannot be read by ${shown}`, 'correct the places above');
}
