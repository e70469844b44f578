import { el } from './dom.ts';
import { preferences } from './preferences.ts';

/** One of several leaves of which one lies on top. */
export interface Leaf {
  readonly id: string;
  readonly title: string;
  readonly element: HTMLElement;
  readonly shown: (shown: boolean) => void;
}

/** Leaves with their titles above, one shown at a time; arrow keys go from title to title. */
export class Leaves {
  readonly element: HTMLElement;
  readonly #leaves: readonly Leaf[];
  readonly #tabs: readonly HTMLButtonElement[];
  readonly #name: string;
  #current = -1;

  constructor(
    name: string,
    label: string,
    leaves: readonly Leaf[],
    more: readonly HTMLElement[] = [],
  ) {
    this.#name = name;
    this.#leaves = leaves;
    this.#tabs = leaves.map(({ id, title }, index) =>
      el(
        'button',
        {
          type: 'button',
          role: 'tab',
          id: `tab-${id}`,
          'aria-controls': `leaf-${id}`,
          onclick: () => this.show(index),
        },
        title,
      ),
    );
    const bar = el('div', { class: 'titles', role: 'tablist', 'aria-label': label }, ...this.#tabs);
    bar.addEventListener('keydown', (event) => {
      const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
      if (step === 0) return;
      let next = this.#current;
      do next = (next + step + leaves.length) % leaves.length;
      while (this.#tabs[next]?.hidden === true);
      this.show(next);
      this.#tabs[this.#current]?.focus();
      event.preventDefault();
    });
    this.element = el(
      'div',
      { class: 'leaves' },
      el('div', { class: 'titles-line' }, bar, ...more),
      ...leaves.map(({ id, element }) =>
        el(
          'div',
          { class: 'leaf', role: 'tabpanel', id: `leaf-${id}`, 'aria-labelledby': `tab-${id}` },
          element,
        ),
      ),
    );
    const kept = leaves.findIndex(({ id }) => id === preferences.get(name));
    this.show(Math.max(0, kept));
  }

  get current(): string {
    return this.#leaves[this.#current]?.id ?? '';
  }

  /** Offers these alone for a while, the first of them on top; all of them again with null. */
  only(ids: readonly string[] | null): void {
    if (ids === null && this.#tabs.every(({ hidden }) => !hidden)) return;
    for (const [at, tab] of this.#tabs.entries()) {
      tab.hidden = ids !== null && !ids.includes(this.#leaves[at]?.id ?? '');
    }
    const kept = preferences.get(this.#name);
    this.#show(ids?.[0] ?? kept ?? 0);
  }

  show(which: number | string): void {
    this.#show(which);
    const shown = this.#leaves[this.#current];
    if (shown !== undefined) preferences.set(this.#name, shown.id);
  }

  #show(which: number | string): void {
    const index =
      typeof which === 'number' ? which : this.#leaves.findIndex(({ id }) => id === which);
    if (index === this.#current || this.#leaves[index] === undefined) return;
    const before = this.#leaves[this.#current];
    this.#current = index;
    for (const [at, tab] of this.#tabs.entries()) {
      tab.setAttribute('aria-selected', String(at === index));
      tab.tabIndex = at === index ? 0 : -1;
    }
    for (const [at, leaf] of this.element.querySelectorAll(':scope > .leaf').entries()) {
      (leaf as HTMLElement).hidden = at !== index;
    }
    before?.shown(false);
    this.#leaves[index].shown(true);
  }
}
