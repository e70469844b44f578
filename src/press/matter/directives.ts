import type { Element, ElementContent } from 'hast';
import type { Nodes } from 'mdast';
import type { ContainerDirective, LeafDirective, TextDirective } from 'mdast-util-directive';
import type { State } from 'mdast-util-to-hast';
import type { KindHazard, SignalWord } from '../../kinds/model.ts';
import { clubFigure } from '../../relations/index.ts';
import type { Setting, Sheet } from '../../sheet/model.ts';
import type { Span } from '../../text/index.ts';

const signalWords: ReadonlySet<string> = new Set(['danger', 'warning', 'caution', 'notice']);

/**
 * How the directives of a sheet become HTML elements: `:value[x]` a `data` element with what the
 * setting says (where the club's altitude has a figure of its own, that, and the source's behind it),
 * safety messages a panel, `:state[x]` nothing. A directive that means nothing here
 * prints as it was typed: `4:a` in prose is no directive to whoever wrote it. Sizes inside are not
 * typeset yet.
 */
export function directiveHandlers(sheet: Sheet, altitude: string | null) {
  return {
    textDirective: (state: State, node: TextDirective) => inText(state, node, sheet, altitude),
    leafDirective: (_: State, node: LeafDirective) =>
      element('p', 'plain', [{ type: 'text', value: typed(node, sheet) }]),
    containerDirective: (state: State, node: ContainerDirective) => panel(state, node, sheet),
  };
}

function inText(
  state: State,
  node: TextDirective,
  sheet: Sheet,
  altitude: string | null,
): ElementContent | undefined {
  const mark = node.name.toLowerCase();
  if (mark === 'state') return undefined;
  if (mark !== 'value') return { type: 'text', value: typed(node, sheet) };
  const use = sheet.values.find(isAt(node));
  const { name, setting } = use ?? { name: words(state.all(node)).trim(), setting: null };
  if (!setting) return element('span', 'missing', [{ type: 'text', value: `[${name}: not set]` }]);
  const places = [...setting.places].map(([place, size]) => ({ place, text: size.text }));
  const sizes =
    setting.value === null ? places : [{ place: null, text: setting.value.text }, ...places];
  const content: ElementContent[] = [];
  // A table stands where the settings do: a step says from where to where it goes.
  if (setting.rows.length > 0) content.push({ type: 'text', value: tableWords(setting) });
  for (const [index, { place, text }] of sizes.entries()) {
    if (index > 0) content.push({ type: 'text', value: ', ' });
    if (place !== null) content.push({ type: 'text', value: `${place.replaceAll('-', ' ')} ` });
    const club = clubFigure(setting, sheet, place, altitude);
    content.push(element('span', 'value', [{ type: 'text', value: club?.text ?? text }]));
    if (club === null) continue;
    const source = element('span', 'value', [{ type: 'text', value: text }]);
    const before: ElementContent = { type: 'text', value: ` (${club.readAt} ` };
    content.push(element('span', 'at-source', [before, source, { type: 'text', value: ')' }]));
  }
  return element('span', 'values', content);
}

function tableWords({ rows }: Setting): string {
  const [first, last] = [rows[0], rows.at(-1)];
  return `the table, ${first?.station?.text ?? ''} to ${last?.station?.text ?? ''}`;
}

function panel(state: State, node: ContainerDirective, sheet: Sheet): Element {
  const children = state.all(node);
  const signal = node.name.toLowerCase() as SignalWord;
  if (!signalWords.has(signal)) return element('div', 'plain', children);
  const message = sheet.messages.find(isAt(node));
  const named = message?.hazards.flatMap(({ known }) => known ?? []) ?? [];
  const said = children.length > 0 ? children : spokenByKind(named);
  // ANSI Z535.6: NOTICE is about things, not people, and goes without the alert symbol.
  const head = signal === 'notice' ? signal.toUpperCase() : `⚠ ${signal.toUpperCase()}`;
  const made = element('div', `safety safety-${signal}`, [
    element('p', 'signal', [{ type: 'text', value: head }]),
    element('div', 'words', said),
  ]);
  made.properties.dataHazards = named.map((hazard) => hazard.label).join(', ');
  return made;
}

/** Whether a mark of the sheet is the one that a node of its tree is. */
function isAt(node: Nodes): (mark: { readonly span: Span }) => boolean {
  const start = node.position?.start.offset;
  return ({ span }) => span.start === start;
}

/** What the kind says of the hazards that an empty panel names. */
function spokenByKind(hazards: readonly KindHazard[]): Element[] {
  return hazards.map(({ message }) => {
    const text = `${message.hazard} ${message.consequence} ${message.avoid}`;
    return element('p', 'plain', [{ type: 'text', value: text }]);
  });
}

function element(tagName: string, className: string, children: ElementContent[]): Element {
  return { type: 'element', tagName, properties: { className: className.split(' ') }, children };
}

function typed(node: TextDirective | LeafDirective, sheet: Sheet): string {
  const start = node.position?.start.offset;
  const end = node.position?.end.offset;
  if (start === undefined || end === undefined) return `:${node.name}`;
  return sheet.text.slice(start, end);
}

function words(nodes: readonly ElementContent[]): string {
  return nodes
    .map((node) => {
      if (node.type === 'text') return node.value;
      return node.type === 'element' ? words(node.children) : '';
    })
    .join('');
}
