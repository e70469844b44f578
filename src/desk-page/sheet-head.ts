import { counted, el, later } from './dom.ts';
import type { Differing, FindingCounts } from './model.ts';
import { preferences } from './preferences.ts';

/** What the head and foot of a sheet ask of it. */
export interface HeadEvents {
  readonly save: () => void;
  readonly print: () => void;
  readonly showDifference: () => void;
  readonly cures: () => void;
  readonly name: (what: 'definition' | 'uses' | 'rename') => void;
}

/** How long after the last key a sheet saves itself, where it is to (milliseconds). */
const savesItselfAfter = 1500;

/** What can be asked of the name at the cursor. */
const nameDeeds = [
  ['definition', 'Go to its place', 'F12'],
  ['uses', 'Where it is used', 'Shift F12'],
  ['rename', 'Another name', 'F2'],
] as const;

/** The head of a sheet: its title, how it stands to its file, and what can be done with it; and its foot. */
export class SheetHead {
  readonly head: HTMLElement;
  readonly foot: HTMLElement;
  unsaved = false;
  differing: Differing | null = null;
  readonly #title = el('h2', { class: 'sheet-title' });
  readonly #tally = el('p', { class: 'tally', role: 'status' });
  readonly #standing = el('span', { class: 'standing', role: 'status' });
  readonly #differs: HTMLElement;
  readonly #names = el('span', { class: 'deeds' });
  readonly #print = el('button', { type: 'button' }, 'Print the card');
  readonly #itself = el('input', { type: 'checkbox', id: 'saves-itself' });
  readonly #soon: () => void;

  constructor(events: HeadEvents) {
    this.#soon = later(savesItselfAfter, () => {
      if (this.#itself.checked && this.unsaved && this.differing === null) events.save();
    });
    this.#itself.checked = preferences.get('saves-itself') === 'yes';
    this.#itself.addEventListener('change', () => {
      preferences.set('saves-itself', this.#itself.checked ? 'yes' : 'no');
      this.#soon();
    });
    this.#differs = el(
      'button',
      { type: 'button', class: 'differs', hidden: true, onclick: () => events.showDifference() },
      'The file was changed meanwhile: look at both',
    );
    this.#names.append(
      ...nameDeeds.map(([what, label, key]) =>
        el('button', { type: 'button', title: key, onclick: () => events.name(what) }, label),
      ),
    );
    this.#print.addEventListener('click', () => events.print());
    this.head = el(
      'header',
      { class: 'sheet-head' },
      this.#title,
      el(
        'div',
        { class: 'deeds' },
        this.#standing,
        el('button', { type: 'button', title: 'Ctrl S', onclick: () => events.save() }, 'Save'),
        el('label', { for: 'saves-itself' }, this.#itself, 'by itself'),
        this.#print,
      ),
      this.#differs,
    );
    this.foot = el(
      'footer',
      { class: 'sheet-foot' },
      this.#tally,
      el(
        'p',
        { class: 'deeds' },
        el(
          'button',
          { type: 'button', title: 'Alt Enter', onclick: () => events.cures() },
          'What can be done here',
        ),
        this.#names,
      ),
    );
  }

  /** Whether it is something that prints by itself. */
  prints(prints: boolean): void {
    this.#print.hidden = !prints;
    this.#names.hidden = !prints;
  }

  title(title: string): void {
    this.#title.textContent = title;
  }

  found({ errors, warnings, notes }: FindingCounts): void {
    this.#tally.textContent = [
      counted(errors, 'error'),
      counted(warnings, 'warning'),
      counted(notes, 'note'),
    ].join(', ');
  }

  /** Something was typed. */
  typed(): void {
    if (!this.unsaved) this.stands(true, this.differing);
    this.#soon();
  }

  /** How the text stands to its file. */
  stands(unsaved: boolean, differing: Differing | null): void {
    this.unsaved = unsaved;
    this.differing = differing;
    this.#standing.textContent = unsaved ? 'not saved' : 'saved';
    this.#standing.classList.toggle('unsaved', unsaved);
    this.#differs.hidden = differing === null;
    if (unsaved) this.#soon();
  }
}
