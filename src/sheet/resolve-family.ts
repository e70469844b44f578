import { kindNamed } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import {
  nearestName,
  oncePer,
  type PlacedMap,
  type PlacedNode,
  type PlacedScalar,
  readYaml,
  usualYamlLimits,
  type YamlRead,
} from '../text/index.ts';
import { beyondBounds } from './bounds.ts';
import type { Family, FamilyBook, SheetText } from './family.ts';
import { FamilyText } from './family-text.ts';
import { under } from './fields.ts';
import { type FrontMatterPlace, findFrontMatter } from './front-matter.ts';
import { parseMarkdown } from './markdown.ts';
import { mergeBody, workOf } from './merge-body.ts';
import { mergeFrontMatter } from './merge-front-matter.ts';
import type { ReadProblem } from './model.ts';

/** One file of a family, its front matter read. */
export interface Member extends SheetText {
  readonly place: FrontMatterPlace;
  /** Null where there is no front matter. */
  readonly yaml: YamlRead | null;
}

/** A variant in full: one text, as if it had been written so, and where each part of it stands. */
export interface Resolved {
  /**
   * The variant's front matter, its bases' front matter, and below them the whole work. Every offset
   * of the sheet is one of this text.
   */
  readonly text: string;
  readonly root: PlacedMap;
  readonly bodyStart: number;
  readonly family: Family;
  readonly problems: readonly ReadProblem[];
}

/** More bases in a row than this are no family but a riddle. */
const deepest = 5;

/** Front matter is a quarter of a long sheet at most. */
const yamlLimits = { ...usualYamlLimits, size: 64 * 1024, nodes: 5000 };

/** Finds and reads the front matter of a file. */
export function readMember({ file, text }: SheetText): Member {
  const place = findFrontMatter(text, text.charCodeAt(0) === 0xfeff ? 1 : 0);
  const { content } = place;
  const yaml = content
    ? readYaml(text.slice(content.start, content.end), content.start, yamlLimits)
    : null;
  return { file, text, place, yaml };
}

/** What a sheet says it is based on; null where it stands alone. */
export function basedOn({ yaml }: Member): PlacedScalar | null {
  const node = yaml?.sound === true ? under(yaml.root, 'based-on') : undefined;
  return node?.kind === 'scalar' && node.text !== '' ? node : null;
}

/** Puts a variant together with its bases, or says at its `based-on:` why it cannot be. */
export function resolveFamily(
  own: Member,
  based: PlacedScalar,
  book: FamilyBook | null,
  kinds: ReadonlyMap<string, Kind>,
): Resolved | ReadProblem {
  const chain = chainOf(own, based, book);
  if (!Array.isArray(chain)) return chain as ReadProblem;
  const members = chain as readonly Member[];
  const roots = shiftedRoots(members);
  const kind = kindOf(roots, kinds);

  const problems: ReadProblem[] = [];
  const works = members.map((member, depth) => workAt(member, depth, kind));
  let root: PlacedMap | null = null;
  let work: ReturnType<typeof mergeBody>['work'] | null = null;
  for (let index = members.length - 1; index >= 0; index -= 1) {
    const [ownRoot, ownWork] = [roots[index], works[index]];
    const unread = index === 0 ? own.file : (members[index]?.file ?? '');
    if (!ownRoot || !ownWork) return unreadable(based, unread);
    if (root === null || work === null) {
      [root, work] = [ownRoot, ownWork];
      continue;
    }
    const front = mergeFrontMatter(ownRoot, root, kind);
    const body = mergeBody(ownWork, work, front.dropped);
    // What a base says to no effect is told where the base is checked.
    if (index === 0) problems.push(...front.problems, ...body.problems);
    root = front.root;
    work = body.work;
  }
  if (root === null || work === null) return unreadable(based, own.file);

  const text = new FamilyText(members);
  members.forEach((member, index) => {
    text.head(index, member.place.bodyStart);
  });
  const bodyStart = text.length;
  for (const piece of work.opening) text.part(piece);
  for (const piece of work.sections) text.part(piece);
  for (const piece of work.definitions) text.part(piece);
  return {
    text: text.text,
    root,
    bodyStart,
    family: {
      members: members.map(({ file, text: all }) => ({ file, text: all })),
      stretches: text.stretches,
    },
    problems: problems.map((problem) =>
      // Headings have the offsets of the variant's own file; the front matter's are the same in both.
      problem.span.start < own.place.bodyStart
        ? problem
        : { ...problem, span: text.found(0, problem.span) },
    ),
  };
}

