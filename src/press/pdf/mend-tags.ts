import type { Tag } from './part.ts';

type Kid = Tag['kids'][number];

const isTag = (kid: Kid): kid is Tag => 'role' in kid;

/** Elements that Chromium writes and PDF 1.7 does not know, by the nearest that it does (ISO 32000-1, 14.8.4). */
const known: ReadonlyMap<string, string> = new Map([
  ['Aside', 'Note'],
  ['Strong', 'Span'],
  ['Em', 'Span'],
  ['Title', 'P'],
  ['FENote', 'Note'],
  ['Sub', 'Span'],
]);

/**
 * The elements of a browser's structure as PDF/UA wants them: only roles that PDF 1.7 has, and every
 * figure with its alternative. A picture in a figure gives the figure its words, and is no figure itself.
 */
export function mendedTags(tags: readonly Tag[]): Tag[] {
  return tags.map((tag) => mended(tag));
}

function mended(tag: Tag): Tag {
  const role = known.get(tag.role) ?? tag.role;
  const kids = tag.kids.map((kid) => (isTag(kid) ? mended(kid) : kid));
  if (role === 'LI') return { ...tag, kids: bodied(kids) };
  if (role !== 'Figure' || tag.more.includes('/Alt')) return { ...tag, role, kids };
  const pictures = kids.filter((kid): kid is Tag => isTag(kid) && kid.role === 'Figure');
  const [picture] = pictures;
  if (picture === undefined) return { ...tag, role: 'Div', kids };
  // Of several each keeps its own words, and what holds them is no figure.
  if (pictures.length > 1) return { ...tag, role: 'Div', kids };
  return {
    ...tag,
    role,
    kids: kids.flatMap((kid) => (kid === picture ? picture.kids : [kid])),
    more: tag.more + picture.more,
    attributes: tag.attributes + (tag.attributes === '' ? picture.attributes : ''),
  };
}

/** An item's label, and all else in its body: it holds nothing besides (ISO 32000-1, table 336). */
function bodied(kids: readonly Kid[]): Kid[] {
  const own = (kid: Kid) => isTag(kid) && /^(?:Lbl|LBody)$/.test(kid.role);
  const rest = kids.filter((kid) => !own(kid));
  if (rest.length === 0) return [...kids];
  const body: Tag = { role: 'LBody', kids: rest, attributes: '', more: '', id: null, headers: [] };
  return [...kids.filter(own), body];
}

/** What keeps a file from calling itself PDF/UA, each with its number in the Matterhorn Protocol 1.1. */
export function structureFaults(parts: readonly { readonly tags: readonly Tag[] }[]): string[] {
  const faults: string[] = [];
  let level = 0;
  const look = (tag: Tag): void => {
    if (tag.role === 'Figure' && !tag.more.includes('/Alt')) faults.push('13-004');
    const rank = Number(/^H([1-6])$/.exec(tag.role)?.[1] ?? 0);
    if (rank > 0) {
      if (level === 0 && rank !== 1) faults.push('14-002');
      if (level > 0 && rank > level + 1) faults.push('14-003');
      level = rank;
    }
    if (tag.role === 'Table' && !some(tag, ({ role }) => role === 'TH')) faults.push('15-003');
    if (tag.role === 'TR' && tag.kids.some((kid) => isTag(kid) && !/^T[HD]$/.test(kid.role))) {
      faults.push('09-004');
    }
    if (
      tag.role === 'L' &&
      tag.kids.some((kid) => isTag(kid) && !/^(?:LI|L|Caption)$/.test(kid.role))
    ) {
      faults.push('09-005');
    }
    if (!standard.has(tag.role)) faults.push('02-001');
    for (const kid of tag.kids) if (isTag(kid)) look(kid);
  };
  for (const { tags } of parts) for (const tag of tags) look(tag);
  return [...new Set(faults)].sort();
}

function some(tag: Tag, test: (tag: Tag) => boolean): boolean {
  return tag.kids.some((kid) => isTag(kid) && (test(kid) || some(kid, test)));
}

/** Standard structure types (ISO 32000-1, tables 333 to 340). */
const standard: ReadonlySet<string> = new Set(
  (
    'Document Part Art Sect Div BlockQuote Caption TOC TOCI Index NonStruct Private P H H1 H2 H3 H4 H5 H6 ' +
    'L LI Lbl LBody Table TR TH TD THead TBody TFoot Span Quote Note Reference BibEntry Code Link Annot ' +
    'Ruby Warichu Figure Formula Form'
  ).split(' '),
);
