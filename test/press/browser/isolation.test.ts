import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { contentPolicy } from '../../../src/press/browser/isolation.ts';
import { withBrowser } from '../../../src/press/browser/run.ts';
import { cardModel } from '../../../src/press/card/model.ts';
import { render } from '../../../src/press/html/render.ts';
import { ofItsOwn } from '../../suite/own-browser.ts';
import { readPdf } from '../pdf.ts';
import { browserHere, builtInTemplates, sampleText, toPrint } from '../stand.ts';

const browser = await browserHere();
// What is shut in is the browser that a user's print starts, not the one that the tests share.
const here = typeof browser === 'string' ? null : ofItsOwn(browser);
if (here === null) console.warn(`Isolation while printing is not tested: ${browser}`);

let server: Server;
let origin = '';
const asked: string[] = [];

beforeAll(async () => {
  server = createServer((request, response) => {
    asked.push(request.url ?? '');
    response.end('x');
  });
  server.on('upgrade', (request, socket) => {
    asked.push(`upgrade ${request.url}`);
    socket.destroy();
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});

afterAll(() => new Promise((done) => server.close(done)));

/** Every way out of a page that we know of, each with a path of its own. */
function hostile(policy: string): string {
  return `<!doctype html><html><head><meta charset="utf-8">${policy}
<base href="${origin}/base/">
<link rel="stylesheet" href="${origin}/style.css">
<link rel="prefetch" href="${origin}/prefetch">
<link rel="preload" as="image" href="${origin}/preload">
<link rel="dns-prefetch" href="${origin}">
<link rel="preconnect" href="${origin}">
<link rel="icon" href="${origin}/icon">
<link rel="manifest" href="${origin}/manifest">
<meta http-equiv="refresh" content="0; url=${origin}/refresh">
<style>@import "${origin}/import.css"; @font-face { font-family: out; src: url(${origin}/font.woff2) }
body { background: url(${origin}/background.png); font-family: out, serif; cursor: url(${origin}/cursor), auto }
li { list-style-image: url(${origin}/list.png) }</style>
<script src="${origin}/script.js"></script>
<script>fetch('${origin}/fetch'); new WebSocket('${origin.replace('http', 'ws')}/socket');
navigator.sendBeacon('${origin}/beacon'); location = '${origin}/location';</script>
</head><body onload="new Image().src='${origin}/onload'"><main>
<p>Still here</p><img src="${origin}/img.png"><img src="relative.png"><img srcset="${origin}/srcset.png 1x">
<iframe src="${origin}/iframe"></iframe><iframe srcdoc="<img src='${origin}/srcdoc'>"></iframe>
<iframe src="file:///etc/hostname"></iframe>
<object data="${origin}/object"></object><embed src="${origin}/embed">
<video src="${origin}/video" poster="${origin}/poster" autoplay></video><audio src="${origin}/audio" autoplay></audio>
<svg><image href="${origin}/svg-image"/><use href="${origin}/use#a"/></svg>
<form action="${origin}/form"><input autofocus></form><ul><li>item</li></ul>
</main></body></html>`;
}

describe.skipIf(here === null)('a page while it is printed', { timeout: 120_000 }, () => {
  test('the server that counts does count', async () => {
    await fetch(`${origin}/self-test`);
    expect(asked).toEqual(['/self-test']);
    asked.length = 0;
  });

  test.each([
    ['with its policy', `<meta http-equiv="Content-Security-Policy" content="${contentPolicy}">`],
    ['even without it', ''],
  ])('asks nothing of the network, %s', async (_, policy) => {
    if (here === null) return;
    const pdf = await withBrowser(here, async (run) => {
      await run.load(hostile(policy));
      return run.pdf({ tagged: true });
    });
    await new Promise((done) => setTimeout(done, 300));
    expect(asked).toEqual([]);
    const { pages } = await readPdf(pdf);
    // Neither an error page nor another document has taken its place.
    expect(pages.map(({ text }) => text).join(' ')).toContain('Still here');
  });

  test('reads no file', async () => {
    if (here === null) return;
    const text = await withBrowser(here, async (run) => {
      await run.load('<main><iframe src="file:///etc/passwd"></iframe><p>end</p></main>');
      const { pages } = await readPdf(await run.pdf({ tagged: false }));
      return pages.map((page) => page.text).join(' ');
    });
    expect(text).toContain('end');
    expect(text).not.toContain('root:');
  });
});

describe('a hostile sheet', () => {
  test('gives HTML without scripts, frames, handlers, styles or addresses to load', async () => {
    const text = sampleText.replace(
      '## Pump stroke',
      `<script>alert(1)</script><iframe src="http://evil.example/"></iframe>

![x](http://evil.example/x.png) ![y](file:///etc/passwd) ![z](javascript:alert(1)) ![w](../../secret.png)

[click](javascript:alert(1)) <a onclick="x()">a</a> <style>@import "http://evil.example"</style>

:::warning{hazard=gasoline-vapor onclick="x()" style="display:none" class="across"}
Words.
:::

## Pump stroke`,
    );
    const { sheet } = toPrint(text);
    const asked: string[] = [];
    const model = cardModel(sheet, [], null, {
      paper: 'letter',
      draft: false,
      capHeights: new Map(),
      readings: null,
      picture: (url) => {
        asked.push(url);
        return null;
      },
    });
    const html = (await render('card.hbs', model, builtInTemplates())).replace(
      /<style>[\s\S]*?<\/style>/g,
      '',
    );
    expect(html).not.toMatch(/<script|<iframe|<style|onclick|javascript:|evil\.example|file:|<img/);
    expect(html).not.toContain('class="across"');
  });
});
