import { appendFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ChangeSet } from '@codemirror/state';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { OpenedSheet, Pushed } from '../../src/desk-page/model.ts';
import { oneChange } from '../../src/desk-page/one-change.ts';
import { LineEnds } from '../../src/desk-server/line-ends.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { type AtDesk, atDesk } from './at-desk.ts';

const id = 'orlo-f27-wexcombe-four';
const sheet = cleanSheet(id);
const files = { [`sheets/${id}.md`]: sheet };
const fileOf = (folder: string) => join(folder, 'sheets', `${id}.md`);
const journalOf = (folder: string) => join(folder, '.gaugeleaf/desk', `${id}.journal`);

async function opened(desk: AtDesk): Promise<OpenedSheet> {
  return JSON.parse((await desk.get(`sheet/${id}`)).text);
}

/** Puts text in at a place, as one window does that knows the sheet as it is. */
async function type(desk: AtDesk, text: string, at: number, clientID = 'one'): Promise<Pushed> {
  const { text: before, version } = await opened(desk);
  const changes = ChangeSet.of({ from: at, insert: text }, before.length).toJSON();
  return JSON.parse(
    (await desk.post(`sheet/${id}/push`, { version, updates: [{ clientID, changes }] })).text,
  );
}

describe('saving', () => {
  test('writes what was typed, and takes the journal away', async () => {
    const folder = folderWith(files);
    const desk = await atDesk(folder);
    await type(desk, '# remark\n', 4);
    expect(readFileSync(fileOf(folder), 'utf8')).toBe(sheet);
    expect(await opened(desk)).toMatchObject({ unsaved: true });
    expect(existsSync(journalOf(folder))).toBe(true);
    expect(JSON.parse((await desk.post(`sheet/${id}/save`, {})).text)).toEqual({ ok: true });
    expect(readFileSync(fileOf(folder), 'utf8')).toBe(`---\n# remark\n${sheet.slice(4)}`);
    expect(existsSync(journalOf(folder))).toBe(false);
    expect(await opened(desk)).toMatchObject({ unsaved: false, restored: false });
  });

  test('line ends of a file stay: all CR LF, or mixed', async () => {
    const crLf = sheet.replaceAll('\n', '\r\n');
    const mixed = crLf.replace('\r\n', '\n');
    for (const content of [crLf, mixed]) {
      const folder = folderWith({ [`sheets/${id}.md`]: content });
      const desk = await atDesk(folder);
      const { text } = await opened(desk);
      expect(text).toBe(content === crLf ? sheet : mixed);
      await type(desk, 'X', text.indexOf('Refit'));
      await desk.post(`sheet/${id}/save`, {});
      expect(readFileSync(fileOf(folder), 'utf8')).toBe(content.replace('Refit', 'XRefit'));
    }
  });

  test('what another program wrote meanwhile is shown, and not written over', async () => {
    const folder = folderWith(files);
    const desk = await atDesk(folder);
    await type(desk, '# mine\n', 4);
    const theirs = sheet.replace('revision: 1', 'revision: 2');
    writeFileSync(fileOf(folder), theirs);
    const saved = JSON.parse((await desk.post(`sheet/${id}/save`, {})).text);
    expect(saved).toEqual({
      ok: false,
      why: `sheets/${id}.md was changed by another program; it is not written over`,
      differing: { text: theirs },
    });
    expect(readFileSync(fileOf(folder), 'utf8')).toBe(theirs);
    expect(await opened(desk)).toMatchObject({ unsaved: true, differing: { text: theirs } });

    await desk.post(`sheet/${id}/settle`, { keep: 'mine' });
    expect(await opened(desk)).toMatchObject({ unsaved: true, differing: null });
    expect(JSON.parse((await desk.post(`sheet/${id}/save`, {})).text)).toEqual({ ok: true });
    expect(readFileSync(fileOf(folder), 'utf8')).toBe(`---\n# mine\n${sheet.slice(4)}`);
    const aside = join(folder, '.gaugeleaf/desk/aside');
    expect(readdirSync(aside).map((name) => readFileSync(join(aside, name), 'utf8'))).toEqual([
      theirs,
    ]);
  });

  test('the file’s text can be taken up instead, and one’s own is kept aside', async () => {
    const folder = folderWith(files);
    const desk = await atDesk(folder);
    await type(desk, '# mine\n', 4);
    const theirs = sheet.replace('revision: 1', 'revision: 2');
    writeFileSync(fileOf(folder), theirs);
    await desk.post(`sheet/${id}/save`, {});
    await desk.post(`sheet/${id}/settle`, { keep: 'file' });
    expect(await opened(desk)).toMatchObject({ text: theirs, unsaved: false, differing: null });
    expect(existsSync(journalOf(folder))).toBe(false);
    const aside = join(folder, '.gaugeleaf/desk/aside');
    expect(readFileSync(join(aside, readdirSync(aside)[0] ?? ''), 'utf8')).toContain('# mine');
  });

  test('a file that changes while nothing is typed is taken up by itself', async () => {
    const folder = folderWith(files);
    const desk = await atDesk(folder);
    const before = await opened(desk);
    writeFileSync(fileOf(folder), sheet.replace('revision: 1', 'revision: 2'));
    await expect
      .poll(async () => (await opened(desk)).text, { timeout: 5000 })
      .toContain('revision: 2');
    expect((await opened(desk)).version).toBe(before.version + 1);
    expect(await opened(desk)).toMatchObject({ unsaved: false, differing: null });
  });

  test('a file that was taken away is written again only when that is said', async () => {
    const folder = folderWith({ ...files, 'sheets/other.md': cleanSheet('other') });
    const desk = await atDesk(folder);
    await type(desk, '# mine\n', 4);
    const path = fileOf(folder);
    const { rmSync } = await import('node:fs');
    rmSync(path);
    const saved = JSON.parse((await desk.post(`sheet/${id}/save`, {})).text);
    expect(saved).toMatchObject({ ok: false, differing: { text: null } });
    expect(existsSync(path)).toBe(false);
    expect((await desk.post(`sheet/${id}/settle`, { keep: 'file' })).status).toBe(409);
    await desk.post(`sheet/${id}/settle`, { keep: 'mine' });
    expect(JSON.parse((await desk.post(`sheet/${id}/save`, {})).text)).toEqual({ ok: true });
    expect(readFileSync(path, 'utf8')).toContain('# mine');
  });

  test('a file that is no UTF-8 is locked', async () => {
    const bytes = Buffer.concat([Buffer.from(sheet), Buffer.from([0xe9, 0x0a])]);
    const folder = folderWith({ [`sheets/${id}.md`]: bytes });
    const desk = await atDesk(folder);
    const { locked } = await opened(desk);
    expect(locked).toContain('is not UTF-8 throughout');
    expect((await desk.post(`sheet/${id}/push`, { version: 0, updates: [] })).status).toBe(409);
    expect(JSON.parse((await desk.post(`sheet/${id}/save`, {})).text).ok).toBe(false);
    expect(readFileSync(fileOf(folder)).equals(bytes)).toBe(true);
  });
});

