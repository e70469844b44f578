import { basename, dirname, extname, join, resolve } from 'node:path';
import {
  guessMapping,
  type List,
  type Mapping,
  mappingText,
  openPoints,
  readMapping,
  type SizeTools,
  type Told,
} from '../import/index.ts';
import { kindNamed } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import {
  isTaken,
  namedKind,
  type Project,
  Refusal,
  readText,
  schemaWay,
  writeWhole,
} from '../project/index.ts';
import { guessText } from '../report/index.ts';
import { LineIndex, visible } from '../text/index.ts';
import type { DraftOptions } from './draft-answers.ts';
import { type Io, say } from './io.ts';

/** A mapping that a list can be read by, with its kind of unit. */
export interface SettledMapping {
  readonly mapping: Mapping;
  readonly kind: Kind;
}

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
  const path = mappingPath(listPath, options.mapping, io);
  const shown = project.show(path);
  if (isTaken(path)) return settled(mappingAt(path, shown, project, tools, io), shown, project);
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
    writeWhole(path, text);
    io.stdout.write(`${shown}\n`);
  }
  if (options.yes !== true && options.dryRun !== true) {
    say(io, `Read it, mend what is wrong, and give the command again: ${shown} says how.`);
    return null;
  }
  return settled(guess.mapping, shown, project);
}

function mappingPath(listPath: string, given: string | undefined, io: Io): string {
  if (given !== undefined) return resolve(io.cwd, given);
  const name = basename(listPath);
  return join(
    dirname(listPath),
    `${name.slice(0, name.length - extname(name).length)}.mapping.yaml`,
  );
}

function toldBy(options: DraftOptions, project: Project): Told {
  const kind = options.kind === undefined ? null : namedKind(options.kind, project);
  const words = (options.features ?? '').split(',').map((word) => word.trim());
  const features = words.flatMap((word) => {
    if (word === '') return [];
    const kinds = kind === null ? [...project.kinds.values()] : [kind];
    const found = kinds.map((each) => each.featureNamed(word)).find((each) => each !== null);
    if (found == null) throw new Refusal(`no kind of unit has a feature called ${word}`);
    return [found.name];
  });
  return { kind: kind?.name ?? null, maker: options.maker?.trim() ?? null, features };
}

function mappingAt(
  path: string,
  shown: string,
  project: Project,
  tools: SizeTools,
  io: Io,
): Mapping {
  const read = readText(path, shown);
  if (!read.ok) throw new Refusal(read.message, read.fix);
  const { mapping, faults } = readMapping(read.text, project.kinds, tools);
  if (mapping !== null) return mapping;
  const lines = new LineIndex(read.text);
  for (const { span, message, fix } of faults) {
    const { line, column } = lines.place(span.start);
    say(io, visible(`${shown}:${line}:${column}: ${message}${fix === null ? '' : `; ${fix}`}`));
  }
  throw new Refusal(`the list cannot be read by ${shown}`, 'correct the places above');
}

function settled(mapping: Mapping, shown: string, project: Project): SettledMapping {
  const kind = kindNamed(mapping.kind, project.kinds);
  if (kind === null) throw new Refusal(`there is no kind of unit called ${mapping.kind}`);
  const [first, ...more] = openPoints(mapping, kind);
  if (first !== undefined) {
    throw new Refusal(`${shown} does not say enough. ${[first, ...more].join(' ')}`);
  }
  return { mapping, kind };
}
