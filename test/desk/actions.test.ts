import { describe, expect, test } from 'vitest';
import { actions, findings, hover, mended, openDocument } from '../../src/desk/index.ts';
import { applyEdits } from '../../src/report/index.ts';
import { exampleContext, exampleFile, wholeSheet } from '../checks/examples.ts';

const project = { context: exampleContext() };

/** What a text becomes by the action of a kind on the finding of a name. */
function made(text: string, check: string, kind: string): string {
  const document = openDocument(text, exampleFile, project);
  const found = findings(document).find((each) => each.check === check);
  if (found === undefined) throw new Error(`no ${check}`);
  const action = actions(document, found.span).find(
    (each) => each.kind === kind && each.finding.check === check,
  );
  if (action === undefined) throw new Error(`no ${kind} for ${check}`);
  const [changed] = action.edits;
  const after = applyEdits(text, changed?.edits ?? []);
  if (action.blank !== null) {
    expect(after.slice(action.blank.start, action.blank.end)).toBe('fill in');
  }
  return after;
}

describe('acceptance', () => {
  const unused = { settings: 'float-drop: { value: 1-1/4 in, from: m48 p. 31 }' };
  const entry = '{ finding: setting-unused, at: float-drop, reason: fill in }';
  const other = '{ finding: size-chopped, at: float-level, reason: as printed }';

  test.each([
    ['where there is none yet', '', `\naccept:\n  - ${entry}\n---\n`],
    ['below others', `accept:\n  - ${other}`, `\n  - ${other}\n  - ${entry}\n`],
    ['beside others', `accept: [${other}]`, `accept: [${other}, ${entry}]\n`],
    ['in its own column', `accept:\n- ${other}`, `\n- ${other}\n- ${entry}\n`],
  ])('%s', (_, front, written) => {
    const text = wholeSheet({ ...unused, ...(front === '' ? {} : { front }) });
    const after = made(text, 'setting-unused', 'accept');
    expect(after).toContain(written);
    const left = openDocument(
      after.replace('reason: fill in', 'reason: for reference'),
      exampleFile,
      project,
    );
    expect(left.findings.find(({ check }) => check === 'setting-unused')?.accepted).toBe(
      'for reference',
    );
  });

  test('is not offered for an error, nor for what is accepted', () => {
    const document = openDocument(wholeSheet({ front: 'status: prof' }), exampleFile, project);
    const whole = { start: 0, end: document.text.length };
    expect(actions(document, whole).map(({ kind }) => kind)).not.toContain('accept');
  });
});

test('CR LF and a byte order mark stay as they are', () => {
  const text = `\uFEFF${wholeSheet({ front: 'status: prof' }).replaceAll('\n', '\r\n')}`;
  const after = made(text, 'front-matter-invalid', 'suggested');
  expect(after).toBe(text.replace('status: prof\r', 'status: proof\r'));
  const accepted = made(
    `\uFEFF${wholeSheet({ settings: 'float-drop: { value: 1-1/4 in, from: m48 p. 31 }' }).replaceAll('\n', '\r\n')}`,
    'setting-unused',
    'accept',
  );
  expect(accepted.replaceAll('\r\n', '')).not.toContain('\n');
});

test('what is certain is made at once', () => {
  const text = wholeSheet({}).replace(':value[float-level].', ': value[float-level].');
  expect(mended(openDocument(text, exampleFile, project))).toBe(wholeSheet({}));
});

test('over a finding stands why it is one', () => {
  const text = wholeSheet({ front: 'status: prof' });
  const found = hover(openDocument(text, exampleFile, project), text.indexOf('prof\n') + 1);
  expect(found?.words[0]).toContain('`front-matter-invalid`: ');
});
