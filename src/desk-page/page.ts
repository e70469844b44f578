import { Contents } from './contents.ts';
import { beginDialog, kindDialog, newSheetDialog, printDialog, talked } from './dialogs.ts';
import { el } from './dom.ts';
import { EditionView } from './edition-view.ts';
import { Leaves } from './leaves.ts';
import type { DeskEvent, EditionState } from './model.ts';
import { PrintView } from './print-view.ts';
import { listen, Refused, server } from './server.ts';
import { SheetAtHand } from './sheet-at-hand.ts';
import { SourcesView } from './sources-view.ts';
import { WorkView } from './work-view.ts';

interface LineAndColumn {
  readonly line: number;
  readonly column: number;
}

/** The whole page: the edition on the left, the sheet in the middle, one leaf on the right. */
export class Page {
  readonly #contents: Contents;
  readonly #sheet: SheetAtHand;
  readonly #leaves: Leaves;
  readonly #edition: EditionView;
  readonly #word = el('p', { class: 'word', role: 'status' });
  #state: EditionState | null = null;

  constructor(nonce: string) {
    const go = (offset: number): void => this.#sheet.go(offset);
    const open = (id: string, at?: LineAndColumn): void => void this.open(id, at);
    const card = new PrintView('card');
    const chapter = new PrintView('chapter');
    const work = new WorkView(go);
    const sources = new SourcesView();
    this.#edition = new EditionView(go, open);
    const redraw = (): void => this.#sheet?.redraw();
    this.#leaves = new Leaves('leaf', 'Beside the sheet', [
      { id: 'card', title: 'Card', element: card.element, shown: (shown) => card.shown(shown) },
      {
        id: 'chapter',
        title: 'Chapter',
        element: chapter.element,
        shown: (shown) => chapter.shown(shown),
      },
      { id: 'work', title: 'Order of work', element: work.element, shown: redraw },
      { id: 'sources', title: 'Sources', element: sources.element, shown: redraw },
      { id: 'open', title: 'Still open', element: this.#edition.element, shown: redraw },
    ]);
    this.#contents = new Contents({
      open,
      newSheet: () => {
        if (this.#state !== null)
          newSheetDialog(this.#state, this.#sheet.id, (id) => void this.#made(id));
      },
      showKind: (name, title) => kindDialog(name, title),
      printBooklet: () => printDialog(null, () => this.#sheet.save()),
    });
    this.#sheet = new SheetAtHand(nonce, {
      card,
      chapter,
      work,
      sources,
      edition: this.#edition,
      leaf: () => this.#leaves.current,
      only: (leaves) => this.#leaves.only(leaves),
      live: (live) => {
        this.#contents.live(live);
        this.#edition.live(live);
      },
      open: (sheet, start) => void this.open(sheet).then(() => this.#sheet.go(start)),
      say: (words, stays) => this.say(words, stays),
    });
    const middle = el(
      'section',
      { class: 'middle', 'aria-label': 'The sheet' },
      this.#sheet.element,
    );
    const right = el(
      'section',
      { class: 'right', 'aria-label': 'Beside the sheet' },
      this.#leaves.element,
    );
    document.body.append(
      this.#word,
      this.#narrow(),
      el(
        'main',
        { class: 'desk' },
        el('h1', { class: 'for-ears' }, 'Desk'),
        this.#contents.element,
        middle,
        right,
      ),
    );
    document.body.dataset.side = 'sheet';
    document.addEventListener('keydown', (event) => this.#key(event));
    window.addEventListener('hashchange', () => void this.#fromAddress());
    window.addEventListener('beforeunload', () => void this.#sheet.flush());
  }

  async start(): Promise<void> {
    listen(
      (event) => this.#on(event),
      () =>
        this.say(
          'The desk does not answer. What you type stays in this page until it is back.',
          true,
        ),
      () => void this.#back(),
    );
    await this.#refreshEdition();
    await this.#fromAddress();
  }

  async open(id: string, at?: LineAndColumn): Promise<void> {
    this.say('');
    try {
      await this.#sheet.open(id);
    } catch (error) {
      this.say(error instanceof Error ? error.message : String(error), true);
      return;
    }
    this.#contents.at(id);
    document.body.dataset.side = 'sheet';
    if (decodeURIComponent(location.hash.slice(1)) !== id)
      history.pushState(null, '', `#${encodeURIComponent(id)}`);
    if (at !== undefined) this.#sheet.goTo(at);
    document.title = `${this.#sheet.title} · ${this.#state?.title ?? 'Gaugeleaf desk'}`;
  }

  /** Opens what was just made, and says which file it is. */
  async #made(id: string): Promise<void> {
    await this.#refreshEdition();
    await this.open(id);
    const isFile = id.includes('/');
    this.say(
      isFile
        ? `${id} is begun: name its settings, operations, features and hazards here. Ctrl Space shows what may stand at the cursor.`
        : `${id} is begun: what says fill in is to be written yet.`,
      true,
    );
  }

  /** Tells something at the head of the page; a word that stays does so until the next. */
  say(words: string, stays = false): void {
    this.#word.textContent = words;
    this.#word.classList.toggle('stays', stays);
    if (!stays && words !== '') {
      setTimeout(() => {
        if (this.#word.textContent === words) this.#word.textContent = '';
      }, 5000);
    }
  }

  /** On a narrow window one of the three is seen. */
  #narrow(): HTMLElement {
    const button = (side: string, label: string): HTMLElement =>
      el(
        'button',
        {
          type: 'button',
          'data-for': side,
          onclick: () => {
            document.body.dataset.side = side;
          },
        },
        label,
      );
    return el(
      'nav',
      { class: 'narrow', 'aria-label': 'Parts of the desk' },
      button('contents', 'Edition'),
      button('sheet', 'Sheet'),
      button('leaf', 'Print and work'),
    );
  }

  async #fromAddress(): Promise<void> {
    const id = decodeURIComponent(location.hash.slice(1));
    if (this.#state?.begun === false) {
      // A folder that was just made: without a word of a command line.
      if (document.querySelector('dialog') === null)
        beginDialog(this.#state, () => void this.#begun());
      return;
    }
    const known = [...(this.#state?.sheets ?? []), ...(this.#state?.files ?? [])];
    const first = known.find((sheet) => sheet.id === id) ?? known[0];
    if (first !== undefined && first.id !== this.#sheet.id) await this.open(first.id);
  }

  async #begun(): Promise<void> {
    await this.#refreshEdition();
    await this.#fromAddress();
  }

  async #refreshEdition(): Promise<void> {
    try {
      this.#state = await server.edition();
    } catch (error) {
      if (error instanceof Refused) this.say(error.message, true);
      return;
    }
    this.#contents.show(this.#state);
    this.#edition.edition(this.#state);
  }

  #on(event: DeskEvent): void {
    switch (event.is) {
      case 'edition':
        void this.#refreshEdition();
        break;
      case 'context':
        void this.#sheet.refresh();
        break;
      case 'updates':
        if (event.id === this.#sheet.id) this.#sheet.came(event.version, event.updates);
        break;
      case 'sheet':
        if (event.id === this.#sheet.id) this.#sheet.stands(event.unsaved, event.differing);
        void this.#refreshEdition();
        break;
      case 'talk':
        talked(event.job, event.line);
        break;
    }
  }

  async #back(): Promise<void> {
    this.say('The desk is back.');
    await this.#refreshEdition();
    this.#sheet.again();
  }

  #key(event: KeyboardEvent): void {
    const command = event.ctrlKey || event.metaKey;
    if (command && event.key === 's') {
      event.preventDefault();
      void this.#sheet.save();
    } else if (command && event.key === 'k') {
      event.preventDefault();
      document.body.dataset.side = 'contents';
      this.#contents.find();
    } else if (event.key === 'F6') {
      // From part to part, as between the panes of a window.
      event.preventDefault();
      this.#nextPart(event.shiftKey ? -1 : 1);
    }
  }

  #nextPart(step: number): void {
    const parts = [...document.querySelectorAll<HTMLElement>('.contents, .middle, .right')];
    const at = parts.findIndex((part) => part.contains(document.activeElement));
    const next = parts[(at + step + parts.length) % parts.length];
    // The text first, then the form; of the contents the sheet that is open, of the leaves the one on top.
    const wanted = ['.cm-content', '.form-view input', '.here', '[aria-selected="true"]', 'button'];
    for (const each of wanted) {
      const target = [...(next?.querySelectorAll<HTMLElement>(each) ?? [])].find(
        ({ offsetParent }) => offsetParent !== null,
      );
      if (target !== undefined) {
        target.focus();
        return;
      }
    }
  }
}
