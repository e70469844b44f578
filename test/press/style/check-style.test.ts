import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../src/checks/define.ts';
import { openProject } from '../../../src/project/project.ts';
import { folderWith } from '../../project/folder.ts';

/** A finding as reports place it: `FILE:LINE:COLUMN`, and what is said. */
interface Told {
  readonly at: string;
  readonly check: string;
  readonly message: string;
  readonly fix: string | null;
}

async function toldOf(files: Readonly<Record<string, string | Uint8Array>>): Promise<Told[]> {
  const templates = Object.entries(files).map(([name, text]) => [`templates/${name}`, text]);
  const root = folderWith({
    'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Settings\n',
    ...Object.fromEntries(templates),
  });
  const faults = await openProject(root, root).templateFaults();
  return faults.flatMap(({ file, lines, findings }) =>
    findings.map(({ span, check, message, fix }: Finding) => {
      const { line, column } = lines.place(span.start);
      return { at: `${file}:${line}:${column}`, check, message, fix };
    }),
  );
}

const cover = (text: string) => ({
  'partials/cover.hbs': `<section class="cover">\n${text}\n</section>\n`,
});

/** A mistake by what it is: the files, where it is told, what is said, and what was meant. */
const mistakes: readonly (readonly [string, Record<string, string>, string, string, string])[] = [
  [
    'a misspelt name',
    cover('<h1>{{words titel}}</h1>'),
    'partials/cover.hbs:2:13',
    'there is no `titel` here',
    'perhaps `title` was meant',
  ],
  [
    'a misspelt name in a value',
    { 'card.hbs': '<p>{{face.tilte}}</p>' },
    'card.hbs:1:11',
    'there is no `tilte` in `face`',
    'perhaps `title` was meant',
  ],
  [
    'a name that stands further out',
    cover('{{#each chapters}}{{words title}}{{/each}}'),
    'partials/cover.hbs:2:27',
    'there is no `title` here',
    'perhaps `../title` was meant',
  ],
  [
    'a helper that there is not',
    cover('{{wrods title}}'),
    'partials/cover.hbs:2:3',
    'there is no helper `wrods`',
    'perhaps `words` was meant',
  ],
  [
    'a block that there is not',
    cover('{{#eech chapters}}{{/eech}}'),
    'partials/cover.hbs:2:4',
    'there is no block {{#eech}}',
    'perhaps `each` was meant',
  ],
  [
    'a partial that there is not',
    cover('{{> ruel}}'),
    'partials/cover.hbs:2:5',
    'there is no partial `ruel`',
    'perhaps `rule` was meant',
  ],
  [
    'a style that there is not',
    { 'card.hbs': '<style>{{css "crad.css"}}</style>' },
    'card.hbs:1:14',
    'there is no style `crad.css`',
    'perhaps `card.css` was meant',
  ],
  [
    'words that there are not',
    { 'card.hbs': '{{say "as-fuond"}}' },
    'card.hbs:1:7',
    'no words go by the key `as-fuond`',
    'perhaps `as-found` was meant',
  ],
  [
    'words without what goes into them',
    { 'card.hbs': '{{say "in-booklet"}}' },
    'card.hbs:1:7',
    'the words of `in-booklet` want a {page}',
    '{{say "in-booklet" page=...}}',
  ],
  [
    'what does not go into the words',
    { 'card.hbs': '{{say "card" number=code}}' },
    'card.hbs:1:14',
    'the words of `card` have no {number}',
    'take it out',
  ],
  [
    'a counter outside a list',
    cover('{{#if @first}}{{/if}}'),
    'partials/cover.hbs:2:7',
    'there is no `@first` here',
    '@first counts inside {{#each}} only',
  ],
  [
    'a misspelt counter',
    cover('{{#each chapters}}{{@indx}}{{/each}}'),
    'partials/cover.hbs:2:21',
    'there is no `@indx` here',
    'perhaps `@index` was meant',
  ],
  [
    'a way too far out',
    cover('{{../title}}'),
    'partials/cover.hbs:2:3',
    '`../title` leads further out than there is anything',
    'one `../` leads out of one {{#each}} or {{#with}}; @root leads to the whole',
  ],
  [
    'a list that is printed',
    cover('{{chapters}}'),
    'partials/cover.hbs:2:3',
    '`chapters` is a list, and can’t be printed as it is',
    '{{#each chapters}} ... {{/each}}',
  ],
  [
    'a text that is gone over',
    cover('{{#each title}}{{/each}}'),
    'partials/cover.hbs:2:9',
    '`title` is no list: {{#each}} has nothing to go over',
    '{{#if title}} ... {{/if}}',
  ],
  [
    'HTML in two braces',
    cover('{{#each chapters}}{{intro}}{{/each}}'),
    'partials/cover.hbs:2:21',
    '`intro` is HTML: in two braces its tags are printed as letters',
    '{{{intro}}}',
  ],
  [
    'a text in three braces',
    cover('{{{club}}}'),
    'partials/cover.hbs:2:4',
    '`club` is no HTML: in three braces a < in it breaks the page',
    '{{club}}',
  ],
  [
    'a block closed as another',
    cover('{{#if club}}x{{/each}}'),
    'partials/cover.hbs:2:4',
    'this {{#if}} is closed by {{/each}}',
    'write {{/if}} where it ends, or close what stands open inside it first',
  ],
  [
    'a block that is not closed',
    cover('{{#if club}}x'),
    'partials/cover.hbs:2:1',
    'the template ends before everything that it opens is closed',
    'close it with {{/...}} where it ends',
  ],
  [
    'braces that do not pair',
    cover('<p>{{title}</p>'),
    'partials/cover.hbs:2:4',
    'the braces on this line can’t be read',
    'two braces open and two close, {{title}}, or three and three, {{{html}}}',
  ],
  [
    'a file of another name',
    { 'partials/covre.hbs': '<p></p>' },
    'partials/covre.hbs:1:1',
    'nothing uses this file',
    'perhaps `partials/cover.hbs` was meant',
  ],
  [
    'a page that there is not',
    { 'club.css': '@page covre { margin: 0 }' },
    'club.css:1:7',
    'no page has the name covre',
    'perhaps `cover` was meant',
  ],
  [
    'a side of a page that there is not',
    { 'club.css': '@page :rigth { margin: 0 }' },
    'club.css:1:8',
    '@page has no :rigth',
    'perhaps `right` was meant',
  ],
  [
    'a margin box that there is not',
    { 'club.css': '@page { @top-centre { content: "x" } }' },
    'club.css:1:9',
    'there is no rule @top-centre',
    'perhaps `@top-center` was meant',
  ],
  [
    'a color that nothing reads',
    { 'club.css': ':root { --acent: #060; }' },
    'club.css:1:9',
    'nothing reads --acent',
    'perhaps `--accent` was meant',
  ],
  [
    'a style that loads another',
    { 'club.css': '/* @import here is none */\n@import "x.css";' },
    'club.css:2:1',
    '@import loads a style from outside, and a page loads nothing',
    'put what it has into this style, or into another that a template names with {{css}}',
  ],
  [
    'a picture from outside',
    { 'club.css': 'p { background: url("https://example.org/x.png") }' },
    'club.css:1:17',
    'https://example.org/x.png is not in the style itself, and a page loads nothing from outside',
    'fonts go into templates/fonts and are named url(fonts/NAME); a picture goes into the style as data:',
  ],
  [
    'a font that there is not',
    { 'club.css': '@font-face { src: url(fonts/sans-regulr.woff2) }' },
    'club.css:1:19',
    'there is no font sans-regulr.woff2 in templates/fonts',
    'perhaps `sans-regular.woff2` was meant',
  ],
  [
    'a key that there is not',
    { 'wording.yaml': '# ours\nas-fuond: Vorgefunden\n' },
    'wording.yaml:2:1',
    'no words go by the key `as-fuond`',
    'perhaps `as-found` was meant',
  ],
  [
    'words with a misspelt brace',
    { 'wording.yaml': 'revision: Ausgabe {revsion}\n' },
    'wording.yaml:1:1',
    'the words for `revision` have {revsion}, and the page has nothing to put there',
    'perhaps `{revision}` was meant',
  ],
  [
    'words that leave out a figure',
    { 'wording.yaml': 'revision: Ausgabe\n' },
    'wording.yaml:1:1',
    'the words for `revision` leave out {revision}, and with it what the page puts there',
    'the built-in words are: Revision {revision}',
  ],
  [
    'no words',
    { 'wording.yaml': 'card:\n' },
    'wording.yaml:1:1',
    'the words for `card` are missing',
    'write them as one text, in quotes if they have a colon in them',
  ],
  [
    'a picture for no drawing',
    { 'drawings/float-hieght.svg': '<svg/>' },
    'drawings/float-hieght.svg:1:1',
    'no drawing and no operation has the name float-hieght, so this picture is never shown',
    'perhaps `drawings/float-height.svg` was meant',
  ],
  [
    'a logo with a script',
    { 'logo.svg': '<svg viewBox="0 0 1 1">\n<script>1</script></svg>' },
    'logo.svg:2:1',
    'the logo has a script in it',
    'save it as a plain SVG of shapes alone, its letters as outlines',
  ],
  [
    'a logo that loads',
    { 'logo.svg': '<svg viewBox="0 0 1 1"><image href="https://example.org/x"/></svg>' },
    'logo.svg:1:31',
    'the logo has an address from outside in it',
    'save it as a plain SVG of shapes alone, its letters as outlines',
  ],
  [
    'a logo without a size',
    { 'logo.svg': '<svg><path d="M0 0"/></svg>' },
    'logo.svg:1:1',
    'the logo does not say its size: without viewBox it is cut off or lost',
    'viewBox="0 0 WIDTH HEIGHT" in its <svg>',
  ],
  [
    'a logo that is no picture',
    { 'logo.png': 'GIF89a' },
    'logo.png:1:1',
    'the logo is no PNG',
    'save it as PNG, or as SVG',
  ],
];

