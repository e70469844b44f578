import { describe, expect, it } from 'vitest';
import { cardModel } from '../../src/press/card/model.ts';
import { render } from '../../src/press/html/render.ts';
import { gaugeleaf, type Outcome } from '../cli/console.ts';
import { builtInTemplates, toPrint } from '../press/stand.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { isQuick } from '../suite/part.ts';
import { patience, shameful, turning } from './shameful.ts';

/** And what no report of a sheet may hold besides, a sign that a terminal would obey among it. */
const more = [
  /(?<!value-)\bundefined\b/i,
  /\bNaN\b/,
  /SyntaxError/,
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for.
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/,
];

async function plainly(argv: readonly string[], cwd: string): Promise<Outcome> {
  const started = process.cpuUsage();
  const outcome = await gaugeleaf(argv, { cwd });
  const { user, system } = process.cpuUsage(started);
  expect((user + system) / 1000).toBeLessThan(patience);
  for (const shame of [...shameful, ...more]) expect(outcome.out + outcome.err).not.toMatch(shame);
  if (!argv.includes('json') && !argv.includes('sarif')) {
    for (const text of [outcome.out, outcome.err]) expect(text).not.toMatch(turning);
  }
  return outcome;
}

interface Verdict {
  readonly findings: readonly { readonly name: string; readonly message: string }[];
  readonly refused?: readonly { readonly message: string }[];
}

/** Checks a project in every format, and returns what the first found. */
async function verdictOn(cwd: string): Promise<Verdict> {
  const { status, out } = await plainly(['check', '--format', 'json'], cwd);
  const verdict: Verdict = JSON.parse(out);
  for (const format of isQuick ? [] : ['text', 'sarif', 'github']) {
    const other = await plainly(['check', '--format', format], cwd);
    expect(other.status, format).toBe(status);
  }
  expect(status).toBe((verdict.refused?.length ?? 0) > 0 ? 2 : status);
  return verdict;
}

const front = (more: string) => cleanSheet('x', { front: more });
const settings = (more: string) => cleanSheet('x', { settings: more });
const work = (more: string) => cleanSheet('x', { work: `\n${more}\n` });
const swapped = (from: string, to: string) => {
  const sheet = cleanSheet('x');
  expect(sheet).toContain(from);
  return sheet.replace(from, () => to);
};
const rows = (count: number, row: (index: number) => string) =>
  Array.from({ length: count }, (_, index) => row(index)).join('\n');