describe('two windows', () => {
  test('one that did not know of a change is given it first', async () => {
    const desk = await atDesk(folderWith(files));
    const { version, text } = await opened(desk);
    const change = (insert: string) => ChangeSet.of({ from: 4, insert }, text.length).toJSON();
    const push = async (clientID: string, insert: string) =>
      JSON.parse(
        (
          await desk.post(`sheet/${id}/push`, {
            version,
            updates: [{ clientID, changes: change(insert) }],
          })
        ).text,
      );
    expect(await push('one', '# a\n')).toEqual({ ok: true, version: version + 1 });
    expect(await push('two', '# b\n')).toEqual({
      ok: false,
      version: version + 1,
      updates: [{ clientID: 'one', changes: change('# a\n') }],
    });
    expect((await opened(desk)).text).toContain('# a\n');
    const late = JSON.parse((await desk.get(`sheet/${id}?from=0`)).text);
    expect(late.updates).toHaveLength(1);
    expect(JSON.parse((await desk.get(`sheet/${id}?from=99`)).text).updates).toBeNull();
  });
});

describe('what was not saved', () => {
  test('is there again at the next desk, and a last line that was cut off is passed over', async () => {
    const folder = folderWith(files);
    const first = await atDesk(folder);
    await type(first, '# one\n', 4);
    await type(first, '# two\n', 4);
    await first.running.close();
    appendFileSync(journalOf(folder), '[4,["torn');
    const second = await atDesk(folder);
    const text = `---\n# two\n# one\n${sheet.slice(4)}`;
    expect(await opened(second)).toMatchObject({
      text,
      restored: true,
      unsaved: true,
      differing: null,
    });
    expect(readFileSync(fileOf(folder), 'utf8')).toBe(sheet);
    // Further typing goes on in the same journal, and a third desk has all of it.
    await type(second, '# three\n', 4);
    await second.running.close();
    const third = await atDesk(folder);
    expect((await opened(third)).text).toBe(`---\n# three\n# two\n# one\n${sheet.slice(4)}`);
  });

  test('is shown as a difference where the file changed in between', async () => {
    const folder = folderWith(files);
    const first = await atDesk(folder);
    await type(first, '# one\n', 4);
    await first.running.close();
    const theirs = sheet.replace('revision: 1', 'revision: 2');
    writeFileSync(fileOf(folder), theirs);
    const second = await atDesk(folder);
    expect(await opened(second)).toMatchObject({ restored: true, differing: { text: theirs } });
    expect(JSON.parse((await second.post(`sheet/${id}/save`, {})).text).ok).toBe(false);
    expect(readFileSync(fileOf(folder), 'utf8')).toBe(theirs);
  });

  test('what was typed and taken back leaves nothing', async () => {
    const folder = folderWith(files);
    const desk = await atDesk(folder);
    await type(desk, 'x', 4);
    const { text, version } = await opened(desk);
    const changes = ChangeSet.of({ from: 4, to: 5 }, text.length).toJSON();
    await desk.post(`sheet/${id}/push`, { version, updates: [{ clientID: 'one', changes }] });
    expect(existsSync(journalOf(folder))).toBe(false);
  });

  test('a damaged journal is passed over', async () => {
    const folder = folderWith(files);
    const first = await atDesk(folder);
    await type(first, '# one\n', 4);
    await first.running.close();
    writeFileSync(journalOf(folder), '{"base":');
    const second = await atDesk(folder);
    expect(await opened(second)).toMatchObject({ text: sheet, restored: false });
  });
});

