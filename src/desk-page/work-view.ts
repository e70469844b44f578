import { el, fill } from './dom.ts';
import type { Questions, WorkGroup } from './worker-model.ts';

type Work = Questions['work']['answer'];

const stages: Readonly<Record<string, string>> = {
  strip: 'taking down',
  bench: 'on the bench',
  'before-start': 'before the start',
  running: 'running',
  road: 'on the road',
  any: '',
};

/** The order of work: every step, the one at the cursor lit, and beside it how each part then stands. */
export class WorkView {
  readonly element = el('div', { class: 'work-view' });
  readonly #go: (offset: number) => void;
  readonly #steps = el('div', { class: 'steps' });
  readonly #parts = el('div', { class: 'parts' });
  #drawn = '';

  constructor(go: (offset: number) => void) {
    this.#go = go;
    this.element.append(this.#parts, this.#steps);
  }

  show({ groups, at, parts }: Work): void {
    const key = JSON.stringify(groups);
    if (key !== this.#drawn) {
      this.#drawn = key;
      fill(
        this.#steps,
        ...(groups.length === 0
          ? [
              el(
                'p',
                { class: 'aside' },
                'No work is written yet: a heading of two signs (##) begins a task.',
              ),
            ]
          : groups.map((group) => this.#group(group))),
      );
    }
    let lit: Element | null = null;
    for (const step of this.#steps.querySelectorAll('[data-at]')) {
      const here = at !== null && step.getAttribute('data-at') === String(at);
      step.classList.toggle('lit', here);
      if (here) step.setAttribute('aria-current', 'step');
      else step.removeAttribute('aria-current');
      if (here) lit = step;
    }
    fill(
      this.#parts,
      el(
        'h2',
        {},
        at === null ? 'Put the cursor on a step to see how the unit stands' : 'After this step',
      ),
      parts.length === 0
        ? null
        : el(
            'dl',
            {},
            ...parts.map(({ label, condition, changed, doubtful }) =>
              el(
                'div',
                {},
                el('dt', { class: changed ? 'changed' : null }, label),
                el(
                  'dd',
                  { class: changed ? 'changed' : null },
                  condition,
                  changed ? el('span', { class: 'by' }, ' by this step') : null,
                  doubtful ? el('span', { class: 'by' }, ' as its words say') : null,
                ),
              ),
            ),
          ),
    );
    // Not before the parts have their room: what is lit would be pushed out of sight.
    lit?.scrollIntoView({ block: 'center' });
  }

  #group({ title, stage, steps, span }: WorkGroup): HTMLElement {
    const where = stages[stage ?? ''] ?? '';
    return el(
      'section',
      {},
      el(
        'h2',
        {},
        el(
          'button',
          { type: 'button', class: 'plain', onclick: () => this.#go(span.start) },
          title,
        ),
        where === '' ? null : el('span', { class: 'stage' }, where),
      ),
      el(
        'ol',
        {},
        ...steps.map(({ words, changes, number, span: at }) =>
          el(
            'li',
            { 'data-at': at.start },
            number === null ? null : el('span', { class: 'number' }, `${number}.`),
            el(
              'button',
              { type: 'button', class: 'plain', onclick: () => this.#go(at.start) },
              words,
            ),
            ...changes.map(({ words: change, doubtful }) =>
              el('span', { class: doubtful ? 'change doubtful' : 'change' }, change),
            ),
          ),
        ),
      ),
    );
  }
}
