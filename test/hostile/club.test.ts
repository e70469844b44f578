import { crc32, deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { gaugeleaf } from '../cli/console.ts';
import { browserHere } from '../press/stand.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { patience, shameful } from './shameful.ts';

/*
 * What a club brings along besides sheets: pictures, styles, templates. A finding names the file, by `check`
 * or by the print at the latest, within ten seconds.
 */

const browser = await browserHere();
const edition = 'gaugeleaf-edition: 1\ntitle: Club sheets\n';
const svg = (inner: string, more = 'viewBox="0 0 100 100"') =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${more}>${inner}</svg>`;

/** Ten things of which each shows the one before ten times. */
function nested(of: (at: number) => string): string {
  return Array.from({ length: 10 }, (_, at) => of(at)).join('');
}

/** A PNG of that size (ISO/IEC 15948), all of one color. */
function png(width: number, height: number): Uint8Array {
  const chunk = (name: string, data: Uint8Array) => {
    const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
    const whole = Buffer.alloc(body.length + 8);
    whole.writeUInt32BE(data.length);
    whole.set(body, 4);
    whole.writeUInt32BE(crc(body), body.length + 4);
    return whole;
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([1, 0, 0, 0, 0], 8);
  const rows = Buffer.alloc(Math.ceil(width / 8 + 1) * Math.min(height, 2000));
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** Of Node 22; a bit at a time where there is none. */
function crc(bytes: Uint8Array): number {
  if (crc32 !== undefined) return crc32(bytes);
  let value = 0xffffffff;
  for (const byte of bytes) {
    value ^= byte;
    for (let bit = 0; bit < 8; bit += 1) value = (value >>> 1) ^ (value & 1 ? 0xedb88320 : 0);
  }
  return (value ^ 0xffffffff) >>> 0;
}

/** The same size told by the other formats: GIF89a, JFIF and WebP, heads alone. */
const gif = Buffer.concat([Buffer.from('GIF89a'), Buffer.from([0xff, 0xff, 0xff, 0xff, 0, 0, 0])]);
const jpeg = Buffer.from(
  'ffd8ffe000104a46494600010100000100010000ffc0001108fffffffe03012200021101031101ffd9',
  'hex',
);
const webp = Buffer.concat([
  Buffer.from('RIFF\x16\0\0\0WEBPVP8X\x0a\0\0\0\0\0\0\0', 'latin1'),
  Buffer.from([0xff, 0xff, 0xff, 0xff, 0xff, 0xff]),
]);

type Files = Readonly<Record<string, string | Uint8Array>>;

async function told(files: Files, argv: readonly string[]): Promise<string> {
  const cwd = folderWith({ 'edition.yaml': edition, 'sheets/a.md': cleanSheet('a'), ...files });
  const started = process.cpuUsage();
  const { out, err } = await gaugeleaf(argv, { cwd, env: process.env });
  const { user, system } = process.cpuUsage(started);
  expect((user + system) / 1000).toBeLessThan(patience);
  for (const shame of shameful) expect(out + err).not.toMatch(shame);
  return out + err;
}

const pictures: readonly (readonly [string, string, string | Uint8Array])[] = [
  [
    'uses of uses',
    'p.svg',
    svg(
      `<defs>${nested((at) => `<g id="a${at}">${at === 0 ? '<rect width="1" height="1"/>' : `<use href="#a${at - 1}"/>`.repeat(10)}</g>`)}</defs><use href="#a9"/>`,
    ),
  ],
  [
    'uses of uses by the older name',
    'p.svg',
    svg(
      `<defs>${nested((at) => `<g id="a${at}">${at === 0 ? '<rect width="1" height="1"/>' : `<use xlink:href="#a${at - 1}"/>`.repeat(10)}</g>`)}</defs><use xlink:href="#a9"/>`,
    ),
  ],
  [
    'patterns of patterns',
    'p.svg',
    svg(
      `<defs>${nested((at) => `<pattern id="a${at}" width="1" height="1">${at === 0 ? '<rect width="1" height="1"/>' : `<rect fill="url(#a${at - 1})" width="9" height="9"/>`.repeat(10)}</pattern>`)}</defs><rect width="100" height="100" fill="url(#a9)"/>`,
    ),
  ],
  [
    'clips of clips',
    'p.svg',
    svg(
      `<defs>${nested((at) => `<mask id="a${at}">${at === 0 ? '<rect width="1" height="1"/>' : `<rect mask="url(#a${at - 1})" width="9" height="9"/>`.repeat(10)}</mask>`)}</defs><rect width="100" height="100" mask="url(#a9)"/>`,
    ),
  ],
  [
    'entities of entities',
    'p.svg',
    `<!DOCTYPE svg [${nested((at) => `<!ENTITY a${at} "${at === 0 ? 'lol' : `&a${at - 1};`.repeat(10)}">`)}]>${svg('<text>&a9;</text>')}`,
  ],
  [
    'filters without end',
    'p.svg',
    svg(
      `<filter id="f" x="-9" y="-9" width="99" height="99">${'<feTurbulence numOctaves="99"/><feMorphology radius="900"/><feGaussianBlur stdDeviation="900"/>'.repeat(200)}</filter><rect width="100" height="100" filter="url(#f)"/>`,
    ),
  ],
  ['a million shapes', 'p.svg', svg('<path d="M0 0L9 9"/>'.repeat(700_000))],
  ['groups in groups', 'p.svg', svg('<g>'.repeat(50_000) + '</g>'.repeat(50_000))],
  [
    'a size beyond all pages',
    'p.svg',
    svg('<rect width="1" height="1"/>', 'width="1000000000" height="1000000000"'),
  ],
  ['a script', 'p.svg', svg('<script>alert(1)</script>')],
  [
    'a page in it',
    'p.svg',
    svg(
      '<foreignObject width="9" height="9"><p xmlns="http://www.w3.org/1999/xhtml">x</p></foreignObject>',
    ),
  ],
  [
    'a picture from elsewhere',
    'p.svg',
    svg('<image href="https://evil.example/x.png" width="9" height="9"/>'),
  ],
  ['a style from elsewhere', 'p.svg', svg('<style>@import "https://evil.example/x.css";</style>')],
  [
    'dashes without end',
    'p.svg',
    svg('<path d="M0 0H1e9" stroke="red" stroke-dasharray="0.00001"/>'),
  ],
  ['a PNG of a hundred thousand pixels', 'p.png', png(100_000, 100_000)],
  ['a PNG of thirty thousand', 'p.png', png(30_000, 30_000)],
  ['a GIF of 65,535 pixels', 'p.gif', gif],
  ['a JPEG of 65,534 pixels', 'p.jpg', jpeg],
  ['a WebP of sixteen million pixels', 'p.webp', webp],
  ['no picture under its name', 'p.png', 'no picture'],
];

describe('a picture that means harm is told by check, with its name', () => {
  it.each(pictures)('%s', async (_, name, content) => {
    const sheet = cleanSheet('a', { work: `\n![A bowl](${name})\n` });
    const said = await told({ 'sheets/a.md': sheet, [`sheets/${name}`]: content }, ['check']);
    expect(said).toMatch(/picture-(?:unprintable|unsafe|heavy)/);
    expect(said).toContain(name);
  });

  it.each(pictures.filter(([, name]) => name === 'p.svg'))(
    'as a logo: %s',
    async (_, __, content) => {
      const said = await told({ 'templates/logo.svg': content }, ['check']);
      expect(said).toContain('templates/logo.svg\n');
    },
  );

  it.each(pictures.filter(([, name]) => name === 'p.svg'))(
    'as a drawing: %s',
    async (_, __, content) => {
      const said = await told({ 'templates/drawings/float-level.svg': content }, ['check']);
      expect(said).toContain('templates/drawings/float-level.svg\n');
    },
  );
});

const styles: readonly (readonly [string, string])[] = [
  ['image-set', '.card { background: image-set("https://evil.example/a.png" 1x, "b.png" 2x) }'],
  [
    'image-set by its older name',
    '.card { background: -webkit-image-set("https://evil.example/a.png" 1x) }',
  ],
  ['an escaped url', '.card { background: \\75rl(https://evil.example/a.png) }'],
  ['an escaped url in the middle', '.card { background: u\\72 l("https://evil.example/a.png") }'],
  ['an escaped url with zeros', '.card { background: \\000055RL(https://evil.example/a.png) }'],
  ['an escaped import', '@\\69mport "https://evil.example/a.css";'],
  ['a scheme in capitals', '.card { background: URL(HTTPS://EVIL.EXAMPLE/A.PNG) }'],
  ['an escaped address', '.card { background: url(\\68ttps://evil.example/a.png) }'],
  ['a file', '.card { background: url(file:///etc/passwd) }'],
  [
    'an address behind data',
    '.card { background: url("data:image/svg+xml,<svg/>"), url(//evil.example/a) }',
  ],
  [
    'a picture in data that bursts',
    `.card { background: url("data:image/svg+xml;base64,${Buffer.from(String(pictures[0]?.[2])).toString('base64')}") }`,
  ],
  ['an address without an end', '.card { background: url(https://evil.example/a.png'],
  ['cross-fade', '.card { background: cross-fade("https://evil.example/a.png", red) }'],
  ['src', '.card { background: src("https://evil.example/a.png") }'],
  ['a margin of a kilometer', '.card { margin-top: 1000000mm }'],
  ['a height of a hundred meters', 'main { min-height: 100000cm }'],
  ['a height in em', 'main { height: 999999em }'],
  ['a height in a product', 'main { height: calc(999999 * 1mm) }'],
  ['a padding by the thousand', '.step { padding: 0 0 9999in }'],
  ['a page for everything', '* { break-before: page }'],
  ['a page for everything by the older name', '* { page-break-after: always !important }'],
  ['a page of a millimeter', '@page { size: 1mm 1mm; margin: 0 }'],
  ['letters of a meter', 'body { font-size: 3000pt }'],
  ['content without end', `.card::before { content: "${'x '.repeat(200_000)}" }`],
  [
    'counters in counters',
    `main * { counter-increment: a 1; } ${Array.from({ length: 300 }, (_, at) => `main :nth-child(${at}n + 1) ~ * *::after { content: counters(a, ".") counters(a, ".") }`).join('\n')}`,
  ],
  ['lines of no end', 'main { columns: 100000; column-gap: 100cm }'],
];

const templates: readonly (readonly [string, string])[] = [
  ['a script', '<script>alert(1)</script>'],
  ['a script from elsewhere', '<script src="https://evil.example/a.js"></script>'],
  ['a script in capitals, broken', '<SCRIPT\n>alert(1)'],
  ['a remote picture', '<img alt="" src="https://evil.example/a.png">'],
  ['a remote picture without quotes', '<img alt="" src=https://evil.example/a.png>'],
  ['a remote picture without scheme', '<img alt="" src="//evil.example/a.png">'],
  ['a remote picture in entities', '<img alt="" src="&#104;ttps://evil.example/a.png">'],
  ['remote pictures by size', '<img alt="" srcset="https://evil.example/a.png 2x">'],
  ['a picture from a file', '<img alt="" src="file:///etc/passwd">'],
  ['a handler', '<img alt="" src="data:," onerror="alert(1)">'],
  ['a handler behind a slash', '<svg/onload=alert(1)>'],
  ['a link that runs', '<a href="javascript:alert(1)">x</a>'],
  ['a link that runs in disguise', '<a href="java&#x09;script:alert(1)">x</a>'],
  ['a frame', '<iframe src="https://evil.example/"></iframe>'],
  ['a frame of its own', '<iframe srcdoc="<script>alert(1)</script>"></iframe>'],
  ['an object', '<object data="https://evil.example/a"></object>'],
  ['what is embedded', '<embed src="https://evil.example/a">'],
  ['a style from elsewhere', '<link rel="stylesheet" href="https://evil.example/a.css">'],
  ['another base', '<base href="https://evil.example/">'],
  [
    'another page after a second',
    '<meta http-equiv="refresh" content="0; url=https://evil.example/">',
  ],
  ['a form', '<form action="https://evil.example/"><input name="a"></form>'],
  ['a film', '<video src="https://evil.example/a.mp4"></video>'],
  ['a remote picture in a style', '<p style="background: url(https://evil.example/a.png)">x</p>'],
  [
    'a remote picture in a style of its own',
    '<style>p { background: u\\72l(https://evil.example/a.png) }</style>',
  ],
  ['a remote picture in a drawing', '<svg><image href="https://evil.example/a.png"/></svg>'],
  ['a remote use in a drawing', '<svg><use xlink:href="https://evil.example/a.svg#a"/></svg>'],
  [
    'a remote background',
    '<table background="https://evil.example/a.png"><tr><td>x</td></tr></table>',
  ],
];

describe('a style of a club that means harm is told with its name', () => {
  // What only the browser can tell is told by the print.
  it.each(styles)('%s', async (_, css) => {
    const files = { 'templates/club.css': css };
    let said = await told(files, ['check']);
    if (!said.includes('club.css')) {
      if (typeof browser === 'string') return;
      said = await told(files, ['card', 'a', '--out', 'a.pdf']);
    }
    expect(said).toContain('templates/club.css');
  });
});

describe('a template of a club that means harm is told with its name', () => {
  it.each(templates)('%s', async (_, html) => {
    for (const name of ['templates/partials/cover.hbs', 'templates/pages/unit.hbs']) {
      const said = await told({ [name]: `<section class="cover">${html}</section>\n` }, ['check']);
      expect(said).toContain(`${name}\n`);
      expect(said).toContain('template-invalid');
    }
  });
});

describe('what a club may well do is not told', () => {
  it.each<[string, Files]>([
    [
      'a link to its site',
      {
        'templates/partials/cover.hbs':
          '<section class="cover"><a href="https://club.example/">our site</a></section>\n',
      },
    ],
    [
      'a picture that it brings',
      {
        'templates/partials/cover.hbs':
          '<section class="cover"><img alt="" src="data:image/png;base64,iVBORw0KGgo="></section>\n',
      },
    ],
    [
      'a style of its own',
      {
        'templates/club.css':
          '.card { color: #222; margin: 2mm }\n@page { margin: 9mm }\nmain { max-width: 180mm; width: 100vw }\nh2 { break-before: page }\n',
      },
    ],
    [
      'a word of a script',
      {
        'templates/partials/cover.hbs':
          '<section class="cover"><p>on page one = the script of 1948, url (none)</p></section>\n',
      },
    ],
    [
      'a drawing of shapes',
      {
        'templates/drawings/float-level.svg': svg(
          '<defs><g id="a"><path d="M0 0L9 9"/></g></defs><use href="#a"/><use href="#a" x="9"/>',
        ),
      },
    ],
    [
      'a picture of shapes',
      {
        'sheets/p.svg': svg('<rect width="9" height="9" fill="url(#g)"/>'),
        'sheets/a.md': cleanSheet('a', { work: '\n![A bowl](p.svg)\n' }),
      },
    ],
    [
      'a photograph',
      {
        'sheets/p.png': png(1200, 900),
        'sheets/a.md': cleanSheet('a', { work: '\n![A bowl](p.png)\n' }),
      },
    ],
  ])('%s', async (_, files) => {
    const said = await told(files, ['check']);
    expect(said).not.toMatch(/template-|picture-unprintable/);
  });
});
