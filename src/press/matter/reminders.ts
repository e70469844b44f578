import type { Element, ElementContent, RootContent, Text } from 'hast';

/**
 * What is done under a heading, for a card: numbered steps without pictures. Every step's sentences after the first are in
 * `span.more`, so that a card that is short of room can leave them off; one that has a setting's
 * value or says what never to do is kept with the first.
 */
export function cardSteps(nodes: readonly RootContent[]): RootContent[] {
  return nodes.filter(isDone).map((node) => shortened(node, false) as RootContent);
}

function isDone(node: RootContent): boolean {
  if (node.type !== 'element') return false;
  return node.tagName === 'ol' || classOf(node).includes('safety');
}

function shortened(
  node: RootContent | ElementContent,
  inStep: boolean,
): RootContent | ElementContent {
  if (node.type !== 'element') return node;
  const children = node.children
    .filter((child) => !(child.type === 'element' && child.tagName === 'img'))
    .map((child) => shortened(child, node.tagName === 'li') as ElementContent);
  const isStep = node.tagName === 'li' || (inStep && node.tagName === 'p');
  const parted = isStep && children.some(isInline) ? sentencesApart(children) : children;
  return { ...node, children: node.tagName === 'ol' ? numbered(node, parted) : parted };
}

/** Steps with their numbers as text, for a card that runs them in and has no room for a list's own. */
function numbered(list: Element, items: readonly ElementContent[]): ElementContent[] {
  let number = Number(list.properties.start ?? 1) - 1;
  return items.map((item) => {
    if (item.type !== 'element' || item.tagName !== 'li') return item;
    number += 1;
    const text: ElementContent = { type: 'text', value: String(number) };
    return { ...item, children: [element('span', 'step-number', [text]), ...item.children] };
  });
}

const blocks = new Set(['p', 'ol', 'ul', 'table', 'div', 'pre', 'blockquote', 'figure']);

function isInline(node: ElementContent): boolean {
  if (node.type === 'text') return node.value.trim() !== '';
  return node.type === 'element' && !blocks.has(node.tagName);
}

/** A sentence ends at its mark where space and a capital follow: not in `No. 29`, not in `.203`. */
const sentenceEnd = /(?<=[.!?])(?=\s+\p{Lu})/u;

/** Words that open a sentence which must not be left off. */
const forbidding = /^\s*(?:never|do not|don['’]t|no|without|stop)\b/i;

/** The sentences of a step: those after the first that can be spared, each in a `span.more`. */
function sentencesApart(children: readonly ElementContent[]): ElementContent[] {
  const sentences: ElementContent[][] = [[]];
  const tail: ElementContent[] = [];
  for (const child of children) {
    if (child.type === 'element' && blocks.has(child.tagName)) tail.push(child);
    else if (child.type !== 'text') sentences.at(-1)?.push(child);
    else {
      const [first = '', ...rest] = child.value.split(sentenceEnd);
      sentences.at(-1)?.push({ type: 'text', value: first });
      for (const value of rest) sentences.push([{ type: 'text', value }]);
    }
  }
  const [first = [], ...others] = sentences;
  const kept = others.flatMap((sentence) =>
    isNeeded(sentence) ? sentence : [element('span', 'more', sentence)],
  );
  return [...first, ...kept, ...tail];
}

function isNeeded(sentence: readonly ElementContent[]): boolean {
  return (
    forbidding.test(sentence.map(textOf).join('')) ||
    sentence.some((node) => node.type === 'element' && hasValue(node))
  );
}

function hasValue(node: Element): boolean {
  const names = classOf(node);
  if (names.includes('value') || names.includes('missing')) return true;
  return node.children.some((child) => child.type === 'element' && hasValue(child));
}

function textOf(node: ElementContent): string {
  if (node.type === 'text') return (node as Text).value;
  return node.type === 'element' ? node.children.map(textOf).join('') : '';
}

function element(tagName: string, className: string, children: ElementContent[]): Element {
  return { type: 'element', tagName, properties: { className: [className] }, children };
}

function classOf(node: Element): readonly string[] {
  const name = node.properties.className;
  return Array.isArray(name) ? name.map(String) : [];
}
