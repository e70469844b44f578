import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { allChecks } from '../../src/checks/index.ts';
import { actionsFor } from '../../src/desk/actions.ts';
import { findings, openDocument } from '../../src/desk/index.ts';
import { decodeText } from '../../src/project/decode.ts';
import { openProject } from '../../src/project/project.ts';
import { exampleContext, exampleFile, wholeSheet } from '../checks/examples.ts';
import { casesToTry } from '../suite/part.ts';
import { tryCures } from './trying.ts';

const folder = join(import.meta.dirname, '..', 'wrong');
const project = openProject(folder, folder);

/** How many findings a mistake has, and how many of them can be mended by an edit or be accepted. */
const counts = { findings: 0, edits: 0, accepted: 0, neither: 0 };

describe('every edit that is offered for a planted mistake clears it and brings no error', () => {
  const names = readdirSync(join(folder, 'sheets')).filter((name) => name.endsWith('.md'));
  test.each(casesToTry(names, 4))('%s', (name) => {
    const path = join(folder, 'sheets', name);
    const { text } = decodeText(readFileSync(path));
    const context = project.context(path);
    const { tried, found } = tryCures(text, `sheets/${name}`, { context }, () => true);
    for (const { offered } of found) {
      const kinds = new Set(offered.map(({ kind }) => kind));
      const isEdit = kinds.has('fix') || kinds.has('suggested');
      counts.findings++;
      if (isEdit) counts.edits++;
      if (kinds.has('accept')) counts.accepted++;
      if (!isEdit && !kinds.has('accept')) counts.neither++;
    }
    for (const { action, clears, newErrors } of tried) {
      expect([action.title, clears, newErrors]).toEqual([action.title, true, []]);
    }
  });

  // A mean, a whole or a second reading that does not come out is settled by the paper alone.
  test('four of five mistakes have an edit', () => {
    expect(counts.edits / counts.findings).toBeGreaterThan(0.8);
    // Of the rest most can be accepted; the others wait for a file, a figure or a word of the editor's.
    expect(counts.neither / counts.findings).toBeLessThan(0.12);
  });
});

describe('what a check suggests is offered on its own examples', () => {
  const context = exampleContext();
  const suggesting = allChecks.filter(({ messages }) =>
    Object.values(messages).some(({ suggest }) => suggest !== undefined),
  );
  test.each(suggesting.map((check) => [check.id, check] as const))('%s', (id, check) => {
    const offered = check.examples
      .filter(({ expect: wanted }) => wanted.length > 0)
      .flatMap((example) => {
        const document = openDocument(wholeSheet(example.sheet), exampleFile, { context });
        return findings(document)
          .filter((each) => each.check === id)
          .map((finding) => actionsFor(document, finding).map(({ kind }) => kind));
      });
    expect(offered.flat()).toContain('suggested');
  });
});
