import { EditorView } from '@codemirror/view';
import { printDialog } from './dialogs.ts';
import { differenceDialog } from './difference.ts';
import { el, later } from './dom.ts';
import type { EditionView } from './edition-view.ts';
import { editorState } from './editor.ts';
import { setFindings } from './editor-findings.ts';
import { editorWords, offerActions } from './editor-words.ts';
import type { FormEdit } from './form-model.ts';
import { FormView } from './form-view.ts';
import { Leaves } from './leaves.ts';
import type { Differing, LiveSheet, OpenedSheet, Update } from './model.ts';
import { askName, goToDefinition, showUses } from './names-dialog.ts';
import { oneChange } from './one-change.ts';
import type { PrintView } from './print-view.ts';
import { Proofreader } from './proofreader.ts';
import { server } from './server.ts';
import { isAhead, sendAgain, settle, sharedText, updatesCame } from './shared-text.ts';
import { SheetHead } from './sheet-head.ts';
import type { SourcesView } from './sources-view.ts';
import type { WorkView } from './work-view.ts';
import type { Checked } from './worker-model.ts';

/** What stands around the sheet and shows something of it. */
export interface Around {
  readonly card: PrintView;
  readonly chapter: PrintView;
  readonly work: WorkView;
  readonly sources: SourcesView;
  readonly edition: EditionView;
  /** The leaf that lies on top. */
  readonly leaf: () => string;
  /** Offers these leaves alone; all of them with null. */
  readonly only: (leaves: readonly string[] | null) => void;
  readonly live: (live: LiveSheet) => void;
  /** Opens a sheet at an offset of its text. */
  readonly open: (sheet: string, start: number) => void;
  readonly say: (words: string, stays?: boolean) => void;
}

/** The one sheet that is written at: its text and its form, its state, and what was found. */
export class SheetAtHand {
  readonly element: HTMLElement;
  readonly #nonce: string;
  readonly #around: Around;
  readonly #view: EditorView;
  readonly #form: FormView;
  readonly #proofreader: Proofreader;
  readonly #views: Leaves;
  readonly #head: SheetHead;
  readonly #readCursor = later(60, () => void this.#drawWork());
  /** Entries of the form are made one after the other, each in the text that the one before it left. */
  #entered: Promise<void> = Promise.resolve();
  #opened: OpenedSheet | null = null;
  #checked: Checked | null = null;