describe('a mistake in a club’s templates is told with its place', () => {
  test.each(mistakes)('%s', async (_, files, at, message, fix) => {
    const told = await toldOf(files);
    expect(told.map((each) => ({ ...each, check: '' }))).toEqual([
      { at: `templates/${at}`, check: '', message, fix },
    ]);
  });
});

test('what does nothing is a warning, what stops the press an error', async () => {
  const told = await toldOf({
    'club.css': ':root { --acent: #060; }\n@import "x";',
    'partials/rule2.hbs': '',
  });
  expect(told.map(({ at, check }) => [at, check])).toEqual([
    ['templates/club.css:1:9', 'template-unused'],
    ['templates/club.css:2:1', 'template-invalid'],
    ['templates/partials/rule2.hbs:1:1', 'template-unused'],
  ]);
});

test('a template may use all that Handlebars has for names', async () => {
  const text =
    `{{#each chapters as |unit at|}}{{at}} {{words unit.face.title}}{{#with unit.face}}{{words
    ../title}}{{/with}}{{#if @last}}{{@root.paper.css}}{{else if unit.settings.length}}{{#each
    unit.settings}}{{number}} {{@index}} {{#each values}}{{words ../label}}{{size written}}{{/each}}{{/each}}{{/if}}
    {{else}}{{say "sources"}}{{/each}}{{#each sections}}{{@key}} {{anchor}}{{/each}}{{> own name=title}}`.replace(
      '../title',
      '../number',
    );
  const own = '{{words name}} {{words title}} {{lookup chapters 0}}';
  expect(await toldOf({ ...cover(text), 'partials/own.hbs': own })).toEqual([]);
});

test('partials that call each other in a circle come to an end', async () => {
  const told = await toldOf({
    ...cover('{{> a}}'),
    'partials/a.hbs': '{{> b}}',
    'partials/b.hbs': '{{> a x=title}}{{nothing}}',
  });
  expect(told.map(({ at }) => at)).toEqual(['templates/partials/b.hbs:1:18']);
});

test('a file that can’t be read is told of as well', async () => {
  const told = await toldOf({ 'card.hbs': new Uint8Array([0x41, 0xff, 0xfe, 0xff]) });
  expect(told[0]?.at).toBe('templates/card.hbs:1:1');
  expect(told[0]?.check).toBe('template-invalid');
});

test('a project without templates, and one whose templates are the built-in ones, has none', async () => {
  expect(await toldOf({})).toEqual([]);
  const root = join(import.meta.dirname, '../../..');
  expect(await openProject(root, root).templateFaults()).toEqual([]);
});
