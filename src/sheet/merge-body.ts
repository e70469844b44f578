import type { Nodes, Root } from 'mdast';
import { levelName } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import type { Span } from '../text/index.ts';
import { readBody } from './body.ts';
import type { ReadProblem } from './model.ts';

/** A stretch of one member's file. */
export interface Piece {
  /** Index into the family's members. */
  readonly member: number;
  readonly span: Span;
}

/** One operation as one member of a family has it. */
interface Section extends Piece {
  /** The kind's name, the heading's id or its words. */
  readonly name: string;
  /** Which of the operations of that name it is, from 0. */
  readonly turn: number;
  readonly heading: Span;
  readonly words: string;
  /** Nothing stands below the heading. */
  readonly isBare: boolean;
}

/** The work of one member, or of some laid over one another. */
export interface Work {
  readonly opening: readonly Piece[];
  readonly sections: readonly Section[];
  /** Definitions of links and footnotes out of sections that were replaced or dropped. */
  readonly definitions: readonly Piece[];
}

interface MemberWork extends Work {
  /** The first piece of the opening, where there is one. */
  readonly title: Piece | null;
  /** Whether more than a title stands before the first operation. */
  readonly opens: boolean;
  /** The safety messages before the first operation. */
  readonly messages: readonly Piece[];
  readonly allDefinitions: readonly Piece[];
}

/** The work of one member by itself; `tree` is that of its body, from `bodyStart` on. */
export function workOf(
  member: number,
  text: string,
  bodyStart: number,
  tree: Root,
  kind: Kind | null,
): MemberWork {
  const { operations } = readBody(tree, text, { kind, settings: new Map(), work: [] });
  const turns = new Map<string, number>();
  const heads = tree.children.filter((node) => node.type === 'heading' && node.depth === 2);
  const sections = operations.map((operation, index): Section => {
    const { heading, id, known, span } = operation;
    const name = known?.name ?? levelName(id?.value ?? heading.value);
    const turn = turns.get(name) ?? 0;
    turns.set(name, turn + 1);
    const head = heads[index];
    const isBare = text.slice(head ? spanOf(head).end : span.end, span.end).trim() === '';
    return { member, span, name, turn, heading: heading.span, words: heading.value, isBare };
  });
  const end = sections[0]?.span.start ?? text.length;
  const before = tree.children.filter((node) => spanOf(node).start < end);
  const title = before.find((node) => node.type === 'heading' && node.depth === 1);
  const titlePiece = title ? { member, span: spanOf(title) } : null;
  const rest = { start: titlePiece?.span.end ?? bodyStart, end };
  return {
    title: titlePiece,
    opens: before.some((node) => node !== title && !isDefinition(node)),
    messages: before
      .filter((node) => node.type === 'containerDirective')
      .map((node) => ({ member, span: spanOf(node) })),
    opening: [...(titlePiece ? [titlePiece] : []), { member, span: rest }],
    sections,
    definitions: [],
    allDefinitions: tree.children.filter(isDefinition).map((node) => ({
      member,
      span: spanOf(node),
    })),
  };
}

/**
 * A variant's work laid over its base's. An operation of the variant takes the place of the base's of
 * the same name; one that the base lacks comes behind the one that stands before it in the variant,
 * or before the one behind; the base's order stands. A heading with nothing below it only names the
 * base's operation, so that another can be put beside it.
 */
export function mergeBody(
  own: MemberWork,
  base: MemberWork,
  dropped: ReadonlySet<string>,
): { readonly work: MemberWork; readonly problems: readonly ReadProblem[] } {
  const problems: ReadProblem[] = [];
  const isSame = (one: Section, two: Section) => one.name === two.name && one.turn === two.turn;
  const replaced: Section[] = [];
  const sections: Section[] = [];
  for (const section of base.sections) {
    const over = own.sections.find((each) => isSame(each, section));
    if (over !== undefined && !over.isBare) {
      replaced.push(section);
      sections.push(over);
    } else if (over === undefined && dropped.has(section.name)) replaced.push(section);
    else sections.push(section);
  }
  let last: Section | null = null;
  let waiting: Section[] = [];
  const placeOf = (wanted: Section) => sections.findIndex((each) => isSame(each, wanted));
  for (const section of own.sections) {
    const at = placeOf(section);
    if (at >= 0) {
      if (last !== null && placeOf(last) > at) problems.push(outOfOrder(section, last));
      sections.splice(at, 0, ...waiting);
      waiting = [];
    } else if (last !== null) sections.splice(placeOf(last) + 1, 0, section);
    else {
      waiting.push(section);
      continue;
    }
    last = section;
  }
  sections.push(...waiting);
  const lost = base.allDefinitions.filter(({ member, span }) =>
    replaced.some(
      (each) =>
        each.member === member && each.span.start <= span.start && span.end <= each.span.end,
    ),
  );
  // A variant's words take the place of the base's; what warns of a hazard is not lost by them.
  const messages = own.messages.length > 0 ? own.messages : base.messages;
  const opening = own.opens
    ? [...own.opening, ...(own.messages.length > 0 ? [] : messages)]
    : own.title
      ? [own.title, ...base.opening.slice(base.title ? 1 : 0)]
      : base.opening;
  return {
    work: {
      title: own.title ?? (own.opens ? null : base.title),
      opens: true,
      messages,
      opening,
      sections,
      definitions: [...own.definitions, ...base.definitions, ...lost],
      allDefinitions: [...own.allDefinitions, ...base.allDefinitions],
    },
    problems,
  };
}

function outOfOrder(section: Section, last: Section): ReadProblem {
  return {
    kind: 'variant',
    span: section.heading,
    message: `\`${section.words}\` stands behind \`${last.words}\` here and before it in the base, whose order stands`,
    fix: 'put them in the order of the base, or state the whole of the work without `based-on:`',
  };
}

function isDefinition(node: Nodes): boolean {
  return node.type === 'definition' || node.type === 'footnoteDefinition';
}

function spanOf(node: Nodes): Span {
  const start = node.position?.start.offset ?? 0;
  return { start, end: node.position?.end.offset ?? start };
}