describe('a sheet that means harm, or that something happened to', () => {
  it.each<[string, string | Uint8Array, readonly string[]]>([
    ['a script', work('<script>alert(1)</script>'), ['html-in-text']],
    ['a script within a line', work('Bend <img src=x onerror=alert(1)> it.'), ['html-in-text']],
    ['a remote picture', work('![a](https://evil.example/a.png)'), ['picture-unprintable']],
    [
      'a remote picture without scheme',
      work('![a](//evil.example/a.png)'),
      ['picture-unprintable'],
    ],
    ['a picture from a file address', work('![a](file:///etc/passwd)'), ['picture-unprintable']],
    ['a picture that is a script', work('![a](javascript:alert(1))'), ['picture-unprintable']],
    ['a picture in its own address', work('![a](data:text/html,x)'), ['picture-unprintable']],
    ['a picture above the project', work('![a](../../etc/passwd)'), ['picture-unprintable']],
    ['a picture above, in disguise', work('![a](%2e%2e/%2e%2e/a.png)'), ['picture-unprintable']],
    ['a picture by reference', work('![a][r]\n\n[r]: /etc/passwd'), ['picture-unprintable']],
    ['a picture with a zero byte', work('![a](a%00.png)'), ['picture-unprintable']],
    ['a picture with broken escapes', work('![a](%E0%A4%A.png)'), ['picture-unprintable']],
    ['a folder for a picture', work('![a](../sheets)'), ['picture-unprintable']],
    ['emphasis in emphasis', work('*a **b '.repeat(20_000)), ['file-unreadable']],
    ['quotes and lists in turn', work('> - '.repeat(10_000)), ['file-unreadable']],
    ['links within links', work('[a'.repeat(30_000) + '](b)'.repeat(30_000)), ['file-unreadable']],
    ['footnotes that call one another', work(rows(4000, (i) => `[^${i}]: [^${i + 1}]`)), []],
    ['attributes without end', work(`:::warning{${'a=b '.repeat(20_000)}`), []],
    ['marks in marks', work(':value['.repeat(10_000) + ']'.repeat(10_000)), ['file-unreadable']],
    ['one endless line', work('x'.repeat(120_000)), []],
    ['one endless number', work('9'.repeat(50_000).concat(' in')), []],
    ['numbers without end', work('1/64 in, '.repeat(10_000)), []],
    ['ten thousand headings', work(rows(10_000, () => '## Float level\n')), ['file-unreadable']],
    ['a thousand headings', work(rows(1000, () => '## Float level\n')), ['heading-repeated']],
    ['only front matter', '---\ngaugeleaf: 1\nsheet: x\n---', ['front-matter-invalid']],
    ['only a fence', '---', ['front-matter-unreadable']],
    ['only blank lines', '\n\n  \n', ['front-matter-absent']],
    ['only a mark of order', '\ufeff', ['front-matter-absent']],
    ['front matter that is a list', '---\n- a\n---\n', ['front-matter-unreadable']],
    ['front matter that is one word', '---\nnull\n---\n', ['front-matter-unreadable']],
    ['two documents', '---\na: 1\n...\n---\nb: 2\n---\n', []],
    ['Latin-1', Buffer.from(work('12° ± 1°'), 'latin1'), ['file-unreadable']],
    ['UTF-16', Buffer.from(`\ufeff${work('12°')}`, 'utf16le'), ['file-unreadable']],
    ['half of a letter at the end', Buffer.from(work('12°')).subarray(0, -2), ['file-unreadable']],
    ['zero bytes in a value', swapped('13/64 in', '13/\u000064 in'), []],
    ['zero bytes alone', Buffer.alloc(5000), ['file-unreadable']],
    ['colors for the terminal', swapped('Orlo F27 single', 'Orlo \u001b[31m\u009b1A single'), []],
    ['words that run backward', swapped('p. 31', 'p. \u202e31'), ['file-unreadable']],
    ['a value that runs backward', swapped('13/64 in #', '\u202e46/31 in #'), ['size-unreadable']],
    [
      'ten thousand settings',
      settings(`${rows(10_000, (i) => `  s${i}: { value: 1 in, from: m48 }`)}\n`),
      ['file-unreadable'],
    ],
    [
      'a thousand unknown settings',
      settings(`${rows(1000, (i) => `  s${i}: { value: 1 in, from: m48 }`)}\n`),
      ['setting-unknown'],
    ],
    ['a value of a hundred kilobytes', swapped('13/64 in', '1'.repeat(100_000)), []],
    ['a value of fifty kilobytes', swapped('13/64 in', '1/'.repeat(25_000)), ['size-unreadable']],
    ['a name of fifty kilobytes', settings(`  ${'n'.repeat(50_000)}: { value: 1 in }\n`), []],
    [
      'a thousand other ways',
      swapped('13/64 in #', `13/64 in\n    also: [${'1 in, '.repeat(1000)}] #`),
      ['sizes-disagree'],
    ],
    [
      'an alias bomb',
      front(
        `a: &a0 [x, x, x, x, x, x, x, x, x]\n${rows(9, (i) => `b${i}: &a${i + 1} [${`*a${i}, `.repeat(9)}]`)}\n`,
      ),
      [],
    ],
    ['an anchor in itself', front('a: &a { b: *a }\n'), []],
    ['merged keys', front('a: &a { b: 1 }\nc: { <<: *a }\n'), []],
    ['a tag for a program', front('a: !!js/function "x"\n'), []],
    ['a key that is a list', front('? [a, b]\n: c\n'), []],
    ['a key that is a map', settings('  ? { a: b }\n  : { value: 1 in }\n'), []],
    [
      'settings that are a list',
      swapped('settings:\n  float-level:', 'settings:\n  - float-level:'),
      [],
    ],
    ['a setting that is nothing', settings('  float-drop:\n'), []],
    ['a setting that is a number', settings('  float-drop: 12\n'), []],
    [
      'values of other shapes',
      settings('  float-drop: { value: [1 in], also: 1 in, from: {} }\n'),
      [],
    ],
    [
      'infinite values',
      settings('  float-drop: { value: .inf, also: [.nan in, 1e999 in], from: m48 }\n'),
      [],
    ],
    ['a date that is none', swapped('2026-10-03', '2026-13-45'), ['front-matter-invalid']],
    ['a revision beyond counting', swapped('revision: 1', `revision: ${'9'.repeat(400)}`), []],
    [
      '`__proto__` for a setting',
      settings('  __proto__: { value: 1 in, from: m48 }\n'),
      ['setting-unknown'],
    ],
    [
      '`constructor` for a setting',
      settings('  constructor: { value: 1 in, from: m48 }\n'),
      ['setting-unknown'],
    ],
    [
      '`__proto__` at the top',
      front('__proto__: { status: released }\n'),
      ['front-matter-invalid'],
    ],
    ['`toString` at the top', front('toString: x\n'), ['front-matter-invalid']],
    ['`constructor` for a source', swapped('m48 p. 31', 'constructor p. 31'), ['source-unknown']],
    [
      '`hasOwnProperty` for a feature',
      swapped('[single-barrel,', '[hasOwnProperty, single-barrel,'),
      ['feature-unknown'],
    ],
    ['`__proto__` for a kind', swapped('kind: carburetor', 'kind: __proto__'), ['kind-unknown']],
    [
      '`constructor` for a value',
      work(':value[constructor] :value[__proto__]'),
      ['value-undefined'],
    ],
    [
      '`constructor` for a mark',
      work(':constructor[a] ::__proto__ \n\n:::toString\na\n:::'),
      ['directive-unknown'],
    ],
    [
      '`constructor` for a hazard',
      work(':::warning{hazard=constructor}\na\n:::'),
      ['hazard-unknown'],
    ],
    ['`constructor` for an attribute', work(':::warning{constructor=a __proto__=b}\na\n:::'), []],
    [
      '`constructor` accepted',
      front('accept: [{ finding: constructor, reason: a }]\n'),
      ['acceptance-unknown'],
    ],
    ['a sheet id that climbs', swapped('sheet: x', 'sheet: ../../etc/x'), []],
    [
      'a part number of tags',
      swapped('model: F27', 'model: F27\n  part-numbers: ["<b>1</b>", "F27-<script>"]'),
      [],
    ],
    [
      'a title of the template’s signs',
      swapped('title: Orlo', "title: '{{{constructor}}} {{#each this}} Orlo'\n#"),
      [],
    ],
  ])('%s', async (_, content, expected) => {
    const verdict = await verdictOn(folderWith({ 'sheets/x.md': content }));
    const names = new Set(verdict.findings.map(({ name }) => name));
    for (const name of expected) expect([...names]).toContain(name);
    for (const { message } of verdict.findings) expect(message.length).toBeLessThan(600);
  });
});

