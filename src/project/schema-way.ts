import { dirname, join, relative, sep } from 'node:path';
import { packageRoot } from './package-root.ts';
import { isTaken } from './safe-path.ts';

/**
 * The way from a new file to the schema that editors use for it: the project's own copy, else ours.
 * A path of null is standard output: then as if the file lay in a folder of the project.
 */
export function schemaWay(
  schema: 'kind' | 'record' | 'reading' | 'mapping',
  path: string | null,
  root: string,
): string {
  const below = `schemas/${schema}.schema.json`;
  if (path === null) return `../${below}`;
  const places = [root, join(root, 'node_modules', 'gaugeleaf'), packageRoot()];
  const found = places.find((place) => isTaken(join(place, below))) ?? root;
  const way = relative(dirname(path), join(found, below)).split(sep).join('/');
  return way.startsWith('.') ? way : `./${way}`;
}
