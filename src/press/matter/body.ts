import type { Element, ElementContent, Root, RootContent, Text } from 'hast';
import rehypeSanitize, { defaultSchema } from 'rehype-sanitize';
import rehypeStringify from 'rehype-stringify';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import type { SignalWord } from '../../kinds/model.ts';
import type { Sheet } from '../../sheet/model.ts';
import { typesetSize, typesetWords } from '../lettering/index.ts';
import type { PictureSource } from '../orders/model.ts';
import { directiveHandlers } from './directives.ts';
import { withHazardLines } from './hazard-lines.ts';
import { cardSteps } from './reminders.ts';
import { isPicture, type StepFigures, withFigures, withPicturesBeside } from './step-figures.ts';
import { taskHazards } from './task-hazards.ts';

/** What stands under one `##` heading, as HTML that is safe to print. */
export interface OperationBody {
  /** The heading's words, as HTML. */
  readonly title: string;
  /** Everything below the heading. */
  readonly html: string;
  /**
   * Only what is done: numbered steps. One line in a step reminds of each hazard that it meets; the
   * message itself is among `SheetBody.messages`.
   */
  readonly steps: string;
  /** The paragraphs that lead to the steps. */
  readonly why: string;
  /**
   * All from the steps on, with the full words of hazards left to whatever stands before the work, and a line
   * of reminder in each step that meets one, or before the list whose first step does.
   */
  readonly work: string;
}

/** A safety message of the sheet. */
export interface BodyMessage {
  readonly signal: SignalWord;
  /** The hazards it names, by the kind's labels, parted by commas; empty for none. */
  readonly hazards: string;
  /** Its words, as HTML. */
  readonly html: string;
}

/** A sheet's Markdown as HTML, in the parts that the pages need. */
export interface SheetBody {
  /** What stands before the first `##` heading, the `#` title left out. */
  readonly intro: string;
  /** One for each of `sheet.operations`, in order. */
  readonly operations: readonly OperationBody[];
  /** The safety messages that name a hazard, in order. */
  readonly messages: readonly BodyMessage[];
  /** Footnotes of the whole sheet; empty for none. */
  readonly notes: string;
}

/** Classes that the press itself gives; a sheet has no way to give one, since its HTML is dropped. */
const schema = {
  ...defaultSchema,
  clobberPrefix: '',
  clobber: [],
  attributes: {
    ...defaultSchema.attributes,
    span: [['className', 'values', 'value', 'at-source', 'missing']],
    div: [['className', 'safety', /^safety-/, 'words', 'plain'], 'dataHazards'],
    p: [['className', 'signal', 'plain']],
    img: ['alt', 'title', 'src'],
  },
  // A picture's address is only looked up, never printed: see `brought`.
  protocols: { ...defaultSchema.protocols, src: null, href: ['http', 'https', 'mailto'] },
} as unknown as typeof defaultSchema;

/** What the text before the first `##` heading (null) or of an operation is made into; as it is, if absent. */
export type AdaptText = (
  nodes: readonly RootContent[],
  operation: number | null,
) => readonly RootContent[];

/** What a sheet's text is made into HTML with. */
export interface BodyOptions {
  /** What the ids of footnotes begin with. */
  readonly prefix: string;
  readonly picture: PictureSource | null;
  /** The altitude that the club's figures are read at, as written; null where it names none. */
  readonly altitude: string | null;
  /** What is drawn for the operation at an index; without it nothing is. */
  readonly figures?: (operation: number) => StepFigures | null;
  /** Changes text that is safe already; what it adds is printed as it is. */
  readonly adapt?: AdaptText;
}

