import { counted, el, fill, later } from './dom.ts';
import type { EditionState, FindingCounts, FoundLine, LiveSheet, SheetLine } from './model.ts';
import { server } from './server.ts';

/** What the left side asks of the page. */
export interface ContentsEvents {
  readonly open: (id: string, at?: { readonly line: number; readonly column: number }) => void;
  readonly newSheet: () => void;
  readonly showKind: (name: string, title: string) => void;
  readonly printBooklet: () => void;
}

/** The sheets of the edition as a table of contents, each with its state where a page number would stand. */
export class Contents {
  readonly element: HTMLElement;
  readonly #events: ContentsEvents;
  readonly #list = el('ol', { class: 'lines' });
  readonly #found = el('ol', {
    class: 'lines found-lines',
    hidden: true,
    'aria-label': 'What was found',
  });
  readonly #behind = el('section', { class: 'behind', 'aria-label': 'Behind the sheets' });
  readonly #heading = el('h2', { class: 'edition' });
  readonly #progress = el('p', { class: 'progress', role: 'status' });
  readonly #words = el('input', {
    type: 'search',
    placeholder: '13/64, float level, WS-17 …',
    'aria-label': 'Find sizes, settings, sources and words in all sheets',
  });
  #state: EditionState | null = null;
  #current: string | null = null;
  #live: LiveSheet | null = null;

  constructor(events: ContentsEvents) {
    this.#events = events;
    this.element = el(
      'nav',
      { class: 'contents', 'aria-label': 'Sheets of the edition' },
      this.#heading,
      this.#words,
      this.#found,
      this.#list,
      this.#behind,
      this.#progress,
      el(
        'p',
        { class: 'deeds' },
        el('button', { type: 'button', onclick: () => events.newSheet() }, 'New sheet'),
        el('button', { type: 'button', onclick: () => events.printBooklet() }, 'Print the booklet'),
      ),
    );
    const search = later(200, () => void this.#search());
    this.#words.addEventListener('input', search);
    this.#words.addEventListener('keydown', (event) => {
      if (event.key === 'Escape') {
        this.#words.value = '';
        void this.#search();
      } else if (event.key === 'Enter') {
        event.preventDefault();
        void this.#search().then(() => this.#found.querySelector('button')?.click());
      }
    });
    this.element.addEventListener('keydown', (event) => this.#walk(event));
  }

  show(state: EditionState): void {
    this.#state = state;
    this.#draw();
  }

  /** The sheet that is open. */
  at(id: string): void {
    this.#current = id;
    this.#draw();
  }

  /** What was just found on the sheet that is open: newer than what its file says. */
  live(live: LiveSheet): void {
    const before = JSON.stringify(this.#live);
    this.#live = live;
    if (JSON.stringify(live) !== before) this.#draw();
  }

  /** Arrow keys go from the words that are sought down the lines below, and back. */
  #walk(event: KeyboardEvent): void {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step === 0) return;
    const lines = this.#found.hidden ? this.#list : this.#found;
    const stops = [this.#words, ...lines.querySelectorAll('button')];
    const at = stops.indexOf(document.activeElement as HTMLButtonElement);
    const next = at < 0 ? undefined : stops[at + step];
    if (next === undefined) return;
    next.focus();
    event.preventDefault();
  }

  find(): void {
    this.#words.focus();
    this.#words.select();
  }

  #draw(): void {
    const state = this.#state;
    if (state === null) return;
    fill(
      this.#heading,
      state.title ?? state.folder,
      state.club === null ? null : el('span', { class: 'club' }, state.club),
    );
    fill(this.#list, ...state.sheets.map((sheet) => this.#line(sheet)));
    this.#drawBehind(state);
    const read = state.sheets.filter(({ counts, refused }) => counts !== null || refused !== null);
    this.#progress.textContent = state.done
      ? ''
      : `${read.length} of ${state.sheets.length} sheets read`;
  }

  /** Edition, shared sources and kinds: what is club's own opens, what came with the program is shown. */
  #drawBehind({ files, kinds, findings }: EditionState): void {
    const faults = (id: string, severity: string): number =>
      findings.filter(
        ({ finding }) =>
          finding.file.endsWith(id) && finding.severity === severity && finding.accepted === null,
      ).length;
    const own = files.map((file) => {
      const live = this.#live?.id === file.id ? this.#live.counts : null;
      const counts = live ?? {
        errors: faults(file.id, 'error'),
        warnings: faults(file.id, 'warning'),
        notes: 0,
      };
      const standing = [
        ...tally(counts),
        el('span', { class: 'status' }, file.sort === 'kind' ? 'your kind' : ''),
      ];
      return this.#stop(file.id, file.title, file.unsaved, standing, () =>
        this.#events.open(file.id),
      );
    });
    const built = kinds
      .filter((kind) => !kind.own)
      .map(({ name, title }) =>
        this.#stop(name, title, false, [el('span', { class: 'status' }, 'kind')], () =>
          this.#events.showKind(name, title),
        ),
      );
    fill(
      this.#behind,
      el('h3', {}, 'Behind the sheets'),
      el('ol', { class: 'lines' }, ...own, ...built),
    );
  }

  #stop(
    id: string,
    title: string,
    unsaved: boolean,
    standing: readonly (Node | string)[],
    onclick: () => void,
  ): HTMLElement {
    const here = id === this.#current;
    return el(
      'li',
      {},
      el(
        'button',
        {
          type: 'button',
          class: here ? 'here' : null,
          'aria-current': here ? 'page' : null,
          onclick,
        },
        el('span', { class: 'name' }, title),
        el('span', { class: 'leader', 'aria-hidden': 'true' }),
        el(
          'span',
          { class: 'standing' },
          unsaved ? el('span', { class: 'unsaved', title: 'not saved yet' }, 'unsaved ') : null,
          ...standing,
        ),
      ),
    );
  }

  #line(sheet: SheetLine): HTMLElement {
    const live = this.#live?.id === sheet.id ? this.#live : null;
    const counts = live?.counts ?? sheet.counts;
    const status = live?.status ?? sheet.status;
    return this.#stop(
      sheet.id,
      live?.title ?? sheet.title,
      sheet.unsaved,
      this.#standing(sheet, counts, status),
      () => this.#events.open(sheet.id),
    );
  }

  #standing(
    sheet: SheetLine,
    counts: FindingCounts | null,
    status: string | null,
  ): readonly (Node | string)[] {
    if (sheet.refused !== null)
      return [el('span', { class: 'errors', title: sheet.refused }, 'unreadable')];
    if (counts === null) return [el('span', { class: 'reading' }, '…')];
    const told = sheet.left ? 'left out' : (status ?? 'no status');
    return [...tally(counts), el('span', { class: 'status' }, told)];
  }

  async #search(): Promise<void> {
    const words = this.#words.value.trim();
    if (words === '') {
      this.#found.hidden = true;
      this.#list.hidden = false;
      return;
    }
    const found = await server.find(words).catch(() => null);
    if (this.#words.value.trim() !== words) return;
    this.#found.hidden = false;
    this.#list.hidden = true;
    fill(
      this.#found,
      ...(found === null || found.length === 0
        ? [el('li', { class: 'none' }, 'Nothing was found.')]
        : found.map((line) => this.#foundLine(line))),
    );
  }

  #foundLine({ sheet, words, where, line, column }: FoundLine): HTMLElement {
    return el(
      'li',
      {},
      el(
        'button',
        { type: 'button', onclick: () => this.#events.open(sheet, { line, column }) },
        el('span', { class: 'name' }, words),
        el('span', { class: 'where' }, where),
      ),
    );
  }
}

function hidden(text: string): HTMLElement {
  return el('span', { class: 'for-ears' }, text);
}

/** Errors and warnings, as signs that are told in words as well. */
function tally({ errors, warnings }: FindingCounts): HTMLElement[] {
  return (
    [
      [errors, 'error', '×'],
      [warnings, 'warning', '?'],
    ] as const
  )
    .filter(([count]) => count > 0)
    .map(([count, noun, sign]) =>
      el(
        'span',
        { class: `${noun}s`, title: counted(count, noun) },
        `${count} ${sign}`,
        hidden(` ${noun}s`),
        ' ',
      ),
    );
}
