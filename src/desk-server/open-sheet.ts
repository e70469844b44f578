import { ChangeSet, Text } from '@codemirror/state';
import { oneChange } from '../desk-page/index.ts';
import type { Differing, OpenedSheet, Pushed, Saved, Update } from '../desk-page/model.ts';
import { longestText, Refusal, writeWhole } from '../project/index.ts';
import { Journal, markOf } from './journal.ts';
import { LineEnds } from './line-ends.ts';
import { readSheetFile, type SheetPlace, setAside } from './sheet-file.ts';

/** So many updates are kept for windows that come late; one that missed more opens the sheet anew. */
const mostUpdates = 5000;

/** What an open sheet tells of itself. */
export interface SheetEvents {
  readonly updates: (version: number, updates: readonly Update[]) => void;
  /** Whether it is unsaved or differs from its file has changed. */
  readonly changed: () => void;
}

/**
 * The one text of a sheet that any number of windows write at. Each change is taken in the order it comes;
 * a window that did not know of an earlier one is given that first, and turns its own accordingly.
 */
export class OpenSheet {
  readonly id: string;
  readonly #place: SheetPlace;
  readonly #journal: Journal;
  readonly #events: SheetEvents;
  #text = Text.empty;
  #updates: Update[] = [];
  #firstVersion = 0;
  /** The text of the file when it was last read or written; null where there was none. */
  #base: string | null = null;
  #baseMark = '';
  #ends = new LineEnds('');
  #differing: Differing | null = null;
  #locked: string | null = null;
  #restored = false;

  /** Fails with `Refusal` where it cannot be read. */
  constructor(at: SheetPlace, events: SheetEvents) {
    this.id = at.id;
    this.#place = at;
    this.#events = events;
    this.#journal = new Journal(at.folder, at.id);
    const read = this.#read();
    if (read === null) throw new Refusal(`there is no sheet ${at.id} any more`);
    this.#takeBase(read);
    const recovered = this.#journal.recover();
    if (recovered === null || recovered.text === this.#shown(read)) {
      this.#text = textOf(this.#shown(read));
      this.#journal.clear();
      return;
    }
    this.#text = textOf(recovered.text);
    this.#restored = true;
    if (recovered.base !== this.#baseMark) {
      this.#differing = { text: read };
      this.#baseMark = recovered.base;
    }
  }

  get version(): number {
    return this.#firstVersion + this.#updates.length;
  }

  /** As the page has it: line ends are `\n`. */
  get text(): string {
    return this.#text.toString();
  }

  get unsaved(): boolean {
    return this.#base === null || this.text !== this.#shown(this.#base);
  }

