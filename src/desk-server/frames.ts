import { bookletModel } from '../press/booklet/model.ts';
import { contentPolicy } from '../press/browser/index.ts';
import { cardModel } from '../press/card/model.ts';
import { capHeightsByFamily, render } from '../press/html/index.ts';
import type { PictureSource, SheetToPrint, Templates } from '../press/index.ts';
import { examineText, type Project, pictureData, readTemplates } from '../project/index.ts';

/** What a page of the print may do in its frame: nothing; its pictures and fonts come with it. */
export const framePolicy = `${contentPolicy}; frame-ancestors 'self'; sandbox allow-same-origin`;

/** So many pages are kept for frames that are about to load them. */
const mostFrames = 12;

/**
 * Pages of the print as HTML, for frames: made from the text as it stands in a window, by the templates and
 * models that the press prints with.
 */
export class Frames {
  readonly #made = new Map<string, string>();
  #templates: { readonly root: string; readonly read: Templates } | null = null;
  #count = 0;

  /** Makes a page and gives the name that `page` knows it by. Fails with `PressStopped` or `Refusal`. */
  async make(
    project: Project,
    at: { readonly path: string; readonly text: string; readonly what: 'card' | 'chapter' },
  ): Promise<string> {
    const { sheet, findings } = examineText(project, at.path, project.show(at.path), at.text);
    const picture: PictureSource = (url) => pictureData(project.root, at.path, url);
    const html =
      at.what === 'card'
        ? await this.#card(project, { sheet, findings }, picture)
        : await this.#chapter(project, { sheet, findings }, picture);
    this.#count += 1;
    const name = String(this.#count);
    this.#made.set(name, html);
    for (const old of this.#made.keys()) {
      if (this.#made.size <= mostFrames) break;
      this.#made.delete(old);
    }
    return name;
  }

  /** A page that was made; null where it is no longer kept. */
  page(name: string): string | null {
    return this.#made.get(name) ?? null;
  }

  /** Reads the templates anew for the next page. */
  forget(): void {
    this.#templates = null;
  }

  async #card(project: Project, print: SheetToPrint, picture: PictureSource): Promise<string> {
    const templates = this.#templatesOf(project);
    const { edition } = project.edition();
    const model = cardModel(print.sheet, print.findings, edition?.facts ?? null, {
      paper: edition?.cardPaper ?? 'letter',
      draft: false,
      picture,
      capHeights: capHeightsByFamily(templates),
      readings: null,
    });
    return onScreen(await render('card.hbs', model, templates), model, '');
  }

  async #chapter(project: Project, print: SheetToPrint, picture: PictureSource): Promise<string> {
    const templates = this.#templatesOf(project);
    const { edition } = project.edition();
    const model = bookletModel([print], edition?.facts ?? { title: '' }, {
      paper: edition?.paper ?? 'half-letter',
      picture,
      draft: false,
      texts: templates.texts,
      wording: templates.wording,
    });
    const only =
      'body > :not(main), main > :not(.chapter):not([id^="unit-"]), main > [data-fills] { display: none !important; }';
    return onScreen(await render('booklet.hbs', model, templates), model, only);
  }

  #templatesOf(project: Project): Templates {
    if (this.#templates?.root !== project.root) {
      this.#templates = { root: project.root, read: readTemplates(project.root) };
    }
    return this.#templates.read;
  }
}

/** A page of paper laid out as a leaf on the screen: as wide as its paper, with its margins. */
function onScreen(
  html: string,
  model: {
    readonly paper: { readonly widthMm: number };
    readonly margins: {
      readonly topMm: number;
      readonly outerMm: number;
      readonly bottomMm: number;
      readonly innerMm: number;
    };
  },
  more: string,
): string {
  const { topMm, outerMm, bottomMm, innerMm } = model.margins;
  const style =
    `html { background: #fff; } body { width: ${model.paper.widthMm}mm; ` +
    `padding: ${topMm}mm ${outerMm}mm ${bottomMm}mm ${innerMm}mm; } ${more}`;
  return html.replace('</head>', () => `<style>${style}</style>\n</head>`);
}
