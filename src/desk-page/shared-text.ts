import { collab, getSyncedVersion, receiveUpdates, sendableUpdates } from '@codemirror/collab';
import { ChangeSet, type Extension } from '@codemirror/state';
import { type EditorView, ViewPlugin, type ViewUpdate } from '@codemirror/view';
import type { Update } from './model.ts';
import { Away, Refused, server } from './server.ts';

/** What becomes of the text between this window and the server. */
export interface SharedEvents {
  /** All that was typed here is with the server, or not yet. */
  readonly settled: (settled: boolean) => void;
  /** The window has to open the sheet anew: it knows too little, or too much. */
  readonly lost: (why: string) => void;
}

/** What is typed goes out after this many milliseconds at most: the journal is never older. */
const pace = 120;

/** Keeps the text of one window and that of the server the same; the server's order counts. */
export function sharedText(id: string, version: number, events: SharedEvents): Extension {
  return [
    collab({ startVersion: version }),
    ViewPlugin.define((view) => new Carrier(view, id, events)),
  ];
}

const carriers = new WeakMap<EditorView, Carrier>();

/** Tells a window of updates that were taken by the server. */
export function updatesCame(view: EditorView, version: number, updates: readonly Update[]): void {
  carriers.get(view)?.came(version, updates);
}

/** Sends what is waiting, and waits until it is taken. */
export async function settle(view: EditorView): Promise<void> {
  await carriers.get(view)?.settle();
}

/** Tries again what could not be sent. */
export function sendAgain(view: EditorView): void {
  carriers.get(view)?.again();
}

/** Whether a window has something that a server at that version cannot know. */
export function isAhead(view: EditorView, version: number): boolean {
  return sendableUpdates(view.state).length > 0 || getSyncedVersion(view.state) > version;
}

class Carrier {
  readonly #view: EditorView;
  readonly #id: string;
  readonly #events: SharedEvents;
  #timer: ReturnType<typeof setTimeout> | null = null;
  #sending: Promise<void> | null = null;
  #gone = false;

  constructor(view: EditorView, id: string, events: SharedEvents) {
    this.#view = view;
    this.#id = id;
    this.#events = events;
    carriers.set(view, this);
  }

  update(update: ViewUpdate): void {
    if (!update.docChanged || sendableUpdates(update.state).length === 0) return;
    this.#events.settled(false);
    this.#soon();
  }

  destroy(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    // What is typed last goes out though the window turns to another sheet.
    if (!this.#gone) void this.#send();
    this.#gone = true;
  }

  /** From here on nothing goes out: the window takes the text anew, and puts its own into that. */
  #lost(why: string): void {
    if (this.#gone) return;
    this.#gone = true;
    this.#events.lost(why);
  }

  came(version: number, updates: readonly Update[]): void {
    const known = getSyncedVersion(this.#view.state);
    if (version + updates.length <= known) return;
    if (version > known) void this.#fetch();
    else this.#receive(updates.slice(known - version));
  }

  again(): void {
    if (this.#gone) return;
    void this.#fetch().then(() => this.#soon());
  }

  async settle(): Promise<void> {
    for (let tries = 0; tries < 20 && sendableUpdates(this.#view.state).length > 0; tries += 1) {
      await this.#send();
    }
  }

  #soon(): void {
    if (this.#gone) return;
    this.#timer ??= setTimeout(() => {
      this.#timer = null;
      void this.#send();
    }, pace);
  }

  #send(): Promise<void> {
    this.#sending ??= this.#sendNow().finally(() => {
      this.#sending = null;
      const left = sendableUpdates(this.#view.state).length;
      if (left === 0) this.#events.settled(true);
      else if (!this.#gone && this.#timer === null) this.#soon();
    });
    return this.#sending;
  }

  async #sendNow(): Promise<void> {
    const updates = sendableUpdates(this.#view.state);
    if (updates.length === 0) return;
    const version = getSyncedVersion(this.#view.state);
    const plain = updates.map(({ clientID, changes }) => ({ clientID, changes: changes.toJSON() }));
    try {
      const pushed = await server.push(this.#id, version, plain);
      if (this.#gone) return;
      if (pushed.ok) this.#receiveFrom(version, plain);
      else if (pushed.updates === null) this.#lost('the desk was closed in between');
      else this.#receiveFrom(version, pushed.updates);
    } catch (error) {
      if (error instanceof Refused) this.#lost(error.message);
      else if (!(error instanceof Away)) throw error;
      else await new Promise((done) => setTimeout(done, 1000));
    }
  }

  async #fetch(): Promise<void> {
    const known = getSyncedVersion(this.#view.state);
    try {
      const { updates } = await server.since(this.#id, known);
      if (this.#gone) return;
      if (updates === null) this.#lost('the desk was closed in between');
      else this.#receiveFrom(known, updates);
    } catch (error) {
      if (error instanceof Refused) this.#lost(error.message);
    }
  }

  #receiveFrom(version: number, updates: readonly Update[]): void {
    const known = getSyncedVersion(this.#view.state);
    if (known >= version) this.#receive(updates.slice(known - version));
  }

  #receive(updates: readonly Update[]): void {
    if (updates.length === 0) return;
    this.#view.dispatch(
      receiveUpdates(
        this.#view.state,
        updates.map(({ clientID, changes }) => ({
          clientID,
          changes: ChangeSet.fromJSON(changes),
        })),
      ),
    );
  }
}
