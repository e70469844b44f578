import type * as Handlebars from 'handlebars';
import { nearestName } from '../../text/index.ts';
import { contentPolicy } from '../browser/index.ts';
import { escapeHtml, typesetFormula, typesetSize, typesetWords } from '../lettering/index.ts';
import { fillIn } from '../orders/index.ts';
import { PressStopped, type Templates } from '../orders/model.ts';
import type { HelperName } from './helpers.ts';

/**
 * Fills a template with a model and gives whole HTML. Templates are Handlebars, strict: a name that
 * the model lacks stops the press, and nothing of a value's prototype can be reached. Their helpers
 * are told of in `helpers.ts`.
 */
export async function render(name: string, model: object, templates: Templates): Promise<string> {
  const { default: Handlebars } = await import('handlebars');
  const engine = Handlebars.create();
  const safe = (html: string) => new Handlebars.SafeString(html);
  const helpers: Record<HelperName, Handlebars.HelperDelegate> = {
    size: (text: unknown) => safe(typesetSize(String(text))),
    words: (text: unknown) => safe(typesetWords(String(text))),
    math: (text: unknown) => safe(typesetFormula(String(text))),
    upper: (text: unknown) => String(text).toUpperCase(),
    css: (file: unknown) => safe(style(String(file), templates)),
    say: (key: unknown, options: Handlebars.HelperOptions) => {
      const line = wordsFor(String(key), templates);
      const values: [string, unknown][] = Object.entries(options.hash);
      const isHtml = (value: unknown) => value instanceof Handlebars.SafeString;
      if (!values.some(([, value]) => isHtml(value))) return fillIn(line, options.hash);
      const html = values.map(([name, value]) => [
        name,
        isHtml(value) ? String(value) : escapeHtml(String(value)),
      ]);
      return safe(fillIn(escapeHtml(line), Object.fromEntries(html)));
    },
    cssText: (text: unknown, options: Handlebars.HelperOptions) =>
      safe(cssStrings(String(text), options.hash)),
    pageOf: (anchor: unknown) =>
      safe(`<span class="page-number" data-page-of="${escapeHtml(String(anchor))}">000</span>`),
    policy: () => contentPolicy,
    logo: () => safe(logoPicture(templates)),
  };
  engine.registerHelper(helpers);
  for (const [path, text] of templates.texts) {
    const partial = /^partials\/(.+)\.hbs$/.exec(path)?.[1];
    if (partial !== undefined) engine.registerPartial(partial, text);
  }
  const text = templates.texts.get(name);
  if (text === undefined)
    throw new PressStopped(`The template ${name} is missing from templates/.`);
  try {
    return engine.compile(text, { strict: true, preventIndent: true })(model);
  } catch (error) {
    if (error instanceof PressStopped) throw error;
    const reason = error instanceof Error ? error.message : String(error);
    throw new PressStopped(`The template ${name} can't be filled: ${reason}`);
  }
}

/** A style sheet with the fonts that it names put in place of their addresses. */
function style(file: string, templates: Templates): string {
  const text = templates.texts.get(file);
  if (text === undefined) throw new PressStopped(`The style ${file} is missing from templates/.`);
  const inlined = text.replace(/url\(\s*["']?fonts\/([^"')]+)["']?\s*\)/g, (_, name: string) => {
    const bytes = templates.fonts.get(name);
    if (!bytes) {
      throw new PressStopped(
        `${file} asks for the font ${name}, which is not in templates/fonts: ` +
          'put the file there, or take the rule out.',
      );
    }
    return `url("data:font/woff2;base64,${Buffer.from(bytes).toString('base64')}")`;
  });
  // A style can't end itself early and go on as HTML.
  return inlined.replaceAll('</', '<\\/');
}

/** The club's mark; its name stands beside it, so nothing is read aloud. Nothing without one. */
function logoPicture({ logo }: Templates): string {
  return logo === null ? '' : `<img class="logo" src="${escapeHtml(logo)}" alt="">`;
}

/** What a file calls itself: the words of a key, with the title of its sheet or edition in them. */
export function saidTitle(templates: Templates, key: string, title: string): string {
  return fillIn(wordsFor(key, templates), { title });
}

/** The words of a key, their braces not filled in yet. */
function wordsFor(key: string, { wording }: Templates): string {
  const line = wording.get(key);
  if (line !== undefined) return line;
  const near = nearestName(key, wording.keys());
  const meant = near === null ? '' : `: perhaps ${near} was meant`;
  throw new PressStopped(`No words go by the key ${key}${meant}.`);
}

/** A text as CSS strings, with what CSS itself counts (`page="counter(page)"`) in its braces. */
function cssStrings(text: string, counted: Readonly<Record<string, string>>): string {
  const names = Object.keys(counted);
  const parts = text
    .split(/(\{[a-z]+\})/)
    .map((part) =>
      names.includes(part.slice(1, -1)) ? { part, name: part.slice(1, -1) } : { part },
    );
  if (!parts.some((each) => 'name' in each)) return cssString(text);
  return parts
    .filter(({ part }) => part !== '')
    .map((each) => ('name' in each ? counted[each.name ?? ''] : cssString(each.part)))
    .join(' ');
}

/** A CSS string literal: everything but letters, figures and spaces as escapes (CSS Syntax 3, 4.3.7). */
function cssString(text: string): string {
  const escaped = [...text].map((character) =>
    /[\p{L}\p{N} ]/u.test(character)
      ? character
      : `\\${(character.codePointAt(0) ?? 0).toString(16)} `,
  );
  return `"${escaped.join('')}"`;
}