  constructor(nonce: string, around: Around) {
    this.#nonce = nonce;
    this.#around = around;
    this.#proofreader = new Proofreader((checked, text) => this.#onChecked(checked, text));
    const text = el('div', { class: 'text-view' });
    // The first state already bears the nonce: a style that comes without it is refused.
    this.#view = new EditorView({ parent: text, extensions: EditorView.cspNonce.of(nonce) });
    this.#form = new FormView({
      edit: (edit) => void this.#formEdit(edit),
      more: (name, source) => {
        void this.#formEdit({ path: ['settings', name, 'value'], value: 'fill in' });
        if (source !== null)
          void this.#formEdit({ path: ['settings', name, 'from'], value: source });
      },
    });
    this.#head = new SheetHead({
      save: () => void this.save(),
      print: () => this.#print(),
      showDifference: () => this.#showDifference(),
      cures: () => this.#cures(),
      name: (what) => void this.#name(what),
    });
    this.#views = new Leaves('view', 'The sheet', [
      {
        id: 'text',
        title: 'Text',
        element: text,
        shown: (shown) => shown && this.#view?.requestMeasure(),
      },
      {
        id: 'form',
        title: 'Form',
        element: this.#form.element,
        shown: (shown) => shown && void this.#drawForm(),
      },
    ]);
    this.element = el(
      'div',
      { class: 'sheet' },
      this.#head.head,
      this.#views.element,
      this.#head.foot,
    );
  }

  get id(): string | null {
    return this.#opened?.id ?? null;
  }

  get title(): string {
    return this.#checked?.title ?? this.id ?? '';
  }

  /** Opens a sheet in place of the one at hand, whose last words go out first. */
  async open(id: string): Promise<void> {
    if (this.#opened !== null) await settle(this.#view);
    this.#put(await server.sheet(id));
    await this.#proofreader.open(id, this.#text, this.#opened?.sort ?? 'sheet');
    if (this.#opened?.restored === true) {
      this.#around.say('What was typed before and not saved is here again.');
    }
  }

  /** Puts a sheet in place of the one that is shown; without a pause in which somebody could type. */
  #put(opened: OpenedSheet): void {
    this.#opened = opened;
    this.#checked = null;
    this.#head.title(opened.id);
    this.#view.setState(
      editorState(
        opened.text,
        {
          extensions: [
            sharedText(opened.id, opened.version, {
              settled: () => undefined,
              lost: (why) => void this.#reopen(why),
            }),
            editorWords(this.#proofreader),
          ],
          locked: opened.locked !== null,
          isYaml: opened.sort !== 'sheet',
          onText: (text) => this.#onText(text),
          onCursor: () => this.#readCursor(),
          onSave: () => void this.save(),
          onCures: () => this.#cures(),
          onName: (_, what) => void this.#name(what),
        },
        this.#nonce,
      ),
    );
    if (opened.locked !== null) this.#around.say(opened.locked, true);
    this.stands(opened.unsaved, opened.differing);
    const isSheet = opened.sort === 'sheet';
    this.#views.only(isSheet ? null : ['text']);
    this.#head.prints(isSheet);
    this.#around.only(isSheet ? null : ['open']);
    if (!isSheet) return;
    this.#around.card.text(opened.id, opened.text);
    this.#around.chapter.text(opened.id, opened.text);
  }

  /**
   * The server lost count of this window, or the window of the server: the text is taken anew, and what was
   * typed and not sent, or sent to a server that no longer knows of it, is put in.
   */
  async #reopen(why: string): Promise<void> {
    const before = this.#opened;
    if (before === null) return;
    const opened = await server.sheet(before.id).catch(() => null);
    if (opened === null) {
      this.#around.say(`${why}; what you type stays in this page`, true);
      setTimeout(() => void this.#reopen(why), 1000);
      return;
    }
    if (this.#opened?.id !== before.id) return;
    const mine = this.#text;
    const { head } = this.#view.state.selection.main;
    const counts = isAhead(this.#view, opened.version);
    this.#put(opened);
    const text = counts ? mine : opened.text;
    this.#view.dispatch({
      ...(text === opened.text ? {} : { changes: oneChange(opened.text, text) }),
      selection: { anchor: Math.min(head, text.length) },
      scrollIntoView: true,
    });
    await this.#proofreader.open(opened.id, this.#text, opened.sort);
  }

  get #text(): string {
    return this.#view.state.doc.toString();
  }

  /** Puts the cursor at a place, and shows it. */
  go(offset: number): void {
    this.#views.show('text');
    const at = Math.min(offset, this.#view.state.doc.length);
    this.#view.dispatch({
      selection: { anchor: at },
      effects: EditorView.scrollIntoView(at, { y: 'center' }),
    });
    this.#view.focus();
  }

  /** The same for a line and a column, both 1-based. */
  goTo({ line, column }: { readonly line: number; readonly column: number }): void {
    const { doc } = this.#view.state;
    this.go(doc.line(Math.min(Math.max(1, line), doc.lines)).from + column - 1);
  }

  /** Saves the text; false where that could not be done. */
  async save(): Promise<boolean> {
    const opened = this.#opened;
    if (opened === null) return true;
    try {
      await settle(this.#view);
      const saved = await server.save(opened.id);
      if (saved.ok) {
        this.stands(false, null);
        return true;
      }
      this.#around.say(saved.why, true);
      if (saved.differing !== null) {
        this.stands(true, saved.differing);
        this.#showDifference();
      }
    } catch (error) {
      this.#around.say(
        `It could not be saved: ${error instanceof Error ? error.message : String(error)}.`,
        true,
      );
    }
    return false;
  }

  flush(): Promise<void> {
    return settle(this.#view);
  }

  again(): void {
    sendAgain(this.#view);
    void this.refresh();
  }

  refresh(): Promise<void> {
    return this.#proofreader.refresh().catch(() => undefined);
  }

  came(version: number, updates: readonly Update[]): void {
    updatesCame(this.#view, version, updates);
  }

  /** How the text stands to its file. */
  stands(unsaved: boolean, differing: Differing | null): void {
    this.#head.stands(unsaved, differing);
  }

  /** Shows on the leaf that lies on top what is known. */
  redraw(): void {
    void this.#drawWork();
    void this.#drawSources();
    if (this.#checked !== null) this.#around.edition.sheet(this.#checked.findings);
  }

  #onText(text: string): void {
    this.#proofreader.check(text);
    if (this.#opened === null) return;
    this.#head.typed();
    if (this.#opened.sort !== 'sheet') return;
    this.#around.card.text(this.#opened.id, text);
    this.#around.chapter.text(this.#opened.id, text);
  }

  #onChecked(checked: Checked, text: string): void {
    // The text has gone on: what was found of it is moved along, and the next is on its way.
    if (this.#opened === null || this.#text !== text) return;
    this.#checked = checked;
    this.#view.dispatch({ effects: setFindings.of(checked.findings) });
    const count = (severity: string) =>
      checked.findings.filter((each) => each.severity === severity && each.accepted === null)
        .length;
    const counts = { errors: count('error'), warnings: count('warning'), notes: count('note') };
    this.#head.found(counts);
    this.#head.title(checked.title ?? this.#opened.id);
    this.#around.live({
      id: this.#opened.id,
      counts,
      title: checked.title,
      status: checked.status,
    });
    document.body.dataset.checked = String(Math.round(performance.now()));
    if (this.#views.current === 'form') void this.#drawForm();
    this.#readCursor();
    if (this.#around.leaf() === 'open') this.#around.edition.sheet(checked.findings);
    if (this.#around.leaf() === 'sources') void this.#drawSources();
  }

  async #drawForm(): Promise<void> {
    if (this.#opened === null) return;
    const model = await this.#proofreader.ask('form', {}, this.#text);
    this.#form.show(model, this.#checked?.findings ?? []);
  }

  async #drawWork(): Promise<void> {
    if (this.#opened === null || this.#around.leaf() !== 'work') return;
    const { head } = this.#view.state.selection.main;
    this.#around.work.show(await this.#proofreader.ask('work', { offset: head }, this.#text));
  }

  async #drawSources(): Promise<void> {
    if (this.#opened === null || this.#around.leaf() !== 'sources') return;
    this.#around.sources.show(await this.#proofreader.ask('sources', {}, this.#text));
  }

  /** An entry of the form: the edits of its own lines, made as if they were typed. */
  #formEdit(edit: FormEdit): Promise<void> {
    const opened = this.#opened?.id;
    const made = this.#entered.then(async () => {
      // Another window may write meanwhile: then the entry is worked out anew, and never dropped.
      while (this.#opened?.id === opened) {
        const text = this.#text;
        const edits = await this.#proofreader.ask('formEdit', { edit }, text);
        if (this.#text !== text) continue;
        if (edits.length > 0) {
          this.#view.dispatch({
            changes: edits.map(({ span, text: insert }) => ({
              from: span.start,
              to: span.end,
              insert,
            })),
            userEvent: 'input.form',
          });
        }
        return;
      }
    });
    this.#entered = made.catch(() => undefined);
    return made;
  }

  #cures(): void {
    void offerActions(this.#view, this.#proofreader, this.#opened?.file ?? '');
  }

  /** What is known of the name at the cursor throughout the project, or another name for it. */
  async #name(what: 'definition' | 'uses' | 'rename'): Promise<void> {
    const id = this.#opened?.sort === 'sheet' ? this.#opened.id : null;
    if (id === null) return;
    const events = {
      open: (sheet: string, start: number) => this.#around.open(sheet, start),
      say: (words: string) => this.#around.say(words),
    };
    const deeds = { definition: goToDefinition, uses: showUses, rename: askName };
    try {
      await deeds[what](this.#view, id, events);
    } catch (error) {
      this.#around.say(error instanceof Error ? error.message : String(error));
    }
  }

  #print(): void {
    if (this.#opened === null) return;
    printDialog({ sheet: this.#opened.id, title: this.title }, () => this.save());
  }

  #showDifference(): void {
    const opened = this.#opened;
    const { differing } = this.#head;
    if (opened === null || differing === null) return;
    differenceDialog(differing, this.#text, this.#nonce, async (keep) => {
      await server.settle(opened.id, keep);
      // Whoever keeps his text has said what the file is to hold.
      if (keep === 'file') this.#around.say('The text is that of the file.');
      else if (await this.save()) this.#around.say('Your text stands in the file.');
    });
  }
}
