import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Script } from 'node:vm';
import type { quickCheck } from './quick-check.ts';

type Start = (require: NodeJS.Require, module: unknown, url: string) => void;

type Core = { readonly quickCheck: typeof quickCheck };

let script: Script | null = null;

const beside = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

/**
 * The code of `check` as the bundler left it in one file, `check.cjs`, with what V8 had compiled of
 * it when the package was built, `check.cache`: compiling it anew takes longer than checking a
 * sheet. A cache of another version of V8 is ignored by V8 itself. Null where there is no such file,
 * as in a checkout that was not built.
 */
export function cachedCore(): Core | null {
  let source: string;
  try {
    // The bundler writes ASCII only: read so, it stays one byte a character.
    source = readFileSync(beside('check.cjs'), 'latin1');
  } catch {
    return null;
  }
  const filename = beside('check.cjs');
  const cachedData = cache();
  script = new Script(`(function(require,module,__gaugeleafUrl){${source}\n})`, {
    filename,
    ...(cachedData === undefined ? {} : { cachedData }),
  });
  const module: { exports: Partial<Core> } = { exports: {} };
  const start = script.runInThisContext() as Start;
  start(createRequire(import.meta.url), module, import.meta.url);
  return module.exports.quickCheck === undefined ? null : (module.exports as Core);
}

function cache(): Buffer | undefined {
  try {
    return readFileSync(beside('check.cache'));
  } catch {
    return undefined;
  }
}

/** Keeps what V8 has compiled by now for the next start; done once, when the package is built. */
export function keepCache(): void {
  if (script !== null) writeFileSync(beside('check.cache'), script.createCachedData());
}
