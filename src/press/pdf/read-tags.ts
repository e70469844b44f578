import { mendedTags } from './mend-tags.ts';
import type { LinkKid, Mark, Tag } from './part.ts';
import type { PdfFile } from './read.ts';
import { isDict, type PdfDict, PdfRef, PdfText, type PdfValue, writeValue } from './values.ts';

/** Where the tags' pages and links are, by the number of their object. */
export interface TagSurroundings {
  readonly pageOf: ReadonlyMap<number, number>;
  readonly annotations: ReadonlyMap<number, LinkKid>;
}

type Kid = Tag | Mark | LinkKid;

/**
 * The structure below a browser's one `Document` element; empty where the print is not tagged.
 * `NonStruct` elements are read as what they hold, which is what they mean (ISO 32000-1, 14.8.4.2),
 * and attributes that say what holds without them are left out. What stands in no other element keeps one,
 * so that it is read.
 */
export function readTags(pdf: PdfFile, catalog: PdfDict, around: TagSurroundings): Tag[] {
  const root = pdf.dict(catalog.get('/StructTreeRoot'));
  if (root === null) return [];
  const reading = new Reading(pdf, around);
  const kids = reading.kids(root.get('/K'), null);
  const [document] = kids;
  const below = kids.length === 1 && isTag(document) && document.role === 'Document';
  return mendedTags(held(below ? document.kids : kids));
}

/** Elements alone: each stretch of what is none is put into a `NonStruct`. */
function held(kids: readonly Kid[]): Tag[] {
  const tags: Tag[] = [];
  let loose: Kid[] | null = null;
  for (const kid of kids) {
    if (isTag(kid)) {
      tags.push(kid);
      loose = null;
    } else if (loose !== null) loose.push(kid);
    else {
      loose = [kid];
      tags.push({
        role: 'NonStruct',
        kids: loose,
        attributes: '',
        more: '',
        id: null,
        headers: [],
      });
    }
  }
  return tags;
}

export function isTag(kid: Kid | undefined): kid is Tag {
  return kid !== undefined && 'role' in kid;
}

class Reading {
  private readonly pdf: PdfFile;
  private readonly around: TagSurroundings;
  private readonly ids = new Map<string, number>();

  constructor(pdf: PdfFile, around: TagSurroundings) {
    this.pdf = pdf;
    this.around = around;
  }

  kids(value: PdfValue | undefined, page: PdfValue | undefined): Kid[] {
    const found = this.pdf.get(value);
    if (Array.isArray(found)) return found.flatMap((each) => this.kids(each, page));
    if (typeof found === 'number') return this.mark(found, page);
    if (!isDict(found)) return [];
    const type = found.get('/Type');
    const own = found.get('/Pg') ?? page;
    if (type === '/MCR') return this.mark(Number(found.get('/MCID')), own);
    if (type === '/OBJR') {
      const object = found.get('/Obj');
      const link = object instanceof PdfRef ? this.around.annotations.get(object.number) : null;
      return link ? [link] : [];
    }
    return this.element(found);
  }

  private mark(mark: number, value: PdfValue | undefined): Mark[] {
    const page = value instanceof PdfRef ? this.around.pageOf.get(value.number) : undefined;
    return page === undefined ? [] : [{ page, mark }];
  }

  private element(dict: PdfDict): Kid[] {
    const role = String(this.pdf.get(dict.get('/S'))).slice(1);
    const kids = this.kids(dict.get('/K'), dict.get('/Pg'));
    let more = '';
    for (const key of ['/Alt', '/ActualText', '/E', '/Lang', '/T']) {
      const value = this.pdf.get(dict.get(key));
      if (value instanceof PdfText) more += key + writeValue(value, () => 'null');
    }
    if (role === 'NonStruct' && more === '') return kids;
    const id = this.pdf.get(dict.get('/ID'));
    const { attributes, headers } = this.attributes(dict.get('/A'));
    const number = id instanceof PdfText ? this.idOf(id) : null;
    return [{ role, kids, attributes, more, id: number, headers }];
  }

  private idOf({ bytes }: PdfText): number {
    const known = this.ids.get(bytes) ?? this.ids.size;
    this.ids.set(bytes, known);
    return known;
  }

  private attributes(value: PdfValue | undefined): { attributes: string; headers: number[] } {
    const found = this.pdf.get(value);
    const headers: number[] = [];
    const byOwner = new Map<PdfValue, Map<string, PdfValue>>();
    for (const each of Array.isArray(found) ? found : [found]) {
      const dict = this.pdf.dict(each);
      const owner = dict?.get('/O') ?? null;
      for (const [key, entry] of dict ?? []) {
        const plain = this.pdf.get(entry);
        if (key === '/Headers' && Array.isArray(plain)) {
          for (const id of plain) if (id instanceof PdfText) headers.push(this.idOf(id));
        } else if (key !== '/O' && !((key === '/RowSpan' || key === '/ColSpan') && plain === 1)) {
          byOwner.set(owner, (byOwner.get(owner) ?? new Map()).set(key, plain));
        }
      }
    }
    const written = [...byOwner].map(([owner, entries]) =>
      writeValue(new Map([['/O', owner], ...entries]), () => 'null'),
    );
    return { attributes: written.join(' '), headers };
  }
}
