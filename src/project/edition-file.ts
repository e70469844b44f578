import { join } from 'node:path';
import { readYaml, type YamlRead } from '../text/index.ts';
import { readOwnText, type TextRead } from './read-text.ts';
import { isTaken } from './safe-path.ts';

/** `edition.yaml` as it was read; parsed once, whoever asks. */
export interface EditionFile {
  readonly root: string;
  /** As reports show it. */
  readonly file: string;
  /** Null where there is no such file. */
  readonly read: TextRead | null;
  /** Null where there is no text to parse. */
  readonly yaml: YamlRead | null;
  /** What it says by its keys, right or wrong; empty where it says nothing. */
  readonly value: Readonly<Record<string, unknown>>;
}

/** Opens the edition of a project. Never throws. */
export function openEdition(root: string, file: string): EditionFile {
  const path = join(root, 'edition.yaml');
  const none = { root, file, yaml: null, value: {} };
  if (!isTaken(path)) return { ...none, read: null };
  const read = readOwnText(root, path, file);
  return read.ok ? editionOf(root, file, read) : { ...none, read };
}

/** The same of a text that may stand in it. */
export function editionOf(
  root: string,
  file: string,
  read: TextRead & { readonly ok: true },
): EditionFile {
  const base = read.text.startsWith('\ufeff') ? 1 : 0;
  const yaml = readYaml(read.text.slice(base), base);
  const value = yaml.root?.kind === 'map' ? (yaml.value as Record<string, unknown>) : {};
  return { root, file, read, yaml, value };
}

/** A text, or a number as a text; null for anything else. */
export function written(value: unknown): string | null {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : null;
}

/** A whole number above zero; null for anything else. */
export function whole(value: unknown): number | null {
  return typeof value === 'number' && Number.isInteger(value) && value > 0 ? value : null;
}

/** Yes or no; null for anything else. */
export function truth(value: unknown): boolean | null {
  return typeof value === 'boolean' ? value : null;
}
