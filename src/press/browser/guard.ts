import { PressStopped, type Templates } from '../orders/model.ts';
import type { Run } from './run.ts';

/**
 * What keeps a page that is laid out from being printed as it is: matter wider than the page (it
 * would be cut off) and letters that no font has. Fails with `PressStopped` where a font of the
 * style can't be used. `contentWidthMm`: between the margins.
 */
export async function faultsOf(
  run: Run,
  contentWidthMm: number,
  templates: Templates,
): Promise<string[]> {
  await loadFonts(run);
  const faults: string[] = [];
  await run.measureAt((contentWidthMm / 25.4) * 96);
  const wide = await run.ask(tooWide);
  for (const found of Array.isArray(wide) ? wide : []) {
    const { text, over } = found as { text: string; over: number };
    const what = text === '' ? 'A picture or rule' : `"${text}"`;
    const mm = Math.max(1, Math.round((over * 25.4) / 96));
    faults.push(`${what} is ${mm} mm too wide for the page and would be cut off.`);
  }
  const text = await run.ask("document.body.textContent + ' ' + document.title");
  const missing = missingCharacters(String(text), templates.characters);
  if (missing.length > 0) {
    const shown = missing.slice(0, 12).map((character) => {
      const code = (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
      return `${character} (U+${code})`;
    });
    const more = missing.length > shown.length ? ` and ${missing.length - shown.length} more` : '';
    faults.push(
      `No font in templates/fonts has ${shown.join(', ')}${more}: it would print as an empty box. ` +
        'Write it otherwise, or add a font that has it.',
    );
  }
  return faults;
}

/** Waits until every font of the style can be drawn with. Fails with `PressStopped` where one can't. */
export async function loadFonts(run: Run): Promise<void> {
  const broken = await run.ask(fontsThatFail);
  if (Array.isArray(broken) && broken.length > 0) {
    throw new PressStopped(
      `A font of the templates can't be used: ${broken.map(String).join(', ')}. ` +
        'The file in templates/fonts is damaged or no font; put a sound one there.',
    );
  }
}

/** Characters that print nothing and need no glyph: controls, joiners, variation selectors. */
const silent = /[\p{Cc}\p{Cf}\s]|\p{Variation_Selector}/u;

/** The characters of a text that are not among those covered, each once, in code point order. */
export function missingCharacters(text: string, covered: ReadonlySet<number>): string[] {
  const missing = new Set<number>();
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    if (!covered.has(code) && !silent.test(character)) missing.add(code);
  }
  return [...missing]
    .sort((first, second) => first - second)
    .map((code) => String.fromCodePoint(code));
}

const fontsThatFail = `Promise.all([...document.fonts].map((font) =>
  font.load().then(() => null, () => font.family.replaceAll('"', '') + ' ' + font.weight + ' ' + font.style)
)).then((all) => all.filter((name) => name !== null))`;

/** The innermost elements that stick out to the right of what `main` has room for, five at most. */
const tooWide = `(() => {
  const padding = parseFloat(getComputedStyle(document.querySelector('main')).paddingRight) || 0;
  const limit = document.documentElement.clientWidth - padding + 1;
  const out = [...document.querySelectorAll('main *')].filter((element) => {
    const box = element.getBoundingClientRect();
    return box.width > 0 && box.right > limit;
  });
  return out
    .filter((element) => !out.some((other) => other !== element && element.contains(other)))
    .slice(0, 5)
    .map((element) => ({
      text: element.textContent.trim().replace(/\\s+/g, ' ').slice(0, 60),
      over: element.getBoundingClientRect().right - limit + 1,
    }));
})()`;
