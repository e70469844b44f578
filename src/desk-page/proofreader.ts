import type { FileSort } from './model.ts';
import { Away, server } from './server.ts';
import type { Answered, Checked, Question, Questions, YamlSort } from './worker-model.ts';

/**
 * The page's end of its worker. One text is on its way at a time, and while it is, only the last of those
 * that follow is kept; a question is asked of the text as it stands.
 */
export class Proofreader {
  readonly #worker = new Worker('assets/worker.js', { type: 'module', name: 'proofreader' });
  readonly #open = new Map<
    number,
    { done: (answer: unknown) => void; failed: (error: Error) => void }
  >();
  readonly #onChecked: (checked: Checked, text: string) => void;
  #count = 0;
  #busy = false;
  #waiting: string | null = null;
  #sent: string | null = null;
  /** The text as it stands in the editor. */
  #latest: string | null = null;
  #id: string | null = null;
  #sort: FileSort = 'sheet';
  #known = { bases: new Set<string>(), pictures: new Set<string>() };

  constructor(onChecked: (checked: Checked, text: string) => void) {
    this.#onChecked = onChecked;
    this.#worker.onmessage = ({ data }: MessageEvent<Answered>) => {
      const waiting = this.#open.get(data.n);
      this.#open.delete(data.n);
      if (data.fault === null) waiting?.done(data.answer);
      else waiting?.failed(new Error(data.fault));
    };
  }

  /** Opens a sheet: what it needs besides its text is fetched first. */
  async open(id: string, text: string, sort: FileSort): Promise<void> {
    this.#id = id;
    this.#sort = sort;
    this.#known = { bases: new Set(), pictures: new Set() };
    const base = /^based-on:[ \t]*["']?([a-z0-9-]+)/m.exec(text)?.[1];
    if (base !== undefined) this.#known.bases.add(base);
    this.#latest = text;
    await this.#fetchContext();
    // Keys may have been pressed while that was on its way.
    if (this.#id === id) this.check(this.#latest ?? text);
  }

  /** Fetches what holds around the sheet again, and checks it again. */
  async refresh(): Promise<void> {
    if (this.#id === null || this.#latest === null) return;
    await this.#fetchContext();
    // Keys may have been pressed while that was on its way.
    this.check(this.#latest);
  }

  /** Checks a text, now or when the one on its way is done. */
  check(text: string): void {
    this.#latest = text;
    if (this.#busy) {
      this.#waiting = text;
      return;
    }
    this.#send(text);
  }

  /** Asks of the text as it stands in the editor. */
  async ask<Q extends Exclude<Question, 'text' | 'open'>>(
    what: Q,
    ask: Questions[Q]['ask'],
    text?: string,
  ): Promise<Questions[Q]['answer']> {
    if (this.#sort !== 'sheet') return this.#askOfFile(this.#sort, what, ask, text ?? '');
    if (text !== undefined && text !== this.#sent) this.#send(text);
    return this.#post(what, ask);
  }

  /** Of a file that is no sheet it is known what may stand in it and what its keys say. */
  async #askOfFile<Q extends Question>(
    sort: YamlSort,
    what: Q,
    ask: Questions[Q]['ask'],
    text: string,
  ): Promise<Questions[Q]['answer']> {
    const { offset } = { offset: 0, ...ask };
    if (what === 'complete') return this.#post('fileComplete', { sort, text, offset });
    if (what === 'hover') return this.#post('fileHover', { sort, text, offset });
    if (what === 'work') return { groups: [], at: null, parts: [] };
    return what === 'form' || what === 'sources' || what === 'definition' ? null : [];
  }

  #look(text: string): Promise<Checked> {
    if (this.#sort === 'sheet') return this.#post('text', { text });
    const id = this.#id ?? '';
    return server.check(id, text).then(({ findings }) => ({
      findings,
      title: null,
      kind: null,
      status: null,
      lacking: { bases: [], pictures: [] },
      took: 0,
    }));
  }

  #send(text: string): void {
    this.#busy = true;
    this.#waiting = null;
    this.#sent = text;
    this.#look(text).then(
      (checked) => {
        if (this.#sent === text) this.#onChecked(checked, text);
        this.#next();
        this.#fetchLacking(checked);
      },
      (error: Error) => {
        this.#next();
        // The server may be away for a while; the next key asks it again.
        if (!(error instanceof Away)) throw error;
      },
    );
  }

  #next(): void {
    this.#busy = false;
    if (this.#waiting !== null) this.#send(this.#waiting);
  }

  #fetchLacking({ lacking }: Checked): void {
    const bases = lacking.bases.filter((id) => !this.#known.bases.has(id));
    const pictures = lacking.pictures.filter((url) => !this.#known.pictures.has(url));
    if (bases.length + pictures.length === 0) return;
    for (const id of bases) this.#known.bases.add(id);
    // What comes in an address has its bounds; a sheet of more pictures has them taken as there.
    for (const url of pictures) if (this.#known.pictures.size < 100) this.#known.pictures.add(url);
    void this.refresh();
  }

  async #fetchContext(): Promise<void> {
    if (this.#id === null || this.#sort !== 'sheet') return;
    const { bases, pictures } = this.#known;
    const context = await server.context(this.#id, [...bases], [...pictures]);
    if (context.id === this.#id) await this.#post('open', { context });
  }

  #post<Q extends Question>(what: Q, ask: Questions[Q]['ask']): Promise<Questions[Q]['answer']> {
    this.#count += 1;
    const n = this.#count;
    return new Promise((done, failed) => {
      this.#open.set(n, { done: done as (answer: unknown) => void, failed });
      this.#worker.postMessage({ n, what, ask });
    });
  }
}
