import { outside, plainCss } from './css-bounds.ts';
import type { TemplateFault } from './template-fault.ts';

/** Elements that run, load or send something, in words. */
const forbidden: Readonly<Record<string, string>> = {
  script: 'a script',
  iframe: 'a page within the page',
  frame: 'a page within the page',
  frameset: 'a page within the page',
  object: 'a thing from outside',
  embed: 'a thing from outside',
  applet: 'a program',
  base: 'another base for all addresses',
  form: 'a form',
  video: 'a film',
  audio: 'a sound',
  foreignobject: 'a page within a drawing',
};

/** Attributes by which something is loaded, or sent. */
const loading =
  /^(?:src|srcset|imagesrcset|href|xlink:href|poster|background|data|action|formaction|manifest|ping)$/;

/** What in the HTML of a club's template runs, or leads out of the page; styles in it as well. */
export function checkMarkup(
  file: string,
  text: string,
  fonts: ReadonlySet<string>,
): TemplateFault[] {
  const faults: TemplateFault[] = [];
  const tell = (start: number, length: number, message: string, fix: string): void => {
    faults.push({ file, grave: true, span: { start, end: start + length }, message, fix });
  };
  const styles = (css: string, start: number): void => {
    for (const fault of outside(plainCss(css), fonts)) {
      tell(start + fault.start, fault.end - fault.start, fault.message, fault.fix);
    }
  };
  const html = text.replace(/<!--[\s\S]*?-->|\{\{!--[\s\S]*?--\}\}/g, (comment) =>
    comment.replace(/[^\r\n]/g, ' '),
  );
  for (const match of html.matchAll(
    /<([a-z][\w:-]*)((?:[^<>"']|"[^"]{0,4000}"|'[^']{0,4000}')*)/gi,
  )) {
    const [whole, name = '', attributes = ''] = match;
    const element = name.toLowerCase();
    const what = forbidden[element];
    if (what !== undefined) {
      tell(
        match.index,
        whole.length,
        `the template has ${what} in it, and pages have none`,
        'take it out',
      );
      continue;
    }
    const begin = match.index + 1 + name.length;
    for (const each of attributes.matchAll(
      /([^\s"'=<>/]+)\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'<>]+))/g,
    )) {
      const key = (each[1] ?? '').toLowerCase();
      const value = each[2] ?? each[3] ?? each[4] ?? '';
      const at = begin + each.index;
      if (/^on[a-z]+$/.test(key)) {
        tell(at, each[0].length, `\`${key}\` runs a script, and pages have none`, 'take it out');
      } else if (element === 'meta' && key === 'http-equiv' && /refresh/i.test(value)) {
        tell(at, each[0].length, 'the page would turn into another by itself', 'take it out');
      } else if (key === 'style') styles(value, at + each[0].length - value.length - 1);
      else if (loading.test(key) && leadsOut(value, element, key)) {
        tell(
          at,
          each[0].length,
          `${shown(value)} is not in the page itself, and a page loads and runs nothing from outside`,
          'a picture goes into the page as data:, or into the sheet',
        );
      }
    }
  }
  for (const match of html.matchAll(/<style\b[^>]*>([\s\S]*?)(?:<\/style|$)/gi)) {
    styles(match[1] ?? '', match.index + match[0].indexOf('>') + 1);
  }
  return faults;
}

/** A link may lead anywhere that a reader can go to; what is loaded comes with the page. */
function leadsOut(written: string, element: string, key: string): boolean {
  const value = plain(written);
  if (key === 'srcset' || key === 'imagesrcset') {
    return value
      .split(',')
      .some(
        (each) =>
          /^\s*(?:[a-z][a-z\d+.-]*:(?!.*data)|\/\/)/i.test(each) && !/^\s*data:/i.test(each),
      );
  }
  if (value.startsWith('//') || value.startsWith('\\\\')) return !isLink(element);
  const scheme = /^([a-z][a-z\d+.-]*):/i.exec(value)?.[1]?.toLowerCase();
  if (scheme === undefined) return false;
  if (isLink(element)) return !['http', 'https', 'mailto', 'tel'].includes(scheme);
  return scheme !== 'data' || /^data:(?:text\/html|application\/)/i.test(value);
}

function isLink(element: string): boolean {
  return element === 'a' || element === 'area';
}

/** An address without entities, white space and controls, as browsers read it (WHATWG URL, 4.4). */
function plain(value: string): string {
  const signs: Readonly<Record<string, string>> = {
    colon: ':',
    sol: '/',
    tab: '',
    newline: '',
    amp: '&',
  };
  return (
    value
      .replace(/&#x([0-9a-f]+);?/gi, (_, code: string) => letter(Number.parseInt(code, 16)))
      .replace(/&#(\d+);?/g, (_, code: string) => letter(Number(code)))
      .replace(/&(\w+);/g, (all, name: string) => signs[name.toLowerCase()] ?? all)
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what a browser passes over.
      .replace(/[\u0000-\u0020]/g, '')
  );
}

function letter(code: number): string {
  return code < 0x110000 ? String.fromCodePoint(code) : '';
}

function shown(value: string): string {
  return value.length > 60 ? `${value.slice(0, 57)}...` : value;
}
