import { PressStopped, type Templates } from '../orders/model.ts';

/** The style of a club's site, with the fonts that go beside it. */
export interface PageStyle {
  readonly css: string;
  /** By their path below the folder of the style: `fonts/sans-regular.woff2`. */
  readonly fonts: ReadonlyMap<string, Uint8Array>;
}

/** The address of a font in a style: its file's name. */
const fontAddress = /url\(\s*["']?fonts\/([^"')]+)["']?\s*\)/g;

/**
 * One style for all pages: the faces that `styles.css` names, the style of the pages, and a club's own
 * laid after it. Fails with `PressStopped` where a font is named and not there.
 */
export function pageStyle(templates: Templates): PageStyle {
  const own = templates.texts.get('pages/pages.css');
  if (own === undefined) {
    throw new PressStopped('The style pages/pages.css is missing from templates/.');
  }
  const faces = [...(templates.texts.get('styles.css') ?? '').matchAll(/@font-face\s*\{([^}]*)\}/g)]
    // Words stand in the reader's own letters until the font is there.
    .map(([, rule = '']) => `@font-face { ${rule.trim()} font-display: swap; }`);
  const css = [...faces, own, templates.texts.get('club.css') ?? ''].join('\n');
  const fonts = new Map<string, Uint8Array>();
  for (const [, name = ''] of css.matchAll(fontAddress)) {
    const bytes = templates.fonts.get(name);
    if (bytes === undefined) {
      throw new PressStopped(
        `The style of the pages asks for the font ${name}, which is not in templates/fonts: ` +
          'put the file there, or take the rule out.',
      );
    }
    fonts.set(`fonts/${name}`, bytes);
  }
  return { css, fonts };
}
