import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const wrong = cleanSheet('wrong', { settings: '  float-drop: { value: 1-1/4 in, from: m49 }\n' });
const project = () =>
  folderWith({
    'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Settings\n',
    'sheets/clean.md': cleanSheet('clean'),
    'sheets/wrong.md': wrong,
  });

describe('gaugeleaf check', () => {
  it('prints findings by file and ends in 1 when one stops the press', async () => {
    const { status, out, err } = await gaugeleaf(['check'], { cwd: project() });
    expect(status).toBe(1);
    expect(err).toBe('');
    const lines = out.split('\n');
    expect(lines[0]).toBe('sheets/wrong.md');
    expect(lines).toContain('   22:3  warning  setting-unused');
    expect(lines).toContain('  22:40  error    source-unknown');
    expect(lines.at(-2)).toBe('1 error, 1 warning in 1 of 2 sheets');
  });

  it('ends in 0 with nothing found, from inside the sheets folder too', async () => {
    const cwd = project();
    const one = await gaugeleaf(['check', 'sheets/clean.md'], { cwd });
    expect(one).toEqual({ status: 0, out: 'No findings in 1 sheet\n', err: '' });
    const inside = await gaugeleaf(['check', 'clean.md'], { cwd: join(cwd, 'sheets') });
    expect(inside.status).toBe(0);
    const byName = await gaugeleaf(['check', 'clean'], { cwd });
    expect(byName.status).toBe(0);
  });

  it('lets warnings pass on a proof and stops them on a released sheet, unless accepted', async () => {
    const drop = '  float-drop: { value: 1-1/4 in, from: m48 p. 32 }\n';
    const proof = cleanSheet('a', { settings: drop });
    const released = proof.replace('status: proof', 'status: released');
    const accepted = released.replace(
      '---\n\n#',
      'accept: [{ finding: setting-unused, at: float-drop, reason: Riveted float }]\n---\n\n#',
    );
    const check = async (text: string, ...more: string[]) =>
      gaugeleaf(['check', ...more], { cwd: folderWith({ 'sheets/a.md': text }) });
    expect((await check(proof)).status).toBe(0);
    expect((await check(released)).status).toBe(1);
    const quiet = await check(accepted);
    expect(quiet.status).toBe(0);
    expect(quiet.out).toBe('No findings in 1 sheet; 1 accepted by the editor\n');
    expect((await check(accepted, '--all')).out).toContain('accepted: Riveted float');
  });

  it('writes JSON of the promised shape', async () => {
    const { status, out } = await gaugeleaf(['check', '--format', 'json'], { cwd: project() });
    const { findings, counts } = JSON.parse(out);
    expect(status).toBe(1);
    expect(counts).toEqual({ error: 1, warning: 1, note: 0 });
    expect(findings[0]).toMatchObject({
      name: 'setting-unused',
      severity: 'warning',
      file: 'sheets/wrong.md',
      line: 22,
      column: 3,
      message: '`float-drop` is given, but no step uses it',
    });
  });

  it('writes SARIF and annotations', async () => {
    const cwd = project();
    const sarif = JSON.parse((await gaugeleaf(['check', '--format', 'sarif'], { cwd })).out);
    expect(sarif.runs[0].results.map((each: { ruleId: string }) => each.ruleId)).toEqual([
      'setting-unused',
      'source-unknown',
    ]);
    const github = await gaugeleaf(['check', '--format=github'], { cwd });
    expect(github.out).toContain('::error file=sheets/wrong.md,line=22,col=40,');
    expect(github.status).toBe(1);
  });

  it('checks the edition and the club’s kinds with the whole project', async () => {
    const cwd = folderWith({
      'edition.yaml': 'gaugeleaf-edition: 1\ntitle: x\norder: [claen]\n',
      'sheets/clean.md': cleanSheet('clean'),
    });
    const { status, out } = await gaugeleaf(['check'], { cwd });
    expect(status).toBe(1);
    expect(out).toContain('edition-sheet-missing');
    expect(out).toContain('fix: `clean`, if that was meant; otherwise take the line out');
    expect(out).toContain('in 1 of 2 files');
    expect((await gaugeleaf(['check', 'sheets/clean.md'], { cwd })).status).toBe(0);
  });

  it('colors on a terminal, and heeds NO_COLOR and FORCE_COLOR', async () => {
    const cwd = project();
    const colored = async (env: Record<string, string>, tty: boolean) =>
      (await gaugeleaf(['check'], { cwd, env, tty })).out.includes('\u001b[');
    expect(await colored({}, false)).toBe(false);
    expect(await colored({}, true)).toBe(true);
    expect(await colored({ TERM: 'dumb' }, true)).toBe(false);
    expect(await colored({ NO_COLOR: '1' }, true)).toBe(false);
    expect(await colored({ NO_COLOR: '1', FORCE_COLOR: '1' }, true)).toBe(false);
    expect(await colored({ NO_COLOR: '' }, true)).toBe(true);
    expect(await colored({ FORCE_COLOR: '1' }, false)).toBe(true);
    expect(await colored({ FORCE_COLOR: '0' }, true)).toBe(false);
  });
});

