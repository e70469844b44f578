import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import {
  CodeAction,
  type CompletionList,
  Diagnostic,
  DocumentLink,
  DocumentSymbol,
  FoldingRange,
  Hover,
  InlayHint,
  Location,
  WorkspaceEdit,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { wholeSheet } from '../checks/examples.ts';
import { Client, cursor } from './client.ts';

const clean = wholeSheet({});
const name = 'sheets/orlo-f27.md';
const edition =
  'gaugeleaf-edition: 1\ntitle: Demo\nclub: The club\nedition: first\nyear: 2026\ndate: 2026-10-03\npaper: letter\norder: [orlo-f27]\n';

let client: Client;
beforeEach(async () => {
  client = new Client({ 'edition.yaml': edition, [name]: clean });
  await client.begin();
});
afterEach(() => client.end());

const whole = (text: string) => [{ text }];

describe('findings', () => {
  test('of the sheet in hand, of the version they were found in', async () => {
    await client.open(name, clean);
    expect((await client.findings(name, ({ version }) => version === 1)).diagnostics).toEqual([]);
    await client.change(name, 2, whole(clean.replace('status: proof', 'status: prof')));
    const { diagnostics } = await client.findings(name, ({ version }) => version === 2);
    expect(diagnostics).toHaveLength(1);
    expect(diagnostics.every((each) => Diagnostic.is(each))).toBe(true);
    const line = clean.split('\n').indexOf('status: proof');
    expect(diagnostics[0]).toEqual({
      range: { start: { line, character: 8 }, end: { line, character: 12 } },
      severity: 1,
      code: 'front-matter-invalid',
      source: 'gaugeleaf',
      message: '`status` is `prof`; it may be draft, proof or released\nfix: did you mean `proof`?',
    });
  });

  test('of incremental changes, which come several at once and in UTF-16 columns', async () => {
    const text = clean.replace('Cast-iron body', '😀 Cast-iron body');
    await client.open(name, text);
    const line = text.split('\n').findIndex((each) => each.includes('😀'));
    const end = 'status: proof'.length;
    const status = text.split('\n').indexOf('status: proof');
    await client.change(name, 2, [
      // Behind the two units of one letter.
      { range: { start: { line, character: 2 }, end: { line, character: 3 } }, text: ' <b>A</b> ' },
      {
        range: {
          start: { line: status, character: end - 1 },
          end: { line: status, character: end },
        },
        text: '',
      },
    ]);
    const { diagnostics } = await client.findings(name, ({ version }) => version === 2);
    const tag = diagnostics.filter(({ code }) => code === 'html-in-text');
    expect(tag[0]?.range.start).toEqual({ line, character: 3 });
    expect(diagnostics.map(({ code }) => code)).toContain('front-matter-invalid');
  });

  test('only the last of versions that come faster than they are read', async () => {
    await client.open(name, clean);
    await client.findings(name, ({ version }) => version === 1);
    for (let version = 2; version <= 30; version++) {
      void client.change(name, version, whole(`${clean}\n${'x'.repeat(version)}\n`));
    }
    await client.findings(name, ({ version }) => version === 30);
    const versions = client.published.map(({ version }) => version ?? 0);
    expect([...versions].sort((a, b) => a - b)).toEqual(versions);
    expect(versions.length).toBeLessThan(20);
  });

  test('of what lies between sheets, after those of the sheet', async () => {
    const other = clean
      .replaceAll('orlo-f27', 'orlo-f27-two')
      .replace('value: 13/64 in', 'value: 9/64 in');
    client.write('sheets/orlo-f27-two.md', other);
    await client.open(name, clean);
    const { diagnostics } = await client.findings(name, (each) =>
      each.diagnostics.some(({ relatedInformation }) =>
        relatedInformation?.some(({ location }) => location.uri.endsWith('two.md')),
      ),
    );
    expect(diagnostics.length).toBeGreaterThan(0);
    expect(client.published.find(({ uri }) => uri === client.uri(name))?.diagnostics).toEqual([]);
  });

  test('of a variant, when its base is changed in the editor and not saved', async () => {
    const variant = `---\ngaugeleaf: 1\nsheet: orlo-v\nbased-on: orlo-f27\ntitle: V\nrevision: 1\ndate: 2026-10-03\nstatus: proof\n---\n`;
    client.write('sheets/orlo-v.md', variant);
    await client.open('sheets/orlo-v.md', variant);
    await client.findings('sheets/orlo-v.md', () => true);
    await client.open(name, clean);
    await client.change(name, 2, whole(clean.replace('value: 13/64 in', 'value: 13/6x4 in')));
    const { diagnostics } = await client.findings('sheets/orlo-v.md', (each) =>
      each.diagnostics.some(({ code }) => code === 'size-unreadable'),
    );
    const found = diagnostics.find(({ code }) => code === 'size-unreadable');
    // It stands at the words that name the base, and leads there.
    expect(found?.range.start).toEqual({ line: 3, character: 10 });
    expect(found?.relatedInformation?.[0]?.location.uri).toBe(client.uri(name));
  });

  test('of a sheet whose base somebody else writes on disk', async () => {
    const variant = `---\ngaugeleaf: 1\nsheet: orlo-v\nbased-on: orlo-f27\ntitle: V\nrevision: 1\ndate: 2026-10-03\nstatus: proof\n---\n`;
    await client.open('sheets/orlo-v.md', variant);
    await client.findings('sheets/orlo-v.md', () => true);
    client.write(name, clean.replace('value: 13/64 in', 'value: 13/6x4 in'));
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: client.uri(name), type: 2 }],
    });
    await client.findings('sheets/orlo-v.md', (each) =>
      each.diagnostics.some(({ code }) => code === 'size-unreadable'),
    );
  });

  test('of the edition file, and none of a page that is no sheet', async () => {
    const wrong = edition.replace('orlo-f27', 'orlo-f72');
    client.write('edition.yaml', wrong);
    await client.open('edition.yaml', wrong);
    const { diagnostics } = await client.findings('edition.yaml', () => true);
    expect(diagnostics.map(({ code }) => code)).toContain('edition-sheet-missing');
    await client.open('README.md', '# A page\n\n<b>bold</b>\n');
    expect((await client.findings('README.md', () => true)).diagnostics).toEqual([]);
    expect(
      await client.ask('textDocument/hover', 'README.md', { position: { line: 0, character: 3 } }),
    ).toBeNull();
  });

  test('are taken back when a file is closed', async () => {
    await client.open(name, clean.replace('status: proof', 'status: prof'));
    await client.findings(name, (each) => each.diagnostics.length > 0);
    await client.connection.sendNotification('textDocument/didClose', {
      textDocument: { uri: client.uri(name) },
    });
    await client.findings(
      name,
      (each) => each === client.published.at(-1) && each.diagnostics.length === 0,
    );
  });
});

