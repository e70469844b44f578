import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire, Module } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { unzipSync } from 'fflate';
import { SaxesParser } from 'saxes';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { packExtension } from '../../src/build/pack-extension.mjs';
import { markedBlocks, root } from '../docs/marked-blocks.ts';

let folder: string;
let bytes: Buffer;
let files: Record<string, Uint8Array>;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-extension-'));
  bytes = readFileSync(await packExtension(root, folder));
  files = unzipSync(bytes);
  for (const [name, data] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), data);
  }
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const text = (name: string) => Buffer.from(files[name] ?? []).toString('utf8');

test('is packed by the script that the page names', () => {
  const page = readFileSync(join(root, 'docs', 'language-server.md'), 'utf8');
  const said = markedBlocks(page).find(({ mark }) => mark === 'extension')?.text ?? '';
  const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  expect(scripts[/^npm run (\S+)$/m.exec(said)?.[1] ?? '']).toContain('pack-extension.mjs');
  expect(said).toContain('dist/gaugeleaf-*.vsix');
});

test('is packed to the same bytes each time', async () => {
  expect(readFileSync(await packExtension(root, join(folder, 'again'))).equals(bytes)).toBe(true);
});

test('says in well-formed XML what is in it, and all of that is there', () => {
  const paths: string[] = [];
  for (const name of ['[Content_Types].xml', 'extension.vsixmanifest']) {
    const parser = new SaxesParser();
    parser.on('error', (error) => {
      throw error;
    });
    parser.on('opentag', (tag) => {
      if (tag.name === 'Asset') paths.push(String(tag.attributes.Path));
    });
    parser.write(text(name)).close();
  }
  expect(paths.length).toBeGreaterThan(2);
  for (const path of paths) expect(Object.keys(files)).toContain(path);
  const manifest = JSON.parse(text('extension/package.json'));
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  expect(manifest.version).toBe(version);
  expect(text('extension.vsixmanifest')).toContain(`Version="${version}"`);
  const named = [
    manifest.main,
    ...manifest.contributes.yamlValidation.map((each: { url: string }) => each.url),
  ];
  for (const each of named) expect(Object.keys(files)).toContain(join('extension', each));
});

test('its server answers, from wherever it was unpacked', async () => {
  const server = spawn(process.execPath, [join(folder, 'extension', 'server.mjs')], {
    cwd: folder,
  });
  const client = createProtocolConnection(
    new StreamMessageReader(server.stdout),
    new StreamMessageWriter(server.stdin),
  );
  client.listen();
  const answer = await client.sendRequest('initialize', {
    processId: null,
    rootUri: null,
    capabilities: {},
  });
  expect(answer).toMatchObject({ serverInfo: { name: 'gaugeleaf' } });
  await client.sendRequest('shutdown');
  await client.sendNotification('exit');
  await new Promise((done) => server.on('exit', done));
  client.dispose();
});

test('its entry is loaded by the editor, and has what the editor calls', () => {
  // Whatever is asked of the editor's own module is there and can be called, made and extended.
  const anything: unknown = new Proxy(class {}, {
    get: (target, key) => (key in target ? Reflect.get(target, key) : anything),
    apply: () => anything,
  });
  const loader = Module as unknown as { _load: (name: string, ...rest: unknown[]) => unknown };
  const load = loader._load;
  loader._load = (name, ...rest) =>
    name === 'vscode' ? anything : load.call(loader, name, ...rest);
  try {
    const entry = createRequire(import.meta.url)(join(folder, 'extension', 'extension.cjs'));
    expect(Object.keys(entry).sort()).toEqual(['activate', 'deactivate']);
  } finally {
    loader._load = load;
  }
});
