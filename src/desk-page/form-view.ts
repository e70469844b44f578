import type { DeskFinding } from '../desk/model.ts';
import { el, fill, later } from './dom.ts';
import { findingWords } from './editor-words.ts';
import type { FormEdit, FormField, FormGroup, FormModel } from './form-model.ts';

/** What the form asks of the page. */
export interface FormEvents {
  readonly edit: (edit: FormEdit) => void;
  /** Begins a setting, its source the one that was chosen last. */
  readonly more: (name: string, source: string | null) => void;
}

/**
 * The front matter as a form. It is drawn anew from the text after every change; the field that somebody is
 * writing in stays as it is, so that cursor and words are his.
 */
export class FormView {
  readonly element = el('form', {
    class: 'form-view',
    'aria-label': 'The sheet as a form',
    novalidate: true,
  });
  readonly #events: FormEvents;
  readonly #groups = new Map<string, { readonly said: string; readonly element: HTMLElement }>();
  readonly #headings = new Map<string, HTMLElement>();
  /** What was asked for besides, by group and offer. */
  readonly #revealed = new Set<string>();
  /** The entry that is to be written in as soon as it is there. */
  #wanted: string | null = null;
  #source: string | null = null;
  #model: FormModel | null = null;
  #drawn = '';
  #findings: readonly DeskFinding[] = [];

  constructor(events: FormEvents) {
    this.#events = events;
    this.element.addEventListener('submit', (event) => event.preventDefault());
  }

  show(model: FormModel | null, findings: readonly DeskFinding[]): void {
    this.#model = model;
    this.#findings = findings.filter(({ accepted }) => accepted === null);
    const key = JSON.stringify([model, this.#findings]);
    if (key === this.#drawn) return;
    this.#drawn = key;
    this.#draw();
  }

  /** Whether the form can show the sheet at all. */
  get usable(): boolean {
    return this.#model !== null;
  }

  #draw(): void {
    const model = this.#model;
    if (model === null) {
      fill(
        this.element,
        el(
          'p',
          { class: 'aside' },
          'The head of the sheet cannot be read yet: mend it in the text.',
        ),
      );
      return;
    }
    const active = document.activeElement;
    const held = active instanceof HTMLElement && this.element.contains(active) ? active : null;
    const focus = held?.getAttribute('data-path') ?? null;
    const typed = held instanceof HTMLInputElement ? held : null;
    const [start, end, way] = typed
      ? [typed.selectionStart, typed.selectionEnd, typed.selectionDirection]
      : [null, null, null];
    const value = typed?.value ?? null;
    const scroller = this.element.parentElement;
    const scrolled = scroller?.scrollTop ?? 0;
    this.#arrange([
      this.#kept(model.sheet),
      this.#kept(model.unit),
      this.#heading('Sources'),
      ...model.sources.map((group) => this.#kept(group)),
      this.#anotherSource(model),
      this.#heading('Settings, in working order'),
      ...model.settings.map((group) => this.#kept(group)),
      this.#more(model),
    ]);
    if (scroller !== null && scroller.scrollTop !== scrolled) scroller.scrollTop = scrolled;
    if (this.#goToWanted()) return;
    if (focus === null || held?.isConnected === true) return;
    const again = this.element.querySelector<HTMLElement>(`[data-path="${CSS.escape(focus)}"]`);
    again?.focus({ preventScroll: true });
    if (again instanceof HTMLInputElement && value !== null && again.type !== 'checkbox') {
      // What is being written is not set back to what was read a moment ago.
      again.value = value;
      if (start !== null && again.type === 'text') {
        again.setSelectionRange(start, end, way ?? 'none');
      }
    }
  }

  /** The fields of a group: the same elements while they say the same, so that a hand upon one is not lost. */
  #kept(group: FormGroup): HTMLElement {
    const findings = group.fields.map((field) => this.#foundAt(field));
    // Where it stands in the text is asked of the findings alone.
    const said = JSON.stringify([
      [...this.#revealed].filter((each) => each.startsWith(`${group.id} `)),
      { ...group, fields: group.fields.map((field) => ({ ...field, span: null })) },
      findings.map((found) => found.map(({ severity, message, fix }) => [severity, message, fix])),
    ]);
    const known = this.#groups.get(group.id);
    if (known?.said === said) return known.element;
    const element = this.#group(group);
    this.#groups.set(group.id, { said, element });
    return element;
  }

  /** Puts the cursor into an entry that was asked for, in sight; false where none is wanted or there yet. */
  #goToWanted(): boolean {
    if (this.#wanted === null) return false;
    const entry = this.element.querySelector<HTMLElement>(
      `[data-path="${CSS.escape(this.#wanted)}"]`,
    );
    if (entry === null) return false;
    this.#wanted = null;
    entry.scrollIntoView({ block: 'center' });
    entry.focus({ preventScroll: true });
    if (entry instanceof HTMLInputElement) entry.select();
    return true;
  }

  #anotherSource({ nextSource }: FormModel): HTMLElement {
    const path = ['sources', nextSource, 'title'];
    const button = el(
      'button',
      { type: 'button', 'data-path': 'another-source' },
      'Another source',
    );
    button.addEventListener('click', () => {
      this.#wanted = JSON.stringify(path);
      this.#events.edit({ path, value: 'fill in' });
    });
    return el('p', { class: 'field' }, button);
  }

  #heading(words: string): HTMLElement {
    const known = this.#headings.get(words) ?? el('h2', { class: 'kind-of' }, words);
    this.#headings.set(words, known);
    return known;
  }

  /** Puts elements in their order; what stands in its place already is not touched. */
  #arrange(wanted: readonly (HTMLElement | null)[]): void {
    const elements = wanted.filter((each) => each !== null);
    const stay = new Set<Element>(elements);
    for (const child of [...this.element.children]) if (!stay.has(child)) child.remove();
    for (const [index, element] of elements.entries()) {
      const there = this.element.children[index];
      if (there !== element) this.element.insertBefore(element, there ?? null);
    }
  }

  #more({ more }: FormModel): HTMLElement | null {
    if (more.length === 0) return null;
    const choice = el(
      'select',
      { 'data-path': 'more' },
      el('option', { value: '' }, 'choose one'),
      ...more.map(({ name, label }) => el('option', { value: name }, label)),
    );
    choice.addEventListener('change', () => {
      if (choice.value === '') return;
      this.#wanted = JSON.stringify(['settings', choice.value, 'value']);
      const [first] = this.#model?.sources ?? [];
      this.#events.more(choice.value, this.#source ?? first?.title ?? null);
    });
    return el('p', { class: 'field' }, el('label', {}, 'Another setting', choice));
  }

