import { checkNamed, orderProof } from '../checks/index.ts';
import { sizeFacts } from '../gauges/index.ts';
import type { KindSetting } from '../kinds/model.ts';
import { wireGaugeNamed } from '../quantity/index.ts';
import { sizeRows } from '../report/index.ts';
import type { PlacedSize, Sheet } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';
import { sourceWords } from './complete-values.ts';
import { holds, ownSpan, sheetOffset } from './document.ts';
import { findings } from './findings.ts';
import { frontCursor } from './front-cursor.ts';
import { wordsAt } from './front-words.ts';
import type { DeskDocument, Hover } from './model.ts';
import { meantAt } from './names.ts';

/**
 * What there is to say of the words at an offset; null where nothing is. The smallest thing that is there
 * counts; why something is found there stands behind it, with the reason of an editor who accepts it.
 */
export function hover(document: DeskDocument, offset: number): Hover | null {
  const said = wordsHover(document, offset);
  const here = findings(document).filter(({ span }) => holds(span, offset));
  const told = here.map(({ check, accepted }) => {
    const why = explained(check) ?? '';
    return `\`${check}\`: ${accepted === null ? why : `accepted, ${accepted}`}`;
  });
  const [first] = here;
  if (first === undefined) return said;
  // A finding about a whole section says nothing of each word in it.
  if (said !== null) {
    const isNear = here.filter(({ span }) => span.end - span.start <= 200);
    const words = told.filter((_, index) => isNear.includes(here[index] ?? first));
    return { ...said, words: [...said.words, ...words] };
  }
  return { span: first.span, title: first.message, words: told, rows: [] };
}

function wordsHover(document: DeskDocument, offset: number): Hover | null {
  return (
    sizeHover(document, offset) ??
    nameHover(document, offset) ??
    vocabularyHover(document, offset) ??
    stateHover(document, offset) ??
    keyHover(document, offset)
  );
}

/** What a finding's check is about: the same words as `gaugeleaf explain`. */
export function explained(check: string): string | null {
  return checkNamed(check)?.explain ?? null;
}

/** Every size that a sheet states, with its place. */
function sizesOf(sheet: Sheet): readonly PlacedSize[] {
  const found: (PlacedSize | null)[] = [...sheet.unit.sizes.values()];
  for (const each of sheet.settings.values()) {
    found.push(each.value, ...each.also, each.gauge, each.go, each.noGo, each.travel);
    found.push(
      ...each.places.values(),
      ...[...each.but, ...each.statements].map(({ value }) => value),
    );
  }
  return found.filter((size) => size !== null);
}

function sizeHover(document: DeskDocument, offset: number): Hover | null {
  const { sheet, project } = document;
  const swg = wireGaugeNamed(sheet.wireGauge?.value ?? project.context.wireGauge);
  for (const size of sizesOf(sheet)) {
    const span = ownSpan(document, size.span);
    if (span === null || !holds(span, offset) || !size.reading.ok) continue;
    const answer = sizeFacts(size.text, swg, project.context.kit ?? undefined);
    const rows = answer.ok ? sizeRows(answer.facts) : [];
    return { span, title: size.text, words: [], rows };
  }
  return null;
}

function nameHover(document: DeskDocument, offset: number): Hover | null {
  const meant = meantAt(document, offset);
  if (meant?.what === 'setting') {
    const { known, name, value, also, from } = meant.setting;
    const rows: (readonly [string, string])[] = [];
    if (value) rows.push(['here', [value, ...also].map(({ text }) => text).join(', ')]);
    if (from.length > 0) {
      const text = from.map(({ id, page }) => (page === null ? id : `${id} ${page}`)).join(', ');
      rows.push(['from', text]);
    }
    if (known === null) {
      return { span: meant.span, title: name.value, words: ["a setting of the sheet's own"], rows };
    }
    return settingHover(meant.span, known, rows);
  }
  if (meant?.what === 'source') {
    const { source, id, span } = meant;
    if (source === null) return null;
    const words = source.shared ? ['described in sources.yaml'] : [];
    return {
      span,
      title: source.title?.value ?? id,
      words,
      rows: [['described as', sourceWords(source)]],
    };
  }
  return null;
}

function settingHover(
  span: Span,
  known: KindSetting,
  more: readonly (readonly [string, string])[],
): Hover {
  const usual = known.usual.map(({ low, high }) => `${low.text} to ${high.text}`).join('; ');
  const rows: (readonly [string, string])[] = [...more];
  if (usual !== '') rows.push(['usual', usual]);
  if (known.conditions.length > 0) rows.push(['may be stated as', known.conditions.join(', ')]);
  if (known.mustSay.length > 0) rows.push(['to be said beside it', known.mustSay.join(', ')]);
  for (const [how, noticed] of known.symptoms) rows.push([how, noticed.join(', ')]);
  return { span, title: known.label, words: known.explain === '' ? [] : [known.explain], rows };
}