function chainOf(
  own: Member,
  based: PlacedScalar,
  book: FamilyBook | null,
): readonly Member[] | ReadProblem {
  const members = [own];
  const ids = [idOf(own.file)];
  for (let next: PlacedScalar | null = based; next !== null; ) {
    const id = next.text;
    if (ids.includes(id)) {
      const names = [...ids, id].map((each) => `\`${each}\``).join(' on ');
      return problem(
        based,
        ids.length === 1
          ? `the sheet is based on itself`
          : `sheets are based on one another: ${names}`,
        'take `based-on:` out of the one that is stated in full',
        [''],
      );
    }
    if (members.length > deepest) {
      const message = `more than ${deepest} sheets are based on one another in a row`;
      return problem(based, message, 'base it on one that is stated in full');
    }
    const found = book?.find(id) ?? null;
    if (found === null) {
      const near = nearestName(id, book?.names().filter((name) => name !== ids[0]) ?? []);
      const by = members.length === 1 ? '' : `, which \`${ids.at(-1)}\` is based on`;
      const fix = near
        ? `did you mean \`${near}\`?`
        : "write the other sheet's file name without `.md`";
      const write = near !== null && members.length === 1 ? [near] : [];
      return problem(based, `there is no sheet \`${id}\`${by}`, fix, write);
    }
    const member = memberOf(found);
    if (member.yaml?.sound !== true || member.yaml.root?.kind !== 'map') {
      return unreadable(based, id);
    }
    members.push(member);
    ids.push(id);
    next = basedOn(member);
  }
  return members;
}

/** A base as it was read for another of its variants, or read now. */
const memberOf = oncePer(readMember);

type MemberWork = ReturnType<typeof workOf>;

/** The tree of a member's work, kept of a base for its other variants; null beyond bounds. */
const treeOf = oncePer(({ text, place }: Member) =>
  beyondBounds(text, place.bodyStart) ? null : parseMarkdown(text, place.bodyStart),
);

/** The work of a member of the family; null beyond bounds. */
function workAt(member: Member, depth: number, kind: Kind | null): MemberWork | null {
  const { text, place } = member;
  const tree = treeOf(member);
  return tree && workOf(depth, text, place.bodyStart, tree, kind);
}

function idOf(file: string): string {
  return file.slice(file.lastIndexOf('/') + 1).replace(/\.md$/i, '');
}

function unreadable(based: PlacedScalar, name: string): ReadProblem {
  return problem(
    based,
    `\`${idOf(name)}\` cannot be read, so nothing can be taken from it`,
    `mend it first: \`gaugeleaf check\` says what is wrong with it`,
  );
}

function problem(
  { span }: PlacedScalar,
  message: string,
  fix: string,
  write: readonly string[] = [],
): ReadProblem {
  return { kind: 'base', span, message, fix, write };
}

/** The kind that the first front matter of some names that names any. */
export function kindOf(
  roots: readonly (PlacedNode | null)[],
  kinds: ReadonlyMap<string, Kind>,
): Kind | null {
  for (const root of roots) {
    const name = under(under(root, 'unit'), 'kind');
    if (name?.kind !== 'scalar') continue;
    return kindNamed(name.text, kinds);
  }
  return null;
}

/** The front matter of every member, its places those of the text that is put together. */
function shiftedRoots(members: readonly Member[]): readonly (PlacedMap | null)[] {
  let start = 0;
  return members.map(({ yaml, place }, index) => {
    const root = yaml?.root;
    const shifted = root?.kind === 'map' ? (index === 0 ? root : shift(root, start)) : null;
    start += place.bodyStart + 1;
    return shifted?.kind === 'map' ? shifted : null;
  });
}

function shift(node: PlacedNode, by: number): PlacedNode {
  const span = { start: node.span.start + by, end: node.span.end + by };
  if (node.kind === 'list')
    return { ...node, span, items: node.items.map((item) => shift(item, by)) };
  if (node.kind !== 'map') return { ...node, span };
  const entries = [...node.entries].map(([name, { key, value }]) => {
    const keySpan = { start: key.span.start + by, end: key.span.end + by };
    return [name, { key: { ...key, span: keySpan }, value: shift(value, by) }] as const;
  });
  return { ...node, span, entries: new Map(entries) };
}
