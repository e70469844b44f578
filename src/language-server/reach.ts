import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { uriOf } from './places.ts';

/** The text of a file: as it stands in the editor, else on disk; empty where there is none. */
export function textOf(path: string, open: ReadonlyMap<string, TextDocument>): string {
  const edited = open.get(path);
  if (edited !== undefined) return edited.getText();
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return '';
  }
}

/** Where a link of a sheet leads: an address as it is, a path as seen from the sheet. */
export function linkTarget(sheet: string, target: string): string {
  return /^[a-z]+:/i.test(target) ? target : uriOf(resolve(dirname(sheet), target));
}