  get differing(): Differing | null {
    return this.#differing === null
      ? null
      : { text: this.#differing.text === null ? null : this.#shown(this.#differing.text) };
  }

  opened(): OpenedSheet {
    return {
      id: this.id,
      file: this.#place.file,
      sort: this.#place.sort,
      text: this.text,
      version: this.version,
      unsaved: this.unsaved,
      locked: this.#locked,
      restored: this.#restored,
      differing: this.differing,
    };
  }

  /** The updates from a version on; null where they are no longer known, or never were. */
  since(version: number): readonly Update[] | null {
    if (version < this.#firstVersion || version > this.version) return null;
    return this.#updates.slice(version - this.#firstVersion);
  }

  /** Takes a window's changes, all of them or none. Fails with `Refusal` for what is no change of this text. */
  push(version: number, updates: readonly Update[]): Pushed {
    if (this.#locked !== null) throw new Refusal(this.#locked);
    if (version !== this.version) {
      return { ok: false, version: this.version, updates: this.since(version) };
    }
    const taken: { update: Update; before: Text; after: Text }[] = [];
    let text = this.#text;
    for (const update of updates) {
      const changes = changesFrom(update.changes, text.length);
      const after = changes.apply(text);
      if (after.length > longestText) {
        throw new Refusal(`a sheet has at most ${longestText} letters`, 'split it');
      }
      taken.push({ update, before: text, after });
      text = after;
    }
    for (const { update, before, after } of taken) {
      this.#journal.add(update.changes, before.toString(), this.#baseMark);
      this.#take(update, after);
    }
    this.#events.updates(
      this.version - updates.length,
      taken.map(({ update }) => update),
    );
    this.#afterChange();
    return { ok: true, version: this.version };
  }

  /** Writes the text into the file, whole, unless the file is not what the typing began with. */
  save(): Saved {
    if (this.#locked !== null) return { ok: false, why: this.#locked, differing: null };
    this.look();
    if (this.#differing !== null) {
      const why = `${this.#place.file} was changed by another program; it is not written over`;
      return { ok: false, why, differing: this.differing };
    }
    const content = this.#ends.written(this.text);
    writeWhole(this.#place.path, content, { within: this.#place.root });
    this.#takeBase(content);
    this.#restored = false;
    this.#journal.clear();
    this.#events.changed();
    return { ok: true };
  }

  /**
   * Looks at the file. One that changed is taken up where nothing was typed meanwhile, and else shown as a
   * difference.
   */
  look(): void {
    const read = this.#read();
    const mark = markOf(read);
    if (mark === this.#baseMark) {
      if (this.#differing === null) return;
      this.#differing = null;
      this.#events.changed();
      return;
    }
    if (this.#differing !== null && this.#differing.text === read) return;
    if (read !== null && this.#shown(read) === this.text) {
      this.#takeBase(read);
      this.#differing = null;
      this.#journal.clear();
    } else if (read !== null && !this.unsaved && this.#differing === null) {
      this.#takeBase(read);
      this.#replace(this.#shown(read));
    } else this.#differing = { text: read };
    this.#events.changed();
  }

  /**
   * Ends a difference as a person said: `file` takes up what stands in the file, `mine` lets the next saving
   * write over it. What gives way is kept aside.
   */
  settle(keep: 'mine' | 'file'): void {
    const found = this.#differing;
    if (found === null) return;
    if (keep === 'file' && found.text === null) {
      throw new Refusal(
        `${this.#place.file} is gone; there is nothing to take up`,
        'keep this text',
      );
    }
    const loser = keep === 'file' ? this.text : found.text;
    if (loser !== null) setAside(this.#place, loser);
    this.#differing = null;
    if (found.text === null) {
      this.#base = null;
      this.#baseMark = markOf(null);
    } else this.#takeBase(found.text);
    if (keep === 'file' && found.text !== null) {
      this.#replace(this.#shown(found.text));
      this.#journal.clear();
    }
    this.#afterChange();
  }

  /** Puts another text in place of this one for all windows, as if one of them had typed it. */
  rewrite(text: string): void {
    if (this.#locked !== null) throw new Refusal(this.#locked);
    if (text === this.text) return;
    const changes = oneChange(this.text, text);
    this.#journal.add(changes.toJSON(), this.text, this.#baseMark);
    this.#replace(text);
    this.#afterChange();
  }

  /** Closes its journal, and leaves it where something is not saved. */
  close(): void {
    if (this.unsaved) this.#journal.leave();
    else this.#journal.clear();
  }

  #take(update: Update, after: Text): void {
    this.#text = after;
    this.#updates.push(update);
    if (this.#updates.length > mostUpdates) {
      const gone = this.#updates.length - mostUpdates / 2;
      this.#updates.splice(0, gone);
      this.#firstVersion += gone;
    }
  }

  /** Puts another text in place of this one, for all windows. */
  #replace(text: string): void {
    const changes = oneChange(this.text, text);
    const update: Update = { clientID: 'file', changes: changes.toJSON() };
    this.#take(update, changes.apply(this.#text));
    this.#events.updates(this.version - 1, [update]);
  }

  #afterChange(): void {
    // What was typed is taken back to the letter: nothing is left to be lost.
    if (!this.unsaved && this.#differing === null) this.#journal.clear();
    this.#events.changed();
  }

  #takeBase(content: string): void {
    this.#base = content;
    this.#baseMark = markOf(content);
    this.#ends = new LineEnds(content);
  }

  #shown(content: string): string {
    return this.#ends.shown(content);
  }

  #read(): string | null {
    const { text, locked } = readSheetFile(this.#place);
    if (text !== null) this.#locked = locked;
    return text;
  }
}

function textOf(text: string): Text {
  return Text.of(text.split('\n'));
}

/** A change from a stranger's JSON. Fails with `Refusal` where it is none, or none of this text. */
function changesFrom(json: unknown, length: number): ChangeSet {
  let changes: ChangeSet | null = null;
  try {
    changes = ChangeSet.fromJSON(json);
  } catch {
    // Told below.
  }
  if (changes === null || changes.length !== length) {
    throw new Refusal('this change does not fit the text', 'open the sheet again');
  }
  return changes;
}
