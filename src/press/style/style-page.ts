import { templateHelpers } from '../html/index.ts';
import type { Wording } from '../orders/index.ts';
import type { Shape } from './shape.ts';

/** What the page of templates is made from. */
export interface StylePageFacts {
  readonly shapes: ReadonlyMap<string, Shape>;
  readonly wording: Wording;
  /** `wording.yaml` itself: the line above each key says where it is printed. */
  readonly wordingText: string;
  /** `styles.css`, whose `:root` has the colors. */
  readonly colors: string;
}

/** The page that says what a club's templates may use, as Markdown. */
export function stylePage({ shapes, wording, wordingText, colors }: StylePageFacts): string {
  const helpers = Object.entries(templateHelpers).map(
    ([name, { takes, meaning }]) => `| \`{{${[name, ...takes].join(' ')}}}\` | ${cell(meaning)} |`,
  );
  const words = [...wording].map(
    ([key, line]) => `| \`${key}\` | ${cell(line)} | ${cell(whereSaid(key, wordingText))} |`,
  );
  const colored = [...colors.matchAll(/^ {2}(--[\w-]+): ([^;]+);/gm)].map(
    ([, name = '', value = '']) => `| \`${name}\` | \`${value}\` |`,
  );
  const named = new Map<Shape, string>();
  const templates = [...shapes].map(([file, shape]) =>
    [`### \`${file}\``, '', shape.meaning, '', ...lines(shape, '', named, file), ''].join('\n'),
  );
  return [
    '# A club’s own style',
    '',
    'What lies in the `templates/` folder of a project is laid over the built-in templates, file by',
    'file. `gaugeleaf check` and every command that prints look through it first: a name that there is',
    'not is a finding with its place and what was perhaps meant.',
    '',
    '| file | what it does |',
    '| --- | --- |',
    '| `wording.yaml` | says any of the words below otherwise, a key and a text a line |',
    '| `club.css` | a style that is laid after all others |',
    '| `logo.svg` or `logo.png` | the club’s mark: on the cover, the head of a card, every page of a site |',
    '| `fonts/NAME` | a font, named in a style as `url(fonts/NAME)` |',
    '| `drawings/NAME.svg` | a picture in place of a drawing, or of the drawings of an operation |',
    '| `card.hbs`, `partials/cover.hbs`, `booklet.css` and so on | stands in place of the built-in file of that name |',
    '',
    'A page loads nothing from outside while it is printed: a style has no `@import`, and no `url()` but',
    'of fonts and `data:`. A logo is a plain SVG of shapes, with a `viewBox`, or a PNG, of at most 256 KB.',
    '',
    '## Colors and sizes',
    '',
    'Set in `club.css` as `:root { --accent: #0b5d2e; }`. Signal words, figures and hairlines stay black,',
    'so that a copy of a copy can be read.',
    '',
    '| property | built in |',
    '| --- | --- |',
    ...colored,
    '',
    'A booklet’s sizes are `--text`, `--figure`, `--value`, `--label` and `--title`, for `.large` paper and',
    'for `.small`. A card’s are worked out from the distance it is read at, and no style makes its letters',
    'smaller than can be read: such a card is refused. A site has its own, for light and dark, at the head',
    'of `pages/pages.css`.',
    '',
    '## Words',
    '',
    'What stands in braces is put there by the page, and no line may go without it.',
    '',
    '| key | built in | where |',
    '| --- | --- | --- |',
    ...words,
    '',
    '## Helpers',
    '',
    'Beside `{{#if x}}`, `{{#unless x}}`, `{{#each list}}`, `{{#with x}}`, `{{lookup x name}}` and',
    '`{{> partial}}` of [Handlebars](https://handlebarsjs.com) there are:',
    '',
    '| helper | gives |',
    '| --- | --- |',
    ...helpers,
    '',
    '## What templates are given',
    '',
    'A text or number is printed in two braces, `{{title}}`; HTML, and nothing else, in three,',
    '`{{{html}}}`; a list is gone over with `{{#each}}`. What may be nothing is asked for first, with',
    '`{{#if}}`. Partials are given what the template around them has.',
    '',
    ...templates,
  ].join('\n');
}

/** The fields of a value, one a line, what is in them further in. A list of fields is told of once. */
function lines(shape: Shape, indent: string, named: Map<Shape, string>, path: string): string[] {
  const inner = innermost(shape);
  if (inner.is !== 'fields') return [];
  const before = named.get(inner);
  if (before !== undefined) return [`${indent}- as in ${before}`];
  named.set(inner, `\`${path}\``);
  return Object.entries(inner.fields).flatMap(([name, field]) => {
    const last = innermost(field);
    const kind =
      field.is === 'list' ? `list${last.is === 'fields' ? '' : ` of ${last.is}`}` : field.is;
    const what = field.is === 'fields' ? '' : ` (${kind})`;
    return [
      `${indent}- \`${name}\`${what}: ${field.meaning}`,
      ...lines(field, `${indent}  `, named, `${path} ${name}`),
    ];
  });
}

function innermost(shape: Shape): Shape {
  return shape.is === 'list' ? innermost(shape.of) : shape;
}

/** What the comment above a key says. */
function whereSaid(key: string, wordingText: string): string {
  const before = wordingText.split(`\n${key}:`)[0] ?? '';
  return /\n# ([^\n]+)$/.exec(before)?.[1] ?? '';
}

/** A text that keeps to its cell. */
function cell(text: string): string {
  return text.replaceAll('|', '\\|').replace(/\s+/g, ' ').trim();
}
