import type { Kind, KindOperation } from '../kinds/model.ts';
import { scalar } from '../text/index.ts';
import { type DraftPlan, planDraft } from './draft-plan.ts';
import {
  blank,
  type GivenFacts,
  givenSettingLines,
  givenSourceLines,
  givenUnitLines,
} from './sheet-front.ts';

/** What a new sheet is made from. */
export interface DraftOrder {
  readonly kind: Kind;
  readonly maker: string;
  readonly model: string;
  /** Names of the kind's features. */
  readonly features: readonly string[];
  /** Becomes `sheet:`, so it has to be the file's name without `.md`. */
  readonly id: string;
  /** YYYY-MM-DD. */
  readonly date: string;
  /** What a list says of the unit; left out for a sheet that starts blank. */
  readonly given?: GivenFacts;
}

/**
 * A new sheet: front matter with every setting that its features need, and the work in order, with
 * its cautions before the steps that meet them. Whatever only a source can say is left blank.
 */
export function draftSheet(order: DraftOrder): string {
  const listed = [...(order.given?.unit.settings.keys() ?? [])];
  const plan = planDraft(order.kind, order.features, listed);
  return `${[...frontMatter(order, plan.settings), ...body(order, plan)].join('\n')}\n`;
}

function frontMatter(order: DraftOrder, settings: readonly string[]): string[] {
  const { kind, maker, model, given } = order;
  const title = given?.unit.title ?? `${maker} ${model}`;
  const lines = [
    '---',
    'gaugeleaf: 1',
    `sheet: ${order.id}`,
    `title: ${scalar(title)}`,
    'unit:',
    `  kind: ${kind.name}`,
    `  maker: ${scalar(maker)}`,
    `  model: ${scalar(model)}`,
    `  features: [${order.features.join(', ')}]`,
    ...(given === undefined ? [] : givenUnitLines(given)),
    'revision: 1',
    `date: ${order.date}`,
    'status: draft',
    'sources:',
    ...(given === undefined ? [`  s1: { title: ${blank} }`] : givenSourceLines(given)),
    'settings:',
  ];
  for (const name of settings) {
    if (given !== undefined) {
      lines.push(...givenSettingLines(name, given.unit.settings.get(name) ?? null, kind, given));
      continue;
    }
    const setting = kind.settings.get(name);
    lines.push(`  ${name}:`, `    value: ${blank}`);
    for (const key of setting?.mustSay ?? []) lines.push(`    ${key}: ${blank}`);
    lines.push('    from: s1');
  }
  lines.push('---', '');
  return lines;
}

function body(order: DraftOrder, plan: DraftPlan): string[] {
  const { kind, maker, model, features, given } = order;
  const labels = features.map((name) => kind.features.get(name)?.label.toLowerCase() ?? name);
  const lines = [
    `# ${plainMarkdown(`${maker} ${model}`)}`,
    '',
    // Of a list nobody sits over each sheet: a blank that the list cannot fill would stop all of them.
    `${kind.title}: ${labels.join(', ')}.${given === undefined ? ' How to tell it from its near relations goes here.' : ''}`,
    '',
  ];
  const steps = stepsOfAll(plan);
  const warned = new Set<string>();
  for (const operation of plan.operations) {
    lines.push(`## ${operation.label}`, '');
    if (operation.explain !== '') lines.push(operation.explain, '');
    for (const name of operation.hazards) {
      if (warned.has(name)) continue;
      warned.add(name);
      lines.push(...caution(kind, name));
    }
    lines.push(...numbered(steps.get(operation) ?? []), '');
  }
  lines.pop();
  return lines;
}

/** A name as Markdown that shows it as it is. */
function plainMarkdown(text: string): string {
  return text.replace(/[\\`*_[\]<>#:{}!|~&]/g, (sign) => `\\${sign}`);
}

/** The lines of a safety message in the kind's words, an empty one last; none for a hazard it does not know. */
export function caution(kind: Kind, name: string): string[] {
  const hazard = kind.hazards.get(name);
  if (hazard === undefined) return [];
  const { message, signal } = hazard;
  const words = [message.hazard, message.consequence, message.avoid].map(sentence).join(' ');
  return [`:::${signal}{hazard=${name}}`, words, ':::', ''];
}

function sentence(text: string): string {
  const trimmed = text.trim();
  return /[.!?]$/.test(trimmed) ? trimmed : `${trimmed}.`;
}

/**
 * The model steps that speak of no other settings than those on the sheet, each placeholder put as
 * `:value[...]`. `used` gathers the settings that steps speak of.
 */
export function modelSteps(
  operation: KindOperation,
  settings: ReadonlySet<string>,
  used: Set<string> = new Set(),
): string[] {
  const own = operation.settings.find((setting) => settings.has(setting)) ?? operation.name;
  const steps: string[] = [];
  for (const step of operation.steps) {
    const names: string[] = [];
    const text = step.replace(/\{([a-z0-9-]+)\}/g, (_, name: string) => {
      names.push(name === 'setting' ? own : name);
      return `:value[${names.at(-1)}]`;
    });
    if (names.some((name) => !settings.has(name))) continue;
    for (const name of names) used.add(name);
    steps.push(text);
  }
  return steps;
}

/** Every operation's steps; a setting that no model step speaks of gets one where it is first made. */
function stepsOfAll(plan: DraftPlan): ReadonlyMap<KindOperation, readonly string[]> {
  const settings = new Set(plan.settings);
  const used = new Set<string>();
  const steps = new Map(
    plan.operations.map((each) => [each, modelSteps(each, settings, used)] as const),
  );
  for (const [operation, own] of steps) {
    for (const setting of operation.settings) {
      if (!settings.has(setting) || used.has(setting)) continue;
      used.add(setting);
      own.push(`Set and measure: :value[${setting}].`);
    }
    if (own.length === 0) own.push(`${operation.label}.`);
  }
  return steps;
}

function numbered(steps: readonly string[]): string[] {
  return steps.map((step, index) => `${index + 1}. ${step}`);
}