  /** What may be said besides, to choose from. */
  #offers({ id, fields }: FormGroup): HTMLElement | null {
    const offers = new Map<string, FormField>();
    for (const field of fields) {
      if (field.offer === null || this.#revealed.has(`${id} ${field.offer}`)) continue;
      if (!offers.has(field.offer)) offers.set(field.offer, field);
    }
    if (offers.size === 0) return null;
    const choice = el(
      'select',
      { 'data-path': `offers-${id}` },
      el('option', { value: '' }, 'say more of it'),
      ...[...offers.keys()].map((offer) => el('option', { value: offer }, offer)),
    );
    choice.addEventListener('change', () => {
      const field = offers.get(choice.value);
      if (field === undefined) return;
      this.#revealed.add(`${id} ${choice.value}`);
      this.#wanted = JSON.stringify(field.path);
      this.#draw();
    });
    return el(
      'div',
      { class: 'field field-offers' },
      el('label', {}, el('span', { class: 'for-ears' }, 'Say more of it'), choice),
    );
  }

  #group(group: FormGroup): HTMLElement {
    const { title, explain, fields, there, id } = group;
    return el(
      'fieldset',
      { class: there ? null : 'lacking', id: `form-${id}` },
      el(
        'legend',
        {},
        title,
        there ? null : el('span', { class: 'asked' }, ' asked for, and not there yet'),
      ),
      explain === null ? null : el('p', { class: 'explain' }, explain),
      ...fields
        .filter(({ offer }) => offer === null || this.#revealed.has(`${id} ${offer}`))
        .map((field) => this.#field(field)),
      this.#offers(group),
    );
  }

  #field(field: FormField): HTMLElement {
    const key = JSON.stringify(field.path);
    const note = `note-${key}`;
    const found = this.#foundAt(field);
    const entry = this.#entry(field, key, note);
    const words = [
      field.readAs === null ? null : el('span', { class: 'read-as' }, field.readAs),
      ...found.map((each) => findingWords(each)),
    ];
    const label =
      field.entry === 'flags'
        ? el('span', { class: 'label' }, field.label)
        : el('label', { for: key, title: field.explain }, field.label);
    return el(
      'div',
      {
        class: `field field-${field.entry}${field.asked && field.value === null && field.values.length === 0 ? ' empty' : ''}`,
      },
      label,
      entry,
      el('div', { class: 'beside', id: note }, ...words),
    );
  }

