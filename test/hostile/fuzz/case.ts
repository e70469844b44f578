import { tried } from './faults.ts';
import { type Change, changed } from './mutations.ts';
import { projectWith, remove, targets } from './project.ts';

/** A file of the sound project, what was done to it, and a byte that was overwritten after that. */
export interface Case {
  readonly name: string;
  readonly made: readonly Change[];
  readonly byte: number | null;
}

const all = targets();

/** The altered file: the changes in turn, and then perhaps a byte that is no letter. */
function alteredBytes(text: string, made: readonly Change[], byte: number | null): Uint8Array {
  const bytes = Buffer.from(made.reduce(changed, text).slice(0, 400_000), 'utf8');
  if (byte !== null && bytes.length > 0) bytes[byte % bytes.length] = byte & 0xff;
  return bytes;
}

/** Runs what reads the file. Fails with a `Fault` for what no file may do to the program. */
export async function runCase({ name, made, byte }: Case): Promise<void> {
  const target = all.find((each) => each.name === name);
  if (!target) throw new Error(`there is no file ${name} to alter`);
  const folder = projectWith(all, target, alteredBytes(target.text, made, byte));
  try {
    await tried(folder, target, made[0]?.pick ?? 0);
  } finally {
    remove(folder);
  }
}
