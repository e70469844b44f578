import {
  chmodSync,
  existsSync,
  mkdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { longestBody } from '../../src/desk-server/body.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { ask, atDesk } from './at-desk.ts';

const id = 'orlo-f27-wexcombe-four';
const files = {
  [`sheets/${id}.md`]: cleanSheet(id),
  'edition.yaml': 'gaugeleaf-edition: 1\ntitle: A club\n',
};

describe('who may ask', () => {
  test('it listens on the loopback address alone', async () => {
    const desk = await atDesk(folderWith(files));
    expect(new URL(desk.running.address()).hostname).toBe('127.0.0.1');
    await expect(
      new Promise((done, failed) => {
        request({ host: '127.0.0.2', port: desk.port, timeout: 2000 }, done)
          .on('error', failed)
          .end();
      }),
    ).rejects.toMatchObject({ code: 'ECONNREFUSED' });
  });

  test('another name that leads here is turned away, cookie or not', async () => {
    const desk = await atDesk(folderWith(files));
    for (const host of [
      'evil.example',
      `evil.example:${desk.port}`,
      `localhost:${desk.port}`,
      '127.0.0.1',
    ]) {
      const answer = await desk.bare(`${desk.base}edition`, {
        headers: { cookie: desk.cookie, host },
      });
      expect([host, answer.status]).toEqual([host, 421]);
      expect(answer.text).not.toContain(id);
    }
  });

  test('a page of another origin is turned away, cookie or not', async () => {
    const desk = await atDesk(folderWith(files));
    for (const origin of [
      'http://evil.example',
      'null',
      `http://127.0.0.1:${desk.port + 1}`,
      `https://127.0.0.1:${desk.port}`,
    ]) {
      const headers = { cookie: desk.cookie, origin, 'content-type': 'application/json' };
      const read = await desk.bare(`${desk.base}sheet/${id}`, { headers });
      const save = await desk.bare(`${desk.base}sheet/${id}/save`, {
        method: 'POST',
        headers,
        body: '{}',
      });
      expect([origin, read.status, save.status]).toEqual([origin, 403, 403]);
    }
    for (const site of ['cross-site', 'same-site']) {
      const headers = { cookie: desk.cookie, 'sec-fetch-site': site };
      expect((await desk.bare(`${desk.base}edition`, { headers })).status).toBe(403);
    }
  });

  test('nothing is changed by who does not say where he comes from', async () => {
    const desk = await atDesk(folderWith(files));
    const headers = { cookie: desk.cookie, 'content-type': 'application/json' };
    const answer = await desk.bare(`${desk.base}sheet/${id}/save`, {
      method: 'POST',
      headers,
      body: '{}',
    });
    expect(answer.status).toBe(403);
  });

  test('a form of another page is no JSON', async () => {
    const desk = await atDesk(folderWith(files));
    const headers = {
      cookie: desk.cookie,
      origin: `http://127.0.0.1:${desk.port}`,
      'content-type': 'text/plain',
    };
    const answer = await desk.bare(`${desk.base}sheet/${id}/save`, {
      method: 'POST',
      headers,
      body: '{}',
    });
    expect(answer.status).toBe(415);
  });

  test('without the cookie there is nothing, and a wrong one is none', async () => {
    const desk = await atDesk(folderWith(files));
    const wrong = desk.cookie.replace(/.$/, (last) => (last === '0' ? '1' : '0'));
    for (const path of ['', 'edition', `sheet/${id}`, 'assets/desk.js', 'events']) {
      for (const headers of [{}, { cookie: wrong }, { cookie: 'gaugeleaf-desk=' }]) {
        const answer = await desk.bare(`${desk.base}${path}`, {
          headers: headers as Record<string, string>,
        });
        expect([path, answer.status]).toEqual([path, 401]);
      }
    }
  });

  test('a token opens one window, and a guessed one none', async () => {
    const desk = await atDesk(folderWith(files));
    const { pathname, search } = new URL(desk.running.address());
    const first = await desk.bare(`${pathname}${search}`);
    expect(first.status).toBe(200);
    const cookie = String(first.headers['set-cookie']);
    expect(cookie).toContain('HttpOnly');
    expect(cookie).toContain('SameSite=Strict');
    expect(cookie).toContain(`Path=${pathname}`);
    expect((await desk.bare(`${pathname}${search}`)).status).toBe(401);
    expect((await desk.bare(`${pathname}?token=${'0'.repeat(48)}`)).status).toBe(401);
    expect((await desk.bare(`${pathname}?token=`)).headers['set-cookie']).toBeUndefined();
  });

  test('the cookie alone leads nowhere from another place of the same address', async () => {
    const desk = await atDesk(folderWith(files));
    expect((await desk.bare('/edition', { headers: { cookie: desk.cookie } })).status).toBe(404);
  });
});

describe('what is let out', () => {
  test('every answer forbids scripts of its own, framing, sniffing and keeping', async () => {
    const desk = await atDesk(folderWith(files));
    const page = await desk.get('');
    expect(page.status).toBe(200);
    const policy = String(page.headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self';");
    expect(policy).not.toContain('unsafe');
    expect(policy).not.toMatch(/https?:|\*/);
    for (const { headers } of [
      page,
      await desk.get('edition'),
      await desk.get('nothing'),
      await desk.bare('/'),
    ]) {
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['referrer-policy']).toBe('no-referrer');
      expect(headers['cache-control']).toBe('no-store');
      expect(headers['cross-origin-resource-policy']).toBe('same-origin');
      expect(headers['access-control-allow-origin']).toBeUndefined();
      expect(headers['content-security-policy']).toContain("default-src 'none'");
    }
  });

  test('no path leads out of the project', async () => {
    const folder = folderWith({
      ...files,
      'secret.txt': 'a secret',
      'sheets/.hidden.md': 'a secret',
    });
    const desk = await atDesk(folder);
    const ways = [
      'sheet/../../secret.txt',
      'sheet/..%2f..%2fsecret',
      'sheet/%2e%2e%2fsecret.txt',
      'sheet/.hidden',
      `sheet/${id}%00`,
      'sheet/..%5c..%5csecret',
      'sheet//etc/passwd',
      'assets/..%2f..%2fpackage.json',
      'assets/../../package.json',
      'assets/%2e%2e/gaugeleaf.js',
      'print/..%2fedition.yaml',
      'print/..%2f..%2fx.pdf',
      'frame/..%2f1',
      'context/..%2f..%2fsecret',
      '../secret.txt',
      'sheet/%',
    ];
    for (const way of ways) {
      const answer = await desk.get(way);
      expect([way, answer.status >= 400]).toEqual([way, true]);
      expect(answer.text).not.toContain('a secret');
      expect(answer.text).not.toContain('gaugeleaf-edition');
    }
  });

  test('of files that are no sheets only those of the project are opened, and no link out of it', async () => {
    const outside = folderWith({ 'secret.yaml': 'title: secret words\n' });
    const folder = folderWith({ ...files, 'kinds/own.yaml': 'gaugeleaf-kind: 1\n' });
    symlinkSync(join(outside, 'secret.yaml'), join(folder, 'kinds', 'linked.yaml'));
    const desk = await atDesk(folder);
    expect((await desk.get('sheet/kinds%2Fown.yaml')).status).toBe(200);
    for (const each of [
      'kinds%2Flinked.yaml',
      'kinds%2F..%2Fedition.yaml',
      '..%2Fsecret.yaml',
      'package.json',
      '.gaugeleaf%2Fdesk',
    ]) {
      const read = await desk.get(`sheet/${each}`);
      expect([each, read.status]).not.toEqual([each, 200]);
      expect(read.text).not.toContain('secret words');
    }
    for (const deed of ['check', 'places', 'rename']) {
      const body = { text: 'x', offset: 0, to: 'y' };
      const answer = await desk.post(`sheet/..%2Fsecret.yaml/${deed}`, body);
      expect([deed, answer.status >= 400]).toEqual([deed, true]);
    }
  });

  test('a link that leads out of the project is not read, and not written through', async () => {
    const outside = folderWith({ 'theirs.md': cleanSheet('theirs') });
    const folder = folderWith(files);
    symlinkSync(join(outside, 'theirs.md'), join(folder, 'sheets', 'theirs.md'));
    const desk = await atDesk(folder);
    for (const answer of [
      await desk.get('sheet/theirs'),
      await desk.post('sheet/theirs/save', {}),
    ]) {
      expect(answer.status).toBe(409);
      expect(JSON.parse(answer.text).message).toBe(
        'theirs.md is a link that leads out of the project; it is not read',
      );
    }
    mkdirSync(join(folder, 'print'));
    writeFileSync(join(outside, 'x.pdf'), 'theirs');
    symlinkSync(join(outside, 'x.pdf'), join(folder, 'print', 'x.pdf'));
    expect((await desk.get('print/x.pdf')).status).toBe(404);
  });

  test('a script in a sheet is no script on its page', async () => {
    const evil = cleanSheet(id, {
      work: '\n<script>alert(1)</script>\n\n<img src=x onerror=alert(1)>\n\n[a](javascript:alert(1)) ![b](https://evil.example/x.png)\n',
    }).replace('Orlo F27 single-barrel, Wexcombe Four', '</title><script>alert(2)</script>');
    const desk = await atDesk(
      folderWith({
        ...files,
        'edition.yaml': 'gaugeleaf-edition: 1\ntitle: "</title><script>alert(3)</script>"\n',
      }),
    );
    for (const what of ['card', 'chapter']) {
      const made = await desk.post(`frame/${id}`, { what, text: evil });
      expect(made.status).toBe(200);
      const frame = await desk.get(`frame/${JSON.parse(made.text).frame}`);
      expect(frame.status).toBe(200);
      expect(frame.text).not.toMatch(/<script/i);
      expect(frame.text).not.toMatch(/\son\w+=/i);
      expect(frame.text).not.toContain('javascript:');
      expect(frame.text).not.toMatch(/(?:src|href)="https?:/);
      const policy = String(frame.headers['content-security-policy']);
      expect(policy).toContain("default-src 'none'");
      expect(policy).toContain('sandbox');
      expect(policy).not.toContain('allow-scripts');
      expect(policy).not.toContain('script-src');
    }
    expect((await desk.get('')).text).not.toContain('<script>alert');
  });
});

describe('how much is let in', () => {
  test('100 MB are given up as soon as their length is said', async () => {
    const desk = await atDesk(folderWith(files));
    const answer = await ask(desk.port, `${desk.base}sheet/${id}/push`, {
      method: 'POST',
      headers: {
        cookie: desk.cookie,
        origin: `http://127.0.0.1:${desk.port}`,
        'content-type': 'application/json',
        'content-length': String(100 * 1024 * 1024),
      },
      body: '{',
    }).catch((error: Error) => ({ status: 413, text: String(error), headers: {} }));
    expect(answer.status).toBe(413);
    expect((await desk.get('edition')).status).toBe(200);
  });

  test('100 MB whose length is not said are given up after the bound', async () => {
    const desk = await atDesk(folderWith(files));
    const chunk = Buffer.alloc(1024 * 1024, 32);
    let sent = 0;
    const status = await new Promise<number>((done) => {
      const asking = request({
        host: '127.0.0.1',
        port: desk.port,
        path: `${desk.base}sheet/${id}/push`,
        method: 'POST',
        agent: false,
        headers: {
          cookie: desk.cookie,
          origin: `http://127.0.0.1:${desk.port}`,
          'content-type': 'application/json',
          'transfer-encoding': 'chunked',
        },
      });
      asking.on('response', (response) => done(response.statusCode ?? 0));
      asking.on('error', () => done(413));
      const more = (): void => {
        if (sent >= 100 || asking.destroyed) return;
        sent += 1;
        asking.write(chunk, () => setImmediate(more));
      };
      more();
    });
    expect(status).toBe(413);
    expect(sent * chunk.length).toBeLessThan(longestBody + 32 * chunk.length);
    expect((await desk.get('edition')).status).toBe(200);
  });

  test('what is no change of the text is refused, and the text stays', async () => {
    const folder = folderWith(files);
    const desk = await atDesk(folder);
    const { text, version } = JSON.parse((await desk.get(`sheet/${id}`)).text);
    const wrong: unknown[] = [
      { version, updates: [{ clientID: 'a', changes: 'x' }] },
      { version, updates: [{ clientID: 'a', changes: [5] }] },
      { version, updates: [{ clientID: 'a', changes: [[-1, 'x'], text.length] }] },
      { version, updates: [{ clientID: 7, changes: [text.length] }] },
      { version, updates: 'all' },
      { version: '0', updates: [] },
      {
        version,
        updates: [{ clientID: 'a', changes: [[text.length, 'x'.repeat(2 * 1024 * 1024)]] }],
      },
      [],
      null,
    ];
    for (const each of wrong) expect((await desk.post(`sheet/${id}/push`, each)).status).toBe(409);
    expect(JSON.parse((await desk.get(`sheet/${id}`)).text)).toMatchObject({
      text,
      version,
      unsaved: false,
    });
  });

  test('an order that would be an option is none', async () => {
    const ran: (readonly string[])[] = [];
    const desk = await atDesk(folderWith(files), {
      run: async (argv) => {
        ran.push(argv);
        return { status: 0, out: '', talk: '' };
      },
    });
    const order = {
      do: 'new-sheet',
      kind: '--out=/tmp/x',
      maker: '--club=/tmp/x',
      model: 'a',
      features: [],
    };
    expect((await desk.post('order', { job: 'j', order })).status).toBe(200);
    expect(ran[0]).toEqual([
      'draft',
      '--kind=--out=/tmp/x',
      '--maker=--club=/tmp/x',
      '--model=a',
      '--features=',
    ]);
    for (const bad of [null, {}, { do: 'rm' }, { do: 'print-card', sheet: '../x' }]) {
      expect((await desk.post('order', { job: 'j', order: bad })).status).toBeGreaterThanOrEqual(
        400,
      );
    }
    expect(ran).toHaveLength(1);
  });
});

describe('what others on this machine may read', () => {
  test('journals and seat are their user’s alone', async () => {
    const folder = folderWith(files);
    const cache = folderWith();
    const desk = await atDesk(folder, { cache });
    const { text, version } = JSON.parse((await desk.get(`sheet/${id}`)).text);
    const changes = [[0, 'x'], text.length];
    await desk.post(`sheet/${id}/push`, { version, updates: [{ clientID: 'a', changes }] });
    const mode = (path: string) => statSync(path).mode & 0o777;
    expect(mode(join(folder, '.gaugeleaf'))).toBe(0o700);
    expect(mode(join(folder, '.gaugeleaf/desk'))).toBe(0o700);
    expect(mode(join(folder, `.gaugeleaf/desk/${id}.journal`))).toBe(0o600);
    expect(readFileSync(join(folder, '.gaugeleaf/.gitignore'), 'utf8')).toBe('*\n');
    expect(mode(join(cache, 'desk'))).toBe(0o700);
  });

  test('a journal that came along with the project is not taken for this person’s words', async () => {
    const folder = folderWith(files);
    mkdirSync(join(folder, '.gaugeleaf/desk'), { recursive: true });
    const path = join(folder, `.gaugeleaf/desk/${id}.journal`);
    writeFileSync(path, `${JSON.stringify({ base: 'x', text: 'planted' })}\n`);
    chmodSync(path, 0o644);
    const desk = await atDesk(folder);
    expect(JSON.parse((await desk.get(`sheet/${id}`)).text)).toMatchObject({
      restored: false,
      unsaved: false,
    });
  });

  test('a link in place of the hidden folder is not followed', async () => {
    const outside = folderWith();
    const folder = folderWith(files);
    symlinkSync(outside, join(folder, '.gaugeleaf'));
    await expect(atDesk(folder)).rejects.toThrow('is no folder: move it away');
    expect(existsSync(join(outside, 'desk'))).toBe(false);
  });
});