describe('answers', () => {
  test('completion: what is near by size is not filtered by letters', async () => {
    const { text, position } = cursor(clean.replace('value: 13/64 in', 'value: 0.136|'));
    await client.open(name, text);
    const list = await client.ask<CompletionList>('textDocument/completion', name, { position });
    expect(list.isIncomplete).toBe(true);
    expect(list.items.every(({ label }) => label !== '')).toBe(true);
    const drill = list.items.find(({ label }) => label === 'No. 29 drill');
    expect(drill?.filterText).toBe('0.136');
  });

  test('completion: a setting comes as a snippet, or plain where the editor has none', async () => {
    const { text, position } = cursor(clean.replace('settings:\n', 'settings:\n  float-d|\n'));
    await client.open(name, text);
    const list = await client.ask<CompletionList>('textDocument/completion', name, { position });
    const drop = list.items.find(({ label }) => label === 'float-drop');
    expect(drop?.insertTextFormat).toBe(2);
    expect(JSON.stringify(drop?.textEdit)).toContain('value: $0');
  });

  test('hover, in Markdown that shows names as they are', async () => {
    await client.open(name, clean);
    const line = clean.split('\n').findIndex((each) => each.includes('value: 13/64 in'));
    const found = await client.ask<Hover>('textDocument/hover', name, {
      position: { line, character: 15 },
    });
    expect(Hover.is(found)).toBe(true);
    expect(JSON.stringify(found.contents)).toContain('**13/64 in**');
  });

  test('definition, references, symbols, folding, links and figures behind marks', async () => {
    await client.open(name, clean);
    const lines = clean.split('\n');
    const line = lines.findIndex((each) => each.includes(':value[float-level]'));
    const position = { line, character: (lines[line] ?? '').indexOf('float-level') + 2 };
    const to = await client.ask<Location>('textDocument/definition', name, { position });
    expect(Location.is(to)).toBe(true);
    expect(lines[to.range.start.line]).toBe('  float-level:');
    const all = await client.ask<Location[]>('textDocument/references', name, {
      position,
      context: { includeDeclaration: false },
    });
    expect(all.length).toBe(1);
    const symbols = await client.ask<DocumentSymbol[]>('textDocument/documentSymbol', name);
    expect(symbols.every((each) => DocumentSymbol.is(each))).toBe(true);
    const folds = await client.ask<FoldingRange[]>('textDocument/foldingRange', name);
    expect(folds.every((each) => FoldingRange.is(each))).toBe(true);
    const links = await client.ask<DocumentLink[]>('textDocument/documentLink', name);
    expect(links.every((each) => DocumentLink.is(each))).toBe(true);
    const range = { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } };
    const figures = await client.ask<InlayHint[]>('textDocument/inlayHint', name, { range });
    expect(figures.every((each) => InlayHint.is(each))).toBe(true);
    expect(figures.map(({ label }) => label)).toContain('13/64 in');
  });

  test('actions: a cure that is made in the editor leaves nothing to find', async () => {
    const wrong = clean.replace('status: proof', 'status: prof');
    await client.open(name, wrong);
    const { diagnostics } = await client.findings(name, (each) => each.diagnostics.length > 0);
    const found = await client.ask<CodeAction[]>('textDocument/codeAction', name, {
      range: diagnostics[0]?.range,
      context: { diagnostics },
    });
    expect(found.map(({ title }) => title)).toEqual(['write `proof`']);
    expect(found[0]?.diagnostics).toEqual(diagnostics);
    expect(CodeAction.is(found[0])).toBe(true);
    expect(made(wrong, found[0]?.edit ?? {})).toBe(clean);
  });

  test('rename of a sheet: in those based on it, in the edition, and its file', async () => {
    const variant = `---\ngaugeleaf: 1\nsheet: orlo-v\nbased-on: orlo-f27\ntitle: V\nrevision: 1\ndate: 2026-10-03\nstatus: proof\n---\n`;
    client.write('sheets/orlo-v.md', variant);
    const titled = edition.replace('title: Demo', 'title: The orlo-f27 and others');
    client.write('edition.yaml', titled);
    await client.open(name, clean);
    const line = clean.split('\n').indexOf('sheet: orlo-f27');
    const position = { line, character: 9 };
    const edit = await client.ask<WorkspaceEdit>('textDocument/rename', name, {
      position,
      newName: 'orlo-f28',
    });
    expect(WorkspaceEdit.is(edit)).toBe(true);
    const uris = edit.documentChanges?.map((each) =>
      'textDocument' in each ? each.textDocument.uri : each.kind,
    );
    expect(uris).toEqual([
      client.uri(name),
      client.uri('sheets/orlo-v.md'),
      client.uri('edition.yaml'),
      'rename',
    ]);
    // In the order of the edition, and not where its title speaks of the unit.
    const listed = edit.documentChanges?.[2];
    const places = listed && 'edits' in listed ? listed.edits : [];
    expect(places.map((each) => 'range' in each && each.range.start.line)).toEqual([
      titled.split('\n').findIndex((each) => each.startsWith('order:')),
    ]);
    await expect(
      client.ask('textDocument/rename', name, { position, newName: 'orlo-v' }),
    ).rejects.toThrow('there is a sheet `orlo-v` already');
  });

  test('a search through the project can be called off', async () => {
    for (let i = 0; i < 40; i++)
      client.write(`sheets/other-${i}.md`, clean.replace('sheet: orlo-f27', `sheet: other-${i}`));
    await client.open(name, clean);
    const asked = client.connection.sendRequest(
      'textDocument/references',
      {
        textDocument: { uri: client.uri(name) },
        position: {
          line: clean.split('\n').findIndex((each) => each.startsWith('  m48')),
          character: 3,
        },
        context: { includeDeclaration: true },
      },
      {
        isCancellationRequested: false,
        onCancellationRequested: (call: () => void) => ({
          dispose: () => call,
          ...(setTimeout(call, 5) && {}),
        }),
      } as never,
    );
    await expect(asked).rejects.toMatchObject({ code: -32800 });
  });
});

