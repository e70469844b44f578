import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  completions,
  definition,
  findings,
  folding,
  hints,
  hover,
  links,
  openDocument,
  outline,
  references,
  rename,
  renameStart,
  stateAfter,
} from '../../src/desk/index.ts';
import type { DeskDocument, OutlineEntry } from '../../src/desk/model.ts';
import type { Span } from '../../src/text/index.ts';
import { exampleContext } from '../checks/examples.ts';
import { runs } from '../suite/part.ts';

const folder = join(import.meta.dirname, '..', '..', 'sheets');
const sheets = readdirSync(folder)
  .filter((name) => name.endsWith('.md'))
  .map((name) => readFileSync(join(folder, name), 'utf8'));
const context = exampleContext();

/** What people have in the middle of typing: brackets that are open, marks without a name, blanks. */
const typed = [
  '',
  ' ',
  '\n',
  '\r\n',
  ':',
  ':value[',
  ':state[',
  '{',
  '[',
  '}',
  ']',
  '"',
  "'",
  '- ',
  '# ',
  '## ',
  ':::',
  '---\n',
  'value: ',
  '    ',
  '\t',
  '😀',
  '\u0000',
  'No. ',
];

const changed = fc
  .record({
    sheet: fc.integer({ min: 0, max: sheets.length - 1 }),
    from: fc.double({ min: 0, max: 1, noNaN: true }),
    gone: fc.oneof({ weight: 4, arbitrary: fc.nat(40) }, fc.nat(4000)),
    put: fc.array(fc.constantFrom(...typed), { maxLength: 4 }),
  })
  .map(({ sheet, from, gone, put }) => {
    const text = sheets[sheet] ?? '';
    const start = Math.floor(from * text.length);
    const words = put.join('');
    return {
      text: text.slice(0, start) + words + text.slice(start + gone),
      offset: start + words.length,
    };
  });

function isInside(document: DeskDocument, { start, end }: Span): void {
  expect(start).toBeGreaterThanOrEqual(0);
  expect(end).toBeGreaterThanOrEqual(start);
  expect(end).toBeLessThanOrEqual(document.text.length);
}

function areInside(document: DeskDocument, entries: readonly OutlineEntry[]): void {
  for (const { span, nameSpan, children } of entries) {
    isInside(document, span);
    // An editor refuses a name that stands outside of what it names.
    expect(nameSpan.start).toBeGreaterThanOrEqual(span.start);
    expect(nameSpan.end).toBeLessThanOrEqual(span.end);
    areInside(document, children);
  }
}

test('at any offset of any half-typed sheet there is an answer, and it lies in the text', () => {
  fc.assert(
    fc.property(changed, ({ text, offset }) => {
      const document = openDocument(text, 'sheets/a.md', { context });
      for (const { edit, blank } of completions(document, offset)) {
        isInside(document, edit.span);
        // An editor takes only what holds the cursor and stays on its line.
        expect(edit.span.start).toBeLessThanOrEqual(offset);
        expect(edit.span.end).toBeGreaterThanOrEqual(offset);
        expect(document.text.slice(edit.span.start, edit.span.end)).not.toMatch(/[\r\n]/);
        if (blank !== null) expect(blank.end).toBeLessThanOrEqual(edit.text.length);
      }
      const shown = hover(document, offset);
      if (shown !== null) isInside(document, shown.span);
      const place = definition(document, offset);
      if (place !== null) isInside(document, place.span);
      for (const { span } of references(document, offset)) isInside(document, span);
      const start = renameStart(document, offset);
      if (start !== null) {
        isInside(document, start.span);
        expect(document.text.slice(start.span.start, start.span.end)).toContain(start.name);
        rename(document, offset, 'other-name');
      }
      stateAfter(document, offset);
      for (const { span } of findings(document)) isInside(document, span);
      areInside(document, outline(document));
      for (const { startLine, endLine } of folding(document)) {
        expect(endLine).toBeGreaterThan(startLine);
        expect(endLine).toBeLessThanOrEqual(document.lines.count);
      }
      for (const { span } of links(document)) isInside(document, span);
      hints(document, { start: 0, end: text.length });
    }),
    { numRuns: runs(120), seed: 1948 },
  );
});
