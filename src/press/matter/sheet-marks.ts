import type { Element, ElementContent, RootContent } from 'hast';
import { sheetSnapshot } from '../../compare/index.ts';
import type { Change, SheetChanges } from '../../compare/model.ts';
import type { Sheet } from '../../sheet/model.ts';
import type { AdaptText } from './body.ts';

/** What of a sheet bears a bar in the margin: it says otherwise than the last edition at the bench. */
export interface SheetMarks {
  /** Whether the last edition had no such sheet; then nothing in it bears a bar of its own. */
  readonly isNew: boolean;
  /** Whether the words before the first heading do. */
  readonly opening: boolean;
  /** Settings, by the kind's name or the sheet's own. */
  readonly settings: readonly string[];
  /** Operations whose heading does, by index. */
  readonly headings: readonly number[];
  /** Steps and cautions of an operation, by its index, each counted from 0 in the order of the page. */
  readonly steps: Readonly<Record<number, readonly number[]>>;
  readonly cautions: Readonly<Record<number, readonly number[]>>;
}

/** Where the bars of a sheet stand; changes of mere wording get none. `changes` null: there are none. */
export function sheetMarks(sheet: Sheet, changes: SheetChanges | null): SheetMarks {
  const none = {
    isNew: false,
    opening: false,
    settings: [],
    headings: [],
    steps: {},
    cautions: {},
  };
  const told = changes?.changes.filter(({ weight }) => weight === 'substance') ?? [];
  if (told.length === 0) return none;
  if (told.some(({ kind }) => kind === 'sheet-added')) return { ...none, isNew: true };
  const marks = {
    ...none,
    opening: told.some(({ kind, about }) => kind === 'text-reworded' && about === ''),
    settings: [...new Set(told.filter(isOfSetting).map(({ about }) => about))],
    headings: [] as number[],
    steps: {} as Record<number, number[]>,
    cautions: {} as Record<number, number[]>,
  };
  for (const [at, operation] of sheetSnapshot(sheet).operations.entries()) {
    const own = told.filter(
      ({ about, label }) => about === operation.name && label === operation.heading,
    );
    const after = (what: string) =>
      new Set(own.filter(({ kind }) => kind.startsWith(what)).map(({ after }) => after));
    const stepsNow = after('step-');
    const steps = operation.steps.flatMap(({ text }, index) => {
      const moved = `step ${index + 1}`;
      const isMarked =
        stepsNow.has(text) || stepsNow.has(moved) || stepsNow.has(`${operation.heading}, ${moved}`);
      return isMarked ? [index] : [];
    });
    const cautionsNow = after('caution-');
    const cautions = operation.cautions.flatMap((caution, index) => {
      const of = caution.hazards.length === 0 ? '' : ` (${caution.hazards.join(', ')})`;
      // As the comparison names a caution: with its words, or without where only the signal changed.
      const name = `${caution.signal.toUpperCase()}${of}`;
      const isMarked = cautionsNow.has(name) || cautionsNow.has(`${name}: ${caution.text}`);
      return isMarked ? [index] : [];
    });
    if (steps.length > 0) marks.steps[at] = steps;
    if (cautions.length > 0) marks.cautions[at] = cautions;
    if (own.some(isOfHeading)) marks.headings.push(at);
  }
  return marks;
}

function isOfSetting({ kind }: Change): boolean {
  return /^(?:setting|condition|equivalent|ruling|note)-/.test(kind);
}

/** What no single step or caution shows: it is new or stands elsewhere, or something went from it. */
function isOfHeading({ kind }: Change): boolean {
  return /^operation-|^text-|-dropped$|^caution-moved$/.test(kind);
}

/** Gives the marked steps and cautions of a sheet the class `changed`. */
export function withMarks({ steps, cautions, opening }: SheetMarks): AdaptText {
  return (nodes, operation) => {
    if (operation === null) return opening ? nodes.map((node) => changed(node)) : nodes;
    const ofSteps = steps[operation] ?? [];
    const ofCautions = cautions[operation] ?? [];
    if (ofSteps.length === 0 && ofCautions.length === 0) return nodes;
    const count = { step: 0, caution: 0 };
    const walk = <T extends RootContent | ElementContent>(node: T, inSteps: boolean): T => {
      if (node.type !== 'element') return node;
      // Steps are the items of lists that stand right under a heading, as the sheet counts them.
      const isStep = inSteps && node.tagName === 'li';
      const isCaution = hasClass(node, 'safety');
      const isMarked =
        (isStep && ofSteps.includes(count.step)) ||
        (isCaution && ofCautions.includes(count.caution));
      if (isStep) count.step++;
      if (isCaution) count.caution++;
      const children = node.children.map((child) => walk(child, false));
      return (isMarked ? changed({ ...node, children }) : { ...node, children }) as T;
    };
    return nodes.map((node) => {
      if (node.type !== 'element' || node.tagName !== 'ol') return walk(node, false);
      return { ...node, children: node.children.map((child) => walk(child, true)) };
    });
  };
}

function hasClass({ properties }: Element, name: string): boolean {
  return Array.isArray(properties.className) && properties.className.includes(name);
}

function changed<T extends RootContent | ElementContent>(node: T): T {
  if (node.type !== 'element') return node;
  const names = Array.isArray(node.properties.className) ? node.properties.className : [];
  return { ...node, properties: { ...node.properties, className: [...names, 'changed'] } };
}
