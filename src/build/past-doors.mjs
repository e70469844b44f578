/**
 * Lets the bundler take what a file imports through a room's door from where it stands. It parts the
 * program into chunks by which file imports which, not by what is used of it: through its door, whoever
 * wants one function of a room would load all that anybody wants of it, and `gaugeleaf check` the parser of
 * the commands. For bundle.mjs and check-bundle.mjs.
 */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, relative, resolve } from 'node:path';

/** Names in braces that come from, or go on from, a door; the formatter leaves them in no other form. */
const THROUGH_A_DOOR = /^(import|export) \{([^{}]*)\} from '(\.[^']*\/index\.ts)';$/gm;
/** What is loaded when it is asked for, by a name or several. */
const LOADED_LATER = /\{([^{}]*)\}( = await import\()'(\.[^']*\/index\.ts)'/g;
const HANDED_ON = /^export (type )?\{([^{}]*)\} from '([^']*)';$/gm;

/** `type A as B` in its parts; `to` is what it is called from there on. */
function namesIn(braces) {
  return braces
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '')
    .map((name) => {
      const [, type, from, to = from] = /^(type )?(\w+)(?: as (\w+))?$/.exec(name) ?? [];
      if (from === undefined) throw new Error(`${name} is no name that a door hands on`);
      return { isType: type !== undefined, from, to };
    });
}

/** For `esbuild`'s `plugins`. `change(text, path)` may alter what a file holds besides. */
export function pastDoors(change = (text) => text) {
  const doors = new Map();

  /** Where each name of a door comes from: `{ file, name }`, by the name that it has outside. */
  function door(path) {
    const known = doors.get(path);
    if (known !== undefined) return known;
    const names = new Map();
    doors.set(path, names);
    if (!existsSync(path)) return names;
    for (const [, , braces, from] of readFileSync(path, 'utf8').matchAll(HANDED_ON)) {
      const file = resolve(dirname(path), from);
      for (const each of namesIn(braces)) names.set(each.to, source(file, each.from));
    }
    return names;
  }

  function source(file, name) {
    return (file.endsWith('index.ts') ? door(file).get(name) : undefined) ?? { file, name };
  }

  /** The file that all names come from which are loaded of a door; null where they come from several. */
  function onlyFile(path, braces) {
    const names = braces.split(',').map((name) => name.split(':')[0].trim());
    const found = names.filter((name) => name !== '').map((name) => source(path, name));
    const isOne = found.every(({ file, name }, i) => file === found[0].file && name === names[i]);
    return found.length > 0 && isOne ? found[0].file : null;
  }

  function direct(text, path) {
    const later = text.replaceAll(LOADED_LATER, (all, braces, awaited, from) => {
      const file = onlyFile(resolve(dirname(path), from), braces);
      if (file === null) return all;
      return `{${braces}}${awaited}'./${relative(dirname(path), file).replaceAll('\\', '/')}'`;
    });
    return later.replaceAll(THROUGH_A_DOOR, (_all, verb, braces, from) => {
      const file = resolve(dirname(path), from);
      return namesIn(braces)
        .filter(({ isType }) => !isType)
        .map((each) => {
          const { file: at, name } = source(file, each.from);
          const where = relative(dirname(path), at).replaceAll('\\', '/');
          return `${verb} { ${name} as ${each.to} } from './${where}';`;
        })
        .join(' ');
    });
  }

  return {
    name: 'past-doors',
    setup(build) {
      build.onLoad({ filter: /[\\/]src[\\/].*\.ts$/, namespace: 'file' }, ({ path }) => {
        if (/[\\/]node_modules[\\/]/.test(path)) return undefined;
        return { contents: change(direct(readFileSync(path, 'utf8'), path), path), loader: 'ts' };
      });
    },
  };
}
