import { readFileSync, realpathSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { runGit } from './git.ts';
import { packedProgram } from './packed-program.ts';
import { causeInWords, Refusal } from './refusal.ts';

/** Where a club's folder has its program from. */
export interface ProgramSource {
  /** As npm writes it in package.json: an address, or a file of the folder itself. */
  readonly spec: string;
  /** The file that goes into the folder, where it is one. */
  readonly file: { readonly name: string; readonly bytes: Uint8Array } | null;
}

/**
 * Where a club's folder gets the program from: `given`, the address of a git repository or a file
 * that `npm pack` made (from `cwd`); else the address that the clone in `root` came from, with its
 * commit; else this very program, packed into the folder. Never a bare name: nobody has published
 * one, so anybody could. Fails with `Refusal` where `given` is neither.
 */
export async function programSource(
  root: string,
  given: string | undefined,
  cwd: string,
): Promise<ProgramSource> {
  if (given === undefined) {
    const spec = addressOfClone(root);
    return spec === null ? fileSource(await packedProgram()) : { spec, file: null };
  }
  if (/\.(?:tgz|tar\.gz)$/.test(given) && !/^[a-z+]+:\/\//.test(given)) {
    try {
      const bytes = readFileSync(resolve(cwd, given));
      return fileSource({ name: basename(given), bytes });
    } catch (error) {
      throw new Refusal(`${given} cannot be read: ${causeInWords(error)}`);
    }
  }
  const spec = gitAddress(given);
  if (spec !== null) return { spec, file: null };
  throw new Refusal(
    `${given} is neither the address of a git repository nor a packed file`,
    'give one such as https://forge.example/club/gaugeleaf.git#v1, or the .tgz that `npm pack` makes',
  );
}

function fileSource(file: NonNullable<ProgramSource['file']>): ProgramSource {
  return { spec: `file:${file.name}`, file };
}

/** A git address as npm takes it, without a name or password in it; null if it is none. */
export function gitAddress(text: string): string | null {
  // Git's own short form: user@host:path.
  const short = /^([\w.-]+@[\w.-]+):(?!\/)([^#\s]+)(#\S+)?$/.exec(text);
  if (short) return `git+ssh://${short[1]}/${short[2]}${short[3] ?? ''}`;
  const bare = text.replace(/^git\+/, '');
  const url = /^(?:https|ssh|git):\/\/[^\s/]+\/\S+$/.test(bare) ? new URL(bare) : null;
  if (url === null) return null;
  url.password = '';
  if (url.protocol === 'https:') url.username = '';
  return `git+${url.href}`.replace('git+git:', 'git:');
}

/** The address that the clone in `root` came from, with its commit; null where there is none. */
function addressOfClone(root: string): string | null {
  const top = git(root, ['rev-parse', '--show-toplevel']);
  // A program inside another repository, as in `node_modules`, did not come from that one's address.
  if (top === null || realpathSync(top) !== realpathSync(root)) return null;
  const origin = git(root, ['config', '--get', 'remote.origin.url']);
  const address = origin === null ? null : gitAddress(origin);
  const commit = git(root, ['rev-parse', 'HEAD']);
  return address === null || commit === null ? null : `${address}#${commit}`;
}

function git(root: string, args: readonly string[]): string | null {
  return runGit(root, args).output?.toString('utf8').trim() ?? null;
}
