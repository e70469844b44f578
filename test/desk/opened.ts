import { readFileSync } from 'node:fs';
import { openDocument } from '../../src/desk/document.ts';
import type { DeskDocument, DeskProject } from '../../src/desk/model.ts';
import { exampleContext } from '../checks/examples.ts';

/** A text with `|` where the cursor stands, opened without it. */
export function opened(
  marked: string,
  project: DeskProject = { context: exampleContext() },
  file = 'sheets/orlo-f27.md',
): { readonly document: DeskDocument; readonly offset: number } {
  const offset = marked.indexOf('|');
  const text = offset === -1 ? marked : marked.slice(0, offset) + marked.slice(offset + 1);
  return { document: openDocument(text, file, project), offset };
}

/** A sheet of the demo, by its id. */
export function demo(id: string): string {
  return readFileSync(new URL(`../../sheets/${id}.md`, import.meta.url), 'utf8');
}