describe('front matter that means harm to the printed page', () => {
  it('is printed as the words it is', async () => {
    const text = swapped('title: Orlo', "title: '{{{constructor}}} {{#each this}}{{/each}} <b>'\n#")
      .replace('model: F27', 'model: "<script>alert(1)</script>"\n  part-numbers: ["<img src=x>"]')
      .replace('13/64 in #', '13/64 in\n    note: "<iframe src=//evil.example>" #');
    const { sheet } = toPrint(text);
    expect(sheet.problems).toEqual([]);
    const options = {
      paper: 'letter',
      draft: false,
      picture: () => null,
      capHeights: new Map(),
      readings: null,
    } as const;
    const model = cardModel(sheet, [], null, options);
    const html = await render('card.hbs', model, builtInTemplates());
    const page = html.replace(/<style>[\s\S]*?<\/style>/g, '');
    expect(page).toContain('{{{constructor}}} {{#each this}}{{/each}} &lt;b&gt;');
    expect(page).not.toMatch(/<script|<iframe|<img|native code|\[object/);
  });
});

describe('names on the command line that mean harm', () => {
  it.each([
    ['a zero byte', 'a\0b.md'],
    ['a name beyond what a disk takes', `${'x'.repeat(5000)}.md`],
    ['colors for the terminal', '\u001b[31mred.md'],
    ['a line of its own', 'a\ngaugeleaf: all is well'],
    ['a property of every object', '__proto__'],
    ['a device', '/dev/zero'],
  ])('%s: refused', async (_, name) => {
    const cwd = folderWith({ 'sheets/x.md': cleanSheet('x') });
    for (const argv of [
      ['check', name],
      ['card', name],
      ['explain', name],
    ]) {
      const { status, out, err } = await plainly(argv, cwd);
      expect(status, argv.join(' ')).toBe(2);
      expect(err).toMatch(/^(?:gaugeleaf|error): /);
      expect(out).not.toContain('all is well');
      expect(err).not.toMatch(/^gaugeleaf: all is well/m);
    }
  });
});