/** Makes a sheet's tree into HTML. The tree is the one that was proved: it is not parsed again. */
export function sheetBody(
  sheet: Sheet,
  { prefix, picture, altitude, figures = () => null, adapt = (nodes) => nodes }: BodyOptions,
): SheetBody {
  if (sheet.tree === null) return { intro: '', operations: [], messages: [], notes: '' };
  const toHtml = unified()
    .use(remarkRehype, {
      handlers: directiveHandlers(sheet, altitude) as never,
      clobberPrefix: `${prefix}-`,
    })
    .use(rehypeSanitize, schema);
  const tree = toHtml.runSync(structuredClone(sheet.tree)) as Root;
  const parts: { heading: Element | null; nodes: RootContent[] }[] = [{ heading: null, nodes: [] }];
  const notes: RootContent[] = [];
  for (const node of tree.children) {
    const last = parts.at(-1);
    if (node.type === 'element' && node.tagName === 'h2') {
      parts.push({ heading: node, nodes: [] });
    } else if (node.type === 'element' && node.tagName === 'section') notes.push(node);
    else if (!(node.type === 'element' && node.tagName === 'h1' && parts.length === 1)) {
      last?.nodes.push(node);
    }
  }
  const html = (nodes: readonly RootContent[]) => write(nodes, sheet.file, picture);
  const [first, ...rest] = parts;
  const hazards = taskHazards(sheet);
  return {
    intro: html(adapt(first?.nodes ?? [], null)),
    operations: sheet.operations.map((operation, index) => {
      const nodes = rest[index]?.nodes ?? [];
      const met = hazards.get(index) ?? [];
      const adapted = adapt(nodes, index);
      const drawn = figures(index);
      const lead = leadOf(adapted);
      const reminded = withHazardLines(nodes, met);
      return {
        title: typesetWords(operation.heading.value.replace(/\s*\{#[^}]*\}\s*$/, '')),
        html: html(withFigures(adapted, drawn)),
        steps: html(cardSteps(reminded)),
        why: html(adapted.slice(0, lead)),
        work: html(
          withFigures(withPicturesBeside(withHazardLines(adapted.slice(lead), met, true)), drawn),
        ),
      };
    }),
    messages: messagesIn(tree).map(({ signal, hazards, words }) => ({
      signal,
      hazards,
      html: html(words),
    })),
    notes: html(notes),
  };
}

/** How many nodes stand before the first that is no plain paragraph. */
function leadOf(nodes: readonly RootContent[]): number {
  const at = nodes.findIndex((node) => {
    if (node.type !== 'element') return false;
    return node.tagName !== 'p' || isPicture(node) || classOf(node).length > 0;
  });
  return at < 0 ? nodes.length : at;
}

function messagesIn(
  node: Root | RootContent | ElementContent,
): { signal: SignalWord; hazards: string; words: RootContent[] }[] {
  if (!('children' in node)) return [];
  const hazards = node.type === 'element' ? node.properties.dataHazards : undefined;
  if (node.type === 'element' && typeof hazards === 'string' && hazards !== '') {
    const words = node.children.find(
      (child): child is Element => child.type === 'element' && child.tagName === 'div',
    );
    return [{ signal: signalOf(node), hazards, words: words?.children ?? [] }];
  }
  return node.children.flatMap((child) => messagesIn(child));
}

function signalOf(node: Element): SignalWord {
  const name = classOf(node).find((one) => one.startsWith('safety-'));
  return (name?.slice('safety-'.length) ?? 'notice') as SignalWord;
}

function write(nodes: readonly RootContent[], file: string, picture: PictureSource | null): string {
  const root: Root = { type: 'root', children: [...nodes] };
  const finished = finish(root, file, picture) as Root;
  return unified().use(rehypeStringify, { allowDangerousHtml: true }).stringify(finished).trim();
}

/** Sizes and words drawn, pictures brought along; everything else as it is. */
function finish<T extends Root | RootContent | ElementContent>(
  node: T,
  file: string,
  picture: PictureSource | null,
  inValue = false,
): T {
  if (node.type === 'text') return drawn(node as Text, inValue) as unknown as T;
  if (node.type === 'element' && node.tagName === 'img') {
    return brought(node as Element, file, picture) as T;
  }
  // A picture that is a paragraph of its own is a figure, which can't stand inside a paragraph.
  if (node.type === 'element' && node.tagName === 'p') {
    const first = node.children.find((child) => child.type === 'element');
    if (first !== undefined && isPicture(node as Element)) return finish(first as T, file, picture);
  }
  // Code is shown to the letter.
  if (node.type === 'element' && (node.tagName === 'code' || node.tagName === 'pre')) return node;
  if (!('children' in node)) return node;
  // The way back from a footnote is for screens.
  if (node.type === 'element' && 'dataFootnoteBackref' in node.properties) {
    return { type: 'text', value: '' } as unknown as T;
  }
  // The label of footnotes would have the same id in every chapter; the press has its own heads.
  if (node.type === 'element' && node.properties.id === 'footnote-label') {
    return { ...node, properties: {}, children: [] };
  }
  if (node.type === 'element' && 'ariaDescribedBy' in node.properties) {
    const { ariaDescribedBy: _, ...properties } = node.properties;
    return finish({ ...node, properties }, file, picture, inValue);
  }
  const names = node.type === 'element' ? classOf(node as Element) : [];
  const value = inValue || names.includes('value');
  const children = node.children.map((child) => finish(child as T, file, picture, value));
  return { ...node, children } as T;
}

function drawn(node: Text, inValue: boolean): ElementContent {
  const value = inValue ? typesetSize(node.value) : typesetWords(node.value);
  return { type: 'raw', value } as unknown as ElementContent;
}

function brought(node: Element, file: string, picture: PictureSource | null): Element {
  const alt = String(node.properties.alt ?? '');
  const found = picture?.(String(node.properties.src ?? ''), file) ?? null;
  if (found) {
    // The words for a picture tell what its letters stand for: the reader of paper needs them too.
    const caption = String(node.properties.title ?? alt);
    const words = { type: 'raw', value: typesetWords(caption) } as unknown as ElementContent;
    return {
      type: 'element',
      tagName: 'figure',
      properties: {},
      children: [
        { type: 'element', tagName: 'img', properties: { src: found.dataUri, alt }, children: [] },
        { type: 'element', tagName: 'figcaption', properties: {}, children: [words] },
      ],
    };
  }
  return {
    type: 'element',
    tagName: 'span',
    properties: { className: ['missing'] },
    children: [
      { type: 'text', value: `[picture not printed: ${alt === '' ? 'no words for it' : alt}]` },
    ],
  };
}

function classOf(node: Element): readonly string[] {
  const name = node.properties.className;
  return Array.isArray(name) ? name.map(String) : [];
}