/** A text once the edits of a change to it are made. */
function made(text: string, edit: WorkspaceEdit): string {
  const [change] = edit.documentChanges ?? [];
  if (change === undefined || !('edits' in change)) throw new Error('no edits');
  const document = TextDocument.create('file:///a.md', 'markdown', 1, text);
  return TextDocument.applyEdits(document, change.edits as never);
}

test('the demo opens without findings', async () => {
  const id = 'orlo-t71-wexcombe-six';
  const text = readFileSync(new URL(`../../sheets/${id}.md`, import.meta.url), 'utf8');
  client.write(`sheets/${id}.md`, text);
  await client.open(`sheets/${id}.md`, text);
  const { diagnostics } = await client.findings(`sheets/${id}.md`, () => true);
  expect(diagnostics.filter(({ code }) => code !== 'picture-unprintable')).toEqual([]);
});

test('an editor that watches no files is told all the same', async () => {
  const variant =
    '---\ngaugeleaf: 1\nsheet: orlo-v\nbased-on: orlo-f27\ntitle: V\nrevision: 1\ndate: 2026-10-03\nstatus: proof\n---\n';
  await client.open('sheets/orlo-v.md', variant);
  await client.findings('sheets/orlo-v.md', () => true);
  client.write(name, clean.replace('value: 13/64 in', 'value: 13/6x4 in'));
  await client.findings('sheets/orlo-v.md', (each) =>
    each.diagnostics.some(({ code }) => code === 'size-unreadable'),
  );
});
