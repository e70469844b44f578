import { basename, dirname, extname, join } from 'node:path';
import { type Mapping, readMapping, type SizeTools } from '../import/index.ts';
import { LineIndex } from '../text/index.ts';
import type { Project } from './project.ts';
import { readOwnText, readText } from './read-text.ts';
import { Refusal } from './refusal.ts';
import { isBelow, landing } from './safe-path.ts';

/** The mapping in a file, or what is wrong with it, each as `file:line:column: message; cure`. */
export type MappingRead =
  | { readonly ok: true; readonly mapping: Mapping }
  | { readonly ok: false; readonly faults: readonly string[] };

/** Where the mapping of a list lies that nobody has put elsewhere: beside it, by its name. */
export function mappingBeside(listPath: string): string {
  const name = basename(listPath, extname(listPath));
  return join(dirname(listPath), `${name}.mapping.yaml`);
}

/** Reads the mapping of a list. Fails with `Refusal` where the file cannot be read as text. */
export function mappingAt(path: string, project: Project, tools: SizeTools): MappingRead {
  const shown = project.show(path);
  // One that lies elsewhere was named by the command, as its list was.
  const isOurs = isBelow(project.root, landing(dirname(path)));
  const read = isOurs ? readOwnText(project.root, path, shown) : readText(path, shown);
  if (!read.ok) throw new Refusal(read.message, read.fix);
  const { mapping, faults } = readMapping(read.text, project.kinds, tools);
  if (mapping !== null) return { ok: true, mapping };
  const lines = new LineIndex(read.text);
  const told = faults.map(({ span, message, fix }) => {
    const { line, column } = lines.place(span.start);
    return `${shown}:${line}:${column}: ${message}${fix === null ? '' : `; ${fix}`}`;
  });
  return { ok: false, faults: told };
}
