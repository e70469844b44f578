import { levelName } from '../../kinds/index.ts';
import type { Entry, SettingEntry, ToldDrawing, UnitEntry } from '../../kinds/reference/model.ts';

const strengths = { hard: 'hard', likely: 'likely', usual: 'custom' } as const;

/** Where a gauge is put to a setting. */
const places = {
  gap: 'by a gauge passed between two faces',
  'in-bore':
    'by a gauge passed between an edge and the wall of a bore, where a leaf reads too little',
  travel: 'by a gauge held beside a travel',
} as const;

/** Plain names in a sentence: `a, b or c`. */
export function either(names: readonly string[], word = 'or'): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} ${word} ${last}`;
}

/** Other names that stand on a line with more to say. */
const FEW = 4;

/** What it may be called besides, the first few; empty for nothing but its name and label. */
export function alsoCalled({ name, label, aliases }: Entry): string {
  const own = new Set([levelName(name), levelName(label)]);
  const others = aliases.filter((alias) => !own.has(levelName(alias)));
  if (others.length === 0) return '';
  const more = others.length - FEW;
  return `also ${others.slice(0, FEW).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

/** A rule's strength and reason, in brackets behind it. */
export function reason({
  strength,
  because,
}: {
  readonly strength: keyof typeof strengths;
  readonly because: string;
}): string {
  return `(${strengths[strength]}: ${because})`;
}

/** What a setting may be stated in. */
export function statedAs({ dimensions, conditions }: SettingEntry): string {
  const figures = dimensions.filter((dimension) => dimension !== 'condition');
  const words = conditions.length === 0 ? [] : [`in words: ${conditions.join(', ')}`];
  return [...(figures.length === 0 ? [] : [either(figures)]), ...words].join('; or ');
}

export function usualOf({ usual }: SettingEntry): string {
  return usual.map(({ low, high }) => `${low} to ${high}`).join('; ');
}

export function measuredHow({ measured, bore, thread }: SettingEntry): string {
  return [
    measured === null ? '' : places[measured],
    bore === null ? '' : `the bore is \`${bore}\` under \`unit:\``,
    thread === null ? '' : `its screw is \`${thread}\` under \`unit:\``,
  ]
    .filter((words) => words !== '')
    .join('; ');
}

export function gaugesOf({ gauges }: SettingEntry): string {
  return gauges.map(({ family, from, to }) => `${family}, ${from} to ${to}`).join('; ');
}

export function drawn({ shows, operation, from }: ToldDrawing): string {
  return `${shows}, beside ${operation}${from.length === 0 ? '' : `, from ${from.join(', ')}`}`;
}

/** What a feature or a kind asks for: each choice once, `a or b; c`. */
export function asked(choices: readonly (readonly string[])[]): string {
  return choices.map((names) => either(names)).join('; ');
}

export function unitWords({ dimensions, usual }: UnitEntry): string {
  const range = usual === null ? '' : `; usual ${usual.low} to ${usual.high}`;
  return `${either(dimensions)}${range}`;
}