describe('hostile files', () => {
  it('are found or refused, never crash, and the others are still checked', async () => {
    const outside = folderWith({ 'secret.md': 'top secret words' });
    const root = folderWith({
      'sheets/clean.md': cleanSheet('clean'),
      'sheets/empty.md': '',
      'sheets/latin.md': Buffer.from(cleanSheet('latin', { work: '\n12°\n' }), 'latin1'),
      'sheets/nul.md': cleanSheet('nul', { work: '\na\0b\n' }),
      'sheets/wide.md': Buffer.from(cleanSheet('wide'), 'utf16le'),
      'sheets/binary.md': Buffer.from([0x89, 0x50, 0xff, 0x00, 0xc3, 0x28]),
      'sheets/front.md': '---\ntitle: x\n---\n',
      'sheets/bomb.md': `---\na: &a [x,x]\nb: &b [*a,*a]\nc: &c [*b,*b]\nd: [*c,*c,*c]\n---\n`,
      'sheets/deep.md': `---\na: ${'['.repeat(5000)}\n---\n${'> '.repeat(5000)}x\n`,
      'sheets/table.md': `${cleanSheet('table')}\n| a |\n| - |\n${'| b |\n'.repeat(100_000)}`,
      'sheets/huge.md': Buffer.alloc(2 * 1024 * 1024, '# a\n'),
      'sheets/path.md': cleanSheet('path', { work: '\n![a](../../../../etc/passwd.png)\n' }),
    });
    mkdirSync(join(root, 'sheets/x.md'));
    execFileSync('mkfifo', [join(root, 'sheets/pipe.md')]);
    symlinkSync(join(outside, 'secret.md'), join(root, 'sheets/link.md'));
    symlinkSync('nowhere.md', join(root, 'sheets/lost.md'));
    const started = performance.now();
    const { status, out, err } = await gaugeleaf(['check', '--format', 'json'], { cwd: root });
    expect(performance.now() - started).toBeLessThan(10_000);
    expect(status).toBe(2);
    const { findings, refused } = JSON.parse(out);
    const files = new Set(findings.map((finding: { file: string }) => finding.file));
    for (const name of [
      'empty',
      'latin',
      'nul',
      'wide',
      'binary',
      'front',
      'bomb',
      'deep',
      'table',
      'path',
    ]) {
      expect(files, name).toContain(`sheets/${name}.md`);
    }
    expect(files).not.toContain('sheets/clean.md');
    expect(refused.map((each: { file: string }) => each.file)).toEqual(
      ['huge', 'link', 'lost', 'pipe', 'x'].map((name) => `sheets/${name}.md`),
    );
    expect(out + err).not.toContain('top secret');
    expect(err).toContain('gaugeleaf: sheets/x.md is a folder, not a file');
    expect(err).not.toMatch(/\n\s+at /);
  });

  it('named outright are refused just the same', async () => {
    const cwd = folderWith();
    mkdirSync(join(cwd, 'x.md'));
    const { status, out, err } = await gaugeleaf(['check', 'x.md'], { cwd });
    expect(status).toBe(2);
    expect(err).toBe(
      'gaugeleaf: x.md is a folder, not a file\n           give the folder another name\n',
    );
    expect(out).toContain('No findings in 0 sheets');
  });
});

describe('gaugeleaf check --fix', () => {
  const broken = cleanSheet('a', {
    work: '\n## Notes\n\n::: warning{hazard=solvent}\nGoggles.\n:::\n\nWipe it clean.\n',
  });

  it('mends what is certain, keeps everything else, and says what it did', async () => {
    const crlf = `\ufeff${broken.replaceAll('\n', '\r\n')}`;
    const cwd = folderWith({ 'sheets/a.md': crlf });
    const { out, err } = await gaugeleaf(['check', '--fix'], { cwd });
    const after = readFileSync(join(cwd, 'sheets/a.md'), 'utf8');
    expect(after).toBe(crlf.replace('::: warning{hazard=solvent}', ':::warning{hazard=solvent}'));
    expect(err).toBe('mended 1 finding in sheets/a.md (message-broken)\n');
    expect(out).not.toContain('message-broken');
    const again = await gaugeleaf(['check', '--fix'], { cwd });
    expect(again.err).toBe('');
    expect(readFileSync(join(cwd, 'sheets/a.md'), 'utf8')).toBe(after);
  });

  it('leaves a file in another encoding alone', async () => {
    const bytes = Buffer.from(broken.replace('Goggles.', 'Goggles, 12°.'), 'latin1');
    const cwd = folderWith({ 'sheets/a.md': bytes });
    const { status } = await gaugeleaf(['check', '--fix'], { cwd });
    expect(status).toBe(1);
    expect(readFileSync(join(cwd, 'sheets/a.md')).equals(bytes)).toBe(true);
  });
});
