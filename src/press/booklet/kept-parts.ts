import type { PartStore } from '../orders/model.ts';
import type { Part } from '../pdf/index.ts';
import { packPart, unpackPart } from './pack-part.ts';
import type { PartPress, PrintedPart } from './part-press.ts';
import { hasRooms, hasRoomToFill } from './room-left.ts';
import type { PageHead } from './sequence.ts';

/** The parts of a booklet: those that were printed before come from the store, the others are printed. */
export class KeptParts {
  private readonly press: PartPress;
  private readonly store: PartStore | null;
  private readonly base: string;
  private printedParts = 0;
  private keptParts = 0;

  /** `shell` and `make`: all that a part depends on beside its own HTML. */
  constructor(press: PartPress, store: PartStore | null, shell: string, make: string) {
    this.press = press;
    this.store = store;
    this.base = store === null ? '' : `${make} ${store.nameOf(shell)}`;
  }

  get counts(): { printed: number; kept: number } {
    return { printed: this.printedParts, kept: this.keptParts };
  }

  print(html: string): Promise<PrintedPart> {
    return this.kept('part', html, () => this.press.print(html));
  }

  measure(html: string): Promise<PrintedPart> {
    return this.kept('measure', html, () => this.press.measure(html));
  }

  /** A part with as much on its first page as has room there. */
  async fill(html: string): Promise<string> {
    if (!hasRoomToFill(html) && !hasRooms(html)) return html;
    const name = this.store?.nameOf(`${this.base} filled ${html}`) ?? '';
    const bytes = this.store?.read(name) ?? null;
    if (bytes !== null) return Buffer.from(bytes).toString('utf8');
    const filled = await this.press.fill(html);
    this.store?.keep(name, Buffer.from(filled, 'utf8'));
    return filled;
  }

  async frames(heads: readonly PageHead[]): Promise<Part> {
    const { part } = await this.kept('frames', JSON.stringify(heads), async () => {
      const printed = await this.press.printFrames(heads);
      return { part: printed, frame: '', problems: [] };
    });
    return part;
  }

  private async kept(
    what: string,
    of: string,
    print: () => Promise<PrintedPart>,
  ): Promise<PrintedPart> {
    const name = this.store?.nameOf(`${this.base} ${what} ${of}`) ?? '';
    const bytes = this.store?.read(name) ?? null;
    if (bytes !== null) {
      if (what === 'part') this.keptParts++;
      return unpackPart(bytes);
    }
    if (what === 'part') this.printedParts++;
    const printed = await print();
    this.store?.keep(name, packPart(printed));
    return printed;
  }
}
