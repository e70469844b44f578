import { el, later } from './dom.ts';
import { Refused, server } from './server.ts';

/** On a place narrower than this many pixels a whole page could not be read, and is moved about. */
const narrow = 400;
const zoomOnNarrow = 0.7;

/**
 * A page of the print in a frame of its own, in which no script runs. The next page is laid out beside the
 * one that is seen and takes its place when it is ready, at the same place of the page.
 */
export class PrintView {
  readonly element: HTMLElement;
  readonly #what: 'card' | 'chapter';
  readonly #said = el('p', { class: 'aside', role: 'status' });
  readonly #sheet: HTMLElement;
  readonly #make = later(90, () => void this.#now());
  #frame: HTMLIFrameElement | null = null;
  #wanted: { readonly id: string; readonly text: string } | null = null;
  #made = '';
  #shown = false;
  #busy = false;
  /** When the page that is seen was laid out, for those who measure. */
  done = 0;

  constructor(what: 'card' | 'chapter') {
    this.#what = what;
    this.#sheet = el('div', { class: 'paper' });
    this.element = el('div', { class: 'print-view' }, this.#said, this.#sheet);
    new ResizeObserver(() => this.#scale()).observe(this.element);
  }

  /** The text to show the print of. */
  text(id: string, text: string): void {
    // The print of another sheet is not left lying beside this one.
    if (this.#frame !== null && this.#wanted?.id !== id) this.#frame.classList.add('waiting');
    this.#wanted = { id, text };
    if (this.#shown) this.#make();
  }

  shown(shown: boolean): void {
    this.#shown = shown;
    if (shown) void this.#now();
  }

  async #now(): Promise<void> {
    const wanted = this.#wanted;
    if (wanted === null || this.#busy) return;
    const key = `${wanted.id}\n${wanted.text}`;
    if (key === this.#made) return;
    this.#busy = true;
    if (this.#frame === null) this.#said.textContent = 'The page is being laid out …';
    try {
      const { frame } = await server.frame(wanted.id, this.#what, wanted.text);
      await this.#put(`frame/${frame}`);
      this.#made = key;
      this.#said.textContent = '';
    } catch (error) {
      this.#made = key;
      this.#said.textContent =
        error instanceof Refused
          ? error.message
          : 'The print is shown again when the desk is back.';
    } finally {
      this.#busy = false;
      if (this.#wanted !== wanted) this.#make();
    }
  }

  #put(address: string): Promise<void> {
    const title =
      this.#what === 'card' ? 'The card as it will print' : 'The chapter as it will print';
    const next = el('iframe', {
      sandbox: 'allow-same-origin',
      src: address,
      title,
      class: 'waiting',
      tabindex: '0',
    });
    return new Promise((done) => {
      next.addEventListener('load', () => {
        const before = this.#frame?.contentDocument?.scrollingElement;
        const at = before?.scrollTop ?? 0;
        this.#frame?.remove();
        this.#frame = next;
        next.classList.remove('waiting');
        this.#scale();
        const now = next.contentDocument?.scrollingElement;
        if (now) now.scrollTop = at;
        this.done = performance.now();
        done();
      });
      this.#sheet.append(next);
    });
  }

  /** The paper as wide as its place: type on it is then smaller or larger than on the bench. */
  #scale(): void {
    const body = this.#frame?.contentDocument?.body;
    const root = this.#frame?.contentDocument?.documentElement;
    const room = this.#sheet.clientWidth;
    if (body == null || root == null || room === 0) return;
    root.style.setProperty('zoom', '1');
    const whole = Math.min(1.4, room / Math.max(1, body.offsetWidth));
    const zoom = room < narrow ? Math.max(zoomOnNarrow, whole) : whole;
    root.style.setProperty('zoom', String(zoom));
  }
}