/** Features, hazards, headings, and names of settings that are only keys yet. */
function vocabularyHover(document: DeskDocument, offset: number): Hover | null {
  const { sheet } = document;
  for (const { known, span: placed } of sheet.unit.features) {
    const span = ownSpan(document, placed);
    if (span === null || known === null || !holds(span, offset)) continue;
    const rows = [
      ['asks for', known.settings.map((each) => each.join(' or ')).join(', ')],
      ['and the work', known.operations.map((each) => each.join(' or ')).join(', ')],
      ['not beside', known.excludes.join(', ')],
    ] as const;
    return {
      span,
      title: known.label,
      words: [known.explain],
      rows: rows.filter(([, text]) => text !== ''),
    };
  }
  for (const { known, span: placed } of sheet.messages.flatMap(({ hazards }) => hazards)) {
    const span = ownSpan(document, placed);
    if (span === null || known === null || !holds(span, offset)) continue;
    const { hazard, consequence, avoid } = known.message;
    return {
      span,
      title: known.label,
      words: [hazard, consequence, avoid],
      rows: [['signal word', known.signal]],
    };
  }
  for (const { heading, known } of sheet.operations) {
    const span = ownSpan(document, heading.span);
    if (span === null || known === null || !holds(span, offset)) continue;
    const rows = [
      ['makes', known.settings.join(', ')],
      ['needs', known.needs.map(({ part, anyOf }) => `${part} ${anyOf.join(' or ')}`).join(', ')],
      ['comes after', known.after.map(({ name }) => name).join(', ')],
      ['disturbs', known.disturbs.map(({ name }) => name).join(', ')],
      ['hazards', known.hazards.join(', ')],
    ] as const;
    return {
      span,
      title: known.label,
      words: known.explain === '' ? [] : [known.explain],
      rows: rows.filter(([, text]) => text !== ''),
    };
  }
  return null;
}

/** Over a step: the condition of every part after it, what it changed first. */
function stateHover(document: DeskDocument, offset: number): Hover | null {
  const state = stateAfter(document, offset);
  if (state === null) return null;
  const rows = state.parts.map(
    ({ label, condition, changed }) => [changed ? `${label} *` : label, condition] as const,
  );
  return {
    span: state.span,
    title: 'after this step',
    words: state.parts.some(({ changed }) => changed) ? ['* changed by this step'] : [],
    rows,
  };
}

/** The condition of a part after a step. */
export interface PartAfter {
  readonly part: string;
  readonly label: string;
  readonly condition: string;
  /** Whether the step brought it into it. */
  readonly changed: boolean;
  /** Whether only words say so, and no mark. */
  readonly doubtful: boolean;
}

/** The step at an offset and the state that it leaves; null outside the steps, or where no kind is known. */
export function stateAfter(
  document: DeskDocument,
  offset: number,
): { readonly span: Span; readonly parts: readonly PartAfter[] } | null {
  const { sheet } = document;
  const at = sheetOffset(document, offset);
  const proof = at === null ? null : orderProof(sheet);
  if (at === null || proof === null) return null;
  const { walk, kind } = proof;
  const found = walk.steps.findIndex(({ step }) => holds(step.span, at));
  const here = walk.steps[found];
  const span = here === undefined ? null : ownSpan(document, here.step.span);
  if (here === undefined || span === null) return null;
  const changed = new Set(here.step.changes.map(({ term }) => term.part));
  const before = walk.steps[found - 1]?.after;
  const labels = [...here.after.keys()].map((part) => kind.parts.get(part)?.label ?? part);
  const parts = [...here.after].map(([part, { condition, by }]): PartAfter => {
    const known = kind.parts.get(part);
    const label = known?.label ?? part;
    // The engine that runs and the engine that is warm are two things to keep an eye on.
    const isShared = labels.filter((each) => each === label).length > 1 && label !== part;
    return {
      part,
      label: isShared ? `${label}, ${part.replaceAll('-', ' ')}` : label,
      condition: known?.conditions.get(condition)?.says ?? condition,
      changed:
        changed.has(part) || (before !== undefined && before.get(part)?.condition !== condition),
      doubtful: by === 'reading',
    };
  });
  return {
    span,
    parts: [...parts.filter((each) => each.changed), ...parts.filter((each) => !each.changed)],
  };
}

/** A key of front matter: what it says. */
function keyHover(document: DeskDocument, offset: number): Hover | null {
  const { frontMatter, kind } = document.sheet;
  if (frontMatter === null || offset > frontMatter.end) return null;
  const cursor = frontCursor(document.text, frontMatter, offset);
  if (cursor === null || cursor.part !== 'key') return null;
  const { span, path } = cursor;
  const name = document.text.slice(span.start, span.end);
  if (name === '' || !holds(span, offset)) return null;
  const setting = path.length === 1 && path[0] === 'settings' ? kind?.settingNamed(name) : null;
  if (setting) return settingHover(span, setting, []);
  const words = wordsAt([...path, name]);
  if (words === null) return null;
  const rows = words.examples.length === 0 ? [] : [['such as', words.examples.join(', ')] as const];
  return { span, title: name, words: [words.explain], rows };
}