describe('the edition', () => {
  test('is searched by size and by words, once its sheets are read', async () => {
    const desk = await atDesk(folderWith({ ...files, 'sheets/other.md': cleanSheet('other') }));
    const find = async (words: string) =>
      JSON.parse((await desk.get(`find?q=${encodeURIComponent(words)}`)).text);
    await expect.poll(async () => (await find('5.16 mm')).length, { timeout: 5000 }).toBe(2);
    expect((await find('5.16 mm'))[0]).toMatchObject({
      sheet: id,
      words: 'Float level: 13/64 in',
      line: 17,
    });
    expect(await find('nowhere at all')).toEqual([]);
  });

  test('has variants and kinds begun by the command', async () => {
    const ran: (readonly string[])[] = [];
    const folder = folderWith(files);
    const desk = await atDesk(folder, {
      run: async (argv) => {
        ran.push(argv);
        return { status: 0, out: 'sheets/a.md\n', talk: '' };
      },
    });
    const order = (order: object) => desk.post('order', { job: 'j', order });
    const made = await order({ do: 'new-variant', base: id, name: 'a', title: '--b' });
    expect(JSON.parse(made.text)).toMatchObject({ status: 0, sheet: 'a' });
    await order({ do: 'new-kind', name: 'vacuum-pump', title: 'Vacuum pump' });
    expect(ran).toEqual([
      [
        'draft',
        `--based-on=${fileOf(folder)}`,
        `--out=${join(folder, 'sheets/a.md')}`,
        '--title=--b',
      ],
      ['draft', '--new-kind=vacuum-pump', '--title=Vacuum pump'],
    ]);
    for (const bad of [
      { do: 'new-variant', base: '../x', name: 'a', title: 'a' },
      { do: 'new-variant', base: id, name: '../a', title: 'a' },
      { do: 'new-kind', name: '../../etc', title: 'a' },
    ]) {
      expect((await order(bad)).status).toBe(409);
    }
    expect(ran).toHaveLength(2);
  });
});

describe('by any text', () => {
  test('one change makes the one of the other', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 40 }), fc.string({ maxLength: 40 }), (a, b) => {
        const json = oneChange(a, b).toJSON();
        const changes = ChangeSet.fromJSON(json);
        let out = '';
        let at = 0;
        changes.iterChanges((from, to, _, __, insert) => {
          out += a.slice(at, from) + insert.toString();
          at = to;
        });
        expect(out + a.slice(at)).toBe(b);
      }),
    );
  });

  test('line ends come back as they were', () => {
    const lines = fc.array(fc.constantFrom('a', '\r\n', '\n', '\r', 'b'), { maxLength: 20 });
    fc.assert(
      fc.property(lines, (parts) => {
        const content = parts.join('');
        const ends = new LineEnds(content);
        expect(ends.written(ends.shown(content))).toBe(content);
      }),
    );
  });
});
