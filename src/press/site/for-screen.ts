import type { Element, ElementContent, RootContent } from 'hast';

/** What a sheet's text is fitted with for a page on a screen. */
export interface ScreenOptions {
  /** What the steps belong to, as it is read out with each box: `Float level`; null for no boxes. */
  readonly work: string | null;
  /** The level of the heading that the text stands under, 1 to 5. */
  readonly under: number;
  /** The sheets that have a page, by file name without `.md`, for links from one to the other. */
  readonly pages: ReadonlySet<string>;
}

/**
 * A sheet's text made fit for a page on a screen: every numbered step gets a box to tick that works
 * without a script, headings follow one another without a gap, the boxes of a task list become
 * signs, and a link to another sheet leads to its page.
 */
export function forScreen(
  nodes: readonly RootContent[],
  options: ScreenOptions,
): readonly RootContent[] {
  const ranks = new HeadingRanks(options.under);
  const steps = { number: 0 };
  return nodes.map((node) => {
    const made = adapted(node, ranks, options.pages) as RootContent;
    const isSteps = made.type === 'element' && made.tagName === 'ol';
    return isSteps && options.work !== null ? ticked(made, options.work, steps) : made;
  });
}

/** Levels of headings without a gap: `##` and then `####` give 3 and then 4 under a heading of level 2. */
class HeadingRanks {
  private readonly open: number[] = [];
  private readonly under: number;

  constructor(under: number) {
    this.under = under;
  }

  of(written: number): number {
    while ((this.open.at(-1) ?? 0) >= written) this.open.pop();
    this.open.push(written);
    return Math.min(6, this.under + this.open.length);
  }
}

function adapted(
  node: RootContent | ElementContent,
  ranks: HeadingRanks,
  pages: ReadonlySet<string>,
): RootContent | ElementContent {
  if (node.type !== 'element') return node;
  if (node.tagName === 'input') {
    return { type: 'text', value: node.properties.checked ? '☑' : '☐' };
  }
  const level = /^h([1-6])$/.exec(node.tagName)?.[1];
  const tagName = level === undefined ? node.tagName : `h${ranks.of(Number(level))}`;
  const children = node.children.map((child) => adapted(child, ranks, pages) as ElementContent);
  if (tagName === 'a') return { ...node, properties: linked(node, pages), children };
  // A head without words heads nothing.
  if (tagName === 'th' && children.length === 0) return { ...node, tagName: 'td', children };
  if (tagName === 'p' || tagName === 'li') return { ...node, children: endedAtWords(children) };
  return { ...node, tagName, children };
}

/** Without spaces at the ends of lines, as a mark leaves them that prints nothing. */
function endedAtWords(children: readonly ElementContent[]): ElementContent[] {
  const joined: ElementContent[] = [];
  for (const child of children) {
    const last = joined.at(-1);
    if (child.type === 'text' && last?.type === 'text') last.value += child.value;
    else joined.push(child.type === 'text' ? { ...child } : child);
  }
  for (const [at, child] of joined.entries()) {
    if (child.type !== 'text') continue;
    child.value = child.value.replace(/[ \t]+(?=\n)/g, '');
    if (at === joined.length - 1) child.value = child.value.trimEnd();
  }
  return joined;
}

function linked(node: Element, pages: ReadonlySet<string>): Element['properties'] {
  const [, name, place = ''] =
    /^(?:\.\/)?([^/?#]+)\.md(#.*)?$/i.exec(String(node.properties.href ?? '')) ?? [];
  if (name === undefined) return node.properties;
  const sheet = decoded(name);
  if (!pages.has(sheet)) return node.properties;
  return { ...node.properties, href: `${encodeURIComponent(sheet)}.html${place}` };
}

function decoded(name: string): string {
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}

/** The steps of a list, each with its box. A second list of an operation goes on counting. */
function ticked(list: Element, work: string, steps: { number: number }): Element {
  return {
    ...list,
    properties: { ...list.properties, className: ['steps'] },
    children: list.children.map((item) => {
      if (item.type !== 'element' || item.tagName !== 'li') return item;
      steps.number += 1;
      return { ...item, children: [box(`${work}, step ${steps.number}: done`), ...item.children] };
    }),
  };
}

function box(words: string): Element {
  const element = (
    tagName: string,
    properties: Element['properties'],
    children: ElementContent[],
  ): Element => ({ type: 'element', tagName, properties, children });
  return element('label', { className: ['tick'] }, [
    element('input', { type: 'checkbox' }, []),
    element('span', { className: ['unseen'] }, [{ type: 'text', value: words }]),
  ]);
}
