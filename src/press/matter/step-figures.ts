import type { Element, ElementContent, RootContent } from 'hast';
import type { Operation, Sheet } from '../../sheet/model.ts';
import { operationDrawings } from '../drawings/index.ts';
import { escapeHtml, typesetWords } from '../lettering/index.ts';
import type { Templates } from '../orders/model.ts';

/** The figures of one operation as HTML. */
export interface StepFigures {
  readonly html: string;
  /** Whether they stand beside the steps, and so before them in the text; else below. */
  readonly beside: boolean;
  /** How many there are: one is kept on a page with its steps. */
  readonly count: number;
}

/** What figures are made with besides the sheet. */
export interface FigureOptions {
  /** What the ids of the figures begin with. */
  readonly prefix: string;
  /** Whether the column is too narrow for steps beside a figure. */
  readonly narrow: boolean;
  /** Whether they are printed smaller, as in a booklet. */
  readonly reduced?: boolean;
  /** The templates, for a club's own pictures among them. */
  readonly texts: Templates['texts'];
}

/**
 * The figures of an operation. The sheet's own picture under its heading goes before all others; then a
 * club's `drawings/OPERATION.svg` among its templates; then the drawings of its kind, each replaced by
 * a club's `drawings/NAME.svg`. Null where there is none.
 */
export function stepFigures(
  sheet: Sheet,
  operation: Operation,
  options: FigureOptions,
): StepFigures | null {
  if (sheet.pictures.some((picture) => picture.operation === operation.index)) return null;
  const { known } = operation;
  if (!known) return null;
  const own = options.texts.get(`drawings/${known.name}.svg`);
  const figures =
    own !== undefined
      ? [picture(own, known.label)]
      : operationDrawings(sheet, operation, {
          prefix: options.prefix,
          alone: false,
          reduced: options.reduced ?? false,
        }).map(({ shows, svg, title, words }) => {
          const other = options.texts.get(`drawings/${shows}.svg`);
          return other === undefined ? figure(svg, title) : picture(other, words);
        });
  if (figures.length === 0) return null;
  const beside = figures.length === 1 && !options.narrow;
  return {
    html: `<div class="drawings ${beside ? 'beside' : 'below'}">${figures.join('')}</div>`,
    beside,
    count: figures.length,
  };
}

function figure(svg: string, title: string): string {
  return `<figure>${svg}<figcaption>${typesetWords(title)}</figcaption></figure>`;
}

/** A club's picture, as an image of its own: nothing in it can reach the page. */
function picture(svg: string, alt: string): string {
  const data = Buffer.from(svg, 'utf8').toString('base64');
  return `<figure><img src="data:image/svg+xml;base64,${data}" alt="${escapeHtml(alt)}"></figure>`;
}

/**
 * Figures put where they belong among what stands below a heading: just before the steps that print a
 * setting, so that they stand beside them, or just after. Without such steps the first list of
 * steps counts, and without any they come last.
 */
export function withFigures(
  nodes: readonly RootContent[],
  figures: StepFigures | null,
): readonly RootContent[] {
  if (figures === null) return nodes;
  const lists = nodes.flatMap((node, at) =>
    node.type === 'element' && node.tagName === 'ol' ? [{ node, at }] : [],
  );
  const steps = lists.find(({ node }) => printsSetting(node)) ?? lists[0];
  const raw = { type: 'raw', value: figures.html } as unknown as ElementContent;
  if (steps === undefined) return [...nodes, raw as RootContent];
  const pair = figures.beside ? [raw, steps.node] : [steps.node, raw];
  // Held together by the style, or a figure that has no room left would go to the next page alone.
  const together = element('with-drawing', pair);
  const placed = figures.count === 1 ? [together] : (pair as RootContent[]);
  return [...nodes.slice(0, steps.at), ...placed, ...nodes.slice(steps.at + 1)];
}

/** The sheet's own pictures, each before the steps that it follows, so that it stands beside them. */
export function withPicturesBeside(nodes: readonly RootContent[]): readonly RootContent[] {
  const placed: RootContent[] = [];
  let steps = -1;
  for (const node of nodes) {
    const before = placed[steps];
    if (before?.type === 'element' && node.type === 'element' && isPicture(node)) {
      placed[steps] = element('with-drawing', [element('drawings beside', [node]), before]);
      steps = -1;
      continue;
    }
    placed.push(node);
    if (node.type === 'element') steps = node.tagName === 'ol' ? placed.length - 1 : -1;
  }
  return placed;
}

/** Whether a paragraph is nothing but a picture. */
export function isPicture(node: Element): boolean {
  if (node.tagName !== 'p') return false;
  const only = node.children.filter((child) => !(child.type === 'text' && !child.value.trim()));
  return only.length === 1 && only[0]?.type === 'element' && only[0].tagName === 'img';
}

function element(className: string, children: ElementContent[]): Element {
  return {
    type: 'element',
    tagName: 'div',
    properties: { className: className.split(' ') },
    children,
  };
}

function printsSetting(node: Element | ElementContent): boolean {
  if (node.type !== 'element') return false;
  const names = node.properties.className;
  if (Array.isArray(names) && names.includes('values')) return true;
  return node.children.some(printsSetting);
}
