import type { SheetBody } from '../matter/index.ts';
import type { PartStore, PictureSource, SheetToPrint } from '../orders/model.ts';

/** Where bodies are kept, and what they depend on besides the sheet, its place and its pictures. */
export interface BodyStore {
  readonly store: PartStore;
  /** The same for the same templates and paper. */
  readonly around: string;
}

interface Kept {
  /** Every picture that was asked for, by the name of its content; null where there was none. */
  readonly pictures: readonly (readonly [url: string, name: string | null])[];
  readonly body: SheetBody;
}

/**
 * A sheet's body, made by `make`, or as it was made before from the same sheet with the same
 * pictures: Markdown and drawings take most of the time that a chapter takes before it is printed.
 */
export function keptBody(
  bodies: BodyStore | null,
  { sheet, digest }: SheetToPrint,
  anchor: string,
  picture: PictureSource | null,
  make: (picture: PictureSource | null) => SheetBody,
): SheetBody {
  if (bodies === null || !digest) return make(picture);
  const { store, around } = bodies;
  const nameOf = (url: string): string | null => {
    const found = picture?.(url, sheet.file) ?? null;
    return found === null ? null : store.nameOf(found.dataUri);
  };
  const name = store.nameOf(`body ${digest} ${anchor} ${around}`);
  const bytes = store.read(name);
  const kept: Kept | null = bytes === null ? null : JSON.parse(Buffer.from(bytes).toString('utf8'));
  if (kept?.pictures.every(([url, content]) => nameOf(url) === content)) return kept.body;
  const urls = new Set<string>();
  const body = make(
    picture === null
      ? null
      : (url, file) => {
          urls.add(url);
          return picture(url, file);
        },
  );
  const pictures = [...urls].map((url) => [url, nameOf(url)] as const);
  store.keep(name, Buffer.from(JSON.stringify({ pictures, body } satisfies Kept), 'utf8'));
  return body;
}
