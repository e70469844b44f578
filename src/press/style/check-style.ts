import { nearestName, svgFault } from '../../text/index.ts';
import { builtInSections } from '../booklet/model.ts';
import { densityNames } from '../lettering/index.ts';
import type { Wording } from '../orders/index.ts';
import { bookletShape } from './booklet-shape.ts';
import { cardShape } from './card-shape.ts';
import { checkCss, pageNames, readProperties } from './check-css.ts';
import { svgLogoFault } from './check-logo.ts';
import { checkMarkup } from './check-markup.ts';
import { checkTemplates } from './check-template.ts';
import { checkWording } from './check-wording.ts';
import { leafShapes } from './leaf-shapes.ts';
import { pageShapes } from './pages-shape.ts';
import type { Shape } from './shape.ts';
import type { TemplateFault } from './template-fault.ts';

/** The templates that the press fills, with what each is given. */
export const templateShapes: ReadonlyMap<string, Shape> = new Map<string, Shape>([
  ['card.hbs', cardShape],
  ['booklet.hbs', bookletShape],
  ...leafShapes,
  ...pageShapes,
]);

/** Files that the program reads itself, without a template that names them. */
const readByName = [
  'wording.yaml',
  'logo.svg',
  'logo.png',
  'club.css',
  'styles.css',
  'pages/pages.css',
];

/** A club's style and what it is laid over. */
export interface ClubStyle {
  /** The club's own files as texts, by path below its templates folder. */
  readonly own: ReadonlyMap<string, string>;
  /** The built-in files. */
  readonly builtIn: ReadonlyMap<string, string>;
  /** The built-in words. */
  readonly wording: Wording;
  /** File names of all fonts, built-in and the club's. */
  readonly fonts: ReadonlySet<string>;
  /** What a picture in `drawings/` may be named: drawings, and operations of the kinds. */
  readonly drawings: ReadonlySet<string>;
}

/**
 * Everything that is wrong in a club's style: templates, words, styles and logo, before anything is
 * printed with them. Places are offsets into the club's own files.
 */
export async function checkStyle(style: ClubStyle): Promise<readonly TemplateFault[]> {
  const { own, builtIn, wording, fonts, drawings } = style;
  const { default: handlebars } = await import('handlebars');
  const texts = new Map([...builtIn, ...own]);
  const { faults, used } = checkTemplates(templateShapes, { texts, wording }, handlebars);
  const found = faults.filter(({ file }) => own.has(file));
  const world = {
    fonts,
    pages: new Set([...pageNames(texts.values()), ...modelPages]),
    properties: readProperties(texts.values()),
  };
  const known = [...templateShapes.keys(), ...used, ...readByName];
  for (const [file, text] of own) {
    if (file.endsWith('.css')) found.push(...checkCss(file, text, world));
    if (file.endsWith('.hbs')) found.push(...checkMarkup(file, text, fonts));
    if (file === 'wording.yaml') found.push(...checkWording(file, text, wording));
    if (file === 'logo.svg') {
      const fault = svgLogoFault(text);
      if (fault !== null) found.push({ file, grave: true, ...fault });
    }
    if (file.startsWith('drawings/') && file.endsWith('.svg')) {
      const fault = svgFault(text);
      if (fault !== null) {
        const { start, end, what } = fault;
        const fix = 'save it as a plain SVG of shapes alone';
        found.push({
          file,
          grave: true,
          span: { start, end },
          message: `the drawing has ${what}`,
          fix,
        });
      }
    }
    const unused = unusedWords(file, known, drawings);
    if (unused !== null) found.push({ file, grave: false, span: { start: 0, end: 0 }, ...unused });
  }
  return found;
}

function unusedWords(
  file: string,
  known: readonly string[],
  drawings: ReadonlySet<string>,
): { readonly message: string; readonly fix: string } | null {
  const drawing = /^drawings\/(.+)\.svg$/.exec(file)?.[1];
  if (drawing !== undefined) {
    if (drawings.has(drawing)) return null;
    const near = nearestName(drawing, drawings);
    return {
      message: `no drawing and no operation has the name ${drawing}, so this picture is never shown`,
      fix: near === null ? 'take it out' : `perhaps \`drawings/${near}.svg\` was meant`,
    };
  }
  if (known.includes(file)) return null;
  const near = nearestName(file, known);
  return {
    message: 'nothing uses this file',
    fix: near === null ? 'take it out, or name it in a template' : `perhaps \`${near}\` was meant`,
  };
}

/** Names of pages that come from a model: the sections of a booklet, the densities of a card. */
const modelPages = [...Object.values(builtInSections).map(({ anchor }) => anchor), ...densityNames];