  #foundAt({ span }: FormField): readonly DeskFinding[] {
    if (span === null) return [];
    return this.#findings.filter(
      ({ span: at }) => at.start <= span.end && at.end >= span.start && at.end - at.start < 400,
    );
  }

  #entry(field: FormField, key: string, note: string): HTMLElement {
    const { path, value, entry, choices } = field;
    const common = { id: key, 'data-path': key, 'aria-describedby': note };
    const put = (text: string | null, number = false): void =>
      this.#events.edit({ path, value: text, ...(number ? { number: true } : {}) });
    if (entry === 'shown') {
      return el('output', { ...common, class: 'as-written' }, value ?? 'in the text');
    }
    if (entry === 'choice') {
      const known = value === null || choices.some((each) => each.value === value);
      const select = el(
        'select',
        common,
        el('option', { value: '' }, 'not said'),
        ...(known ? [] : [el('option', { value }, value)]),
        ...choices.map((each) => el('option', { value: each.value }, each.label)),
      );
      select.value = value ?? '';
      select.addEventListener('change', () => put(select.value === '' ? null : select.value));
      return select;
    }
    if (entry === 'flags') return this.#flags(field, key);
    if (entry === 'citation') return this.#citation(field, common, put);
    const list =
      choices.length === 0
        ? null
        : el(
            'datalist',
            { id: `list-${key}` },
            ...choices.map((each) => el('option', { value: each.value })),
          );
    const input = el('input', {
      ...common,
      type: 'text',
      value,
      list: list?.id,
      inputmode: entry === 'number' ? 'numeric' : null,
      placeholder: field.hint,
      autocomplete: 'off',
      spellcheck: 'false',
    });
    const send = later(180, () => put(input.value, entry === 'number'));
    input.addEventListener('input', send);
    return el(
      'span',
      { class: 'entry' },
      input,
      list,
      choices.some((each) => each.value === 'not stated') && value === null
        ? el(
            'button',
            {
              type: 'button',
              class: 'small',
              'aria-label': `${field.label}: not stated`,
              onclick: () => put('not stated'),
            },
            'not stated',
          )
        : null,
    );
  }

  /** The source from a list, and where in it as it is written. */
  #citation(
    { value, choices }: FormField,
    common: Readonly<Record<string, string>>,
    put: (text: string | null) => void,
  ): HTMLElement {
    const [, source = '', page = ''] = /^(\S+)\s*(.*)$/.exec(value ?? '') ?? [];
    const known = source === '' || choices.some((each) => each.value === source);
    const select = el(
      'select',
      common,
      el('option', { value: '' }, 'no source'),
      ...(known ? [] : [el('option', { value: source }, source)]),
      ...choices.map((each) => el('option', { value: each.value }, each.label)),
    );
    select.value = source;
    const where = el('input', {
      type: 'text',
      value: page,
      'data-path': `${common['data-path']}-page`,
      'aria-label': 'Page',
      placeholder: 'p. 31',
      autocomplete: 'off',
    });
    const send = (): void => {
      if (select.value !== '') this.#source = select.value;
      put(select.value === '' ? null : `${select.value} ${where.value}`.trim());
    };
    select.addEventListener('change', send);
    where.addEventListener('input', later(180, send));
    return el('span', { class: 'entry citation' }, select, where);
  }

  #flags({ choices, values, path, label }: FormField, key: string): HTMLElement {
    const known = new Set(choices.map(({ value }) => value));
    const others = values
      .filter((value) => !known.has(value))
      .map((value) => ({ value, label: value }));
    return el(
      'span',
      { class: 'flags', role: 'group', 'aria-label': label },
      ...[...choices, ...others].map((choice) => {
        const box = el('input', {
          type: 'checkbox',
          'data-path': `${key}-${choice.value}`,
          checked: values.includes(choice.value),
        });
        box.addEventListener('change', () => {
          const next = box.checked
            ? [...values, choice.value]
            : values.filter((value) => value !== choice.value);
          this.#events.edit({ path, value: next });
        });
        return el('label', {}, box, choice.label);
      }),
    );
  }
}
