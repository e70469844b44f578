/** What an element is made with: attributes, `on...` listeners, `class`; false and null leave one out. */
export type Attributes = Readonly<
  Record<string, string | number | boolean | null | undefined | ((event: Event) => void)>
>;

export type Child = Node | string | null | false | undefined;

/** An element with attributes and children; text is text, and never read as HTML. */
export function el<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === 'function') element.addEventListener(name.slice(2).toLowerCase(), value);
    else if (value === true) element.setAttribute(name, '');
    else if (value !== false && value != null) element.setAttribute(name, String(value));
  }
  element.append(
    ...children.filter((child): child is Node | string => child != null && child !== false),
  );
  return element;
}

/** Puts other children in place of those that are there. */
export function fill(element: Element, ...children: readonly Child[]): void {
  element.replaceChildren(
    ...children.filter((child): child is Node | string => child != null && child !== false),
  );
}

/** Calls once, so many milliseconds after the last time it was asked to. */
export function later(ms: number, work: () => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(work, ms);
  };
}

/** A count with its noun: `1 error`, `2 errors`. */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** A sentence of the program, what stands in backquotes set as a name. */
export function spoken(text: string): (Node | string)[] {
  return text
    .split(/`([^`]+)`/)
    .map((part, index) => (index % 2 === 1 ? el('span', { class: 'as-name' }, part) : part));
}
