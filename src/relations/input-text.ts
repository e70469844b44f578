import { principal } from '../quantity/index.ts';
import type { Statement } from '../quantity/model.ts';
import { oncePer, type Span } from '../text/index.ts';
import type { Derived, Input } from './propagate.ts';
import { unitFor, type WorkedText, workedText } from './worked-text.ts';

/** A figure as a sentence has it: a count without its direction, anything else as written. */
function statedText(text: string, statement: Statement | null): string {
  if (statement?.dimension !== 'turns') return text;
  const one = principal(statement);
  if (!one) return text;
  return /\p{L}/u.test(one.text) ? one.text : `${one.text} ${one.unit}s`;
}

/** What an input was, in a message or a table: as written, as worked before, or what was taken for it. */
export function inputText({ place, derived, quantity, from }: Input): string {
  if (derived) return textOf(derived).text;
  if (from === 'unsaid') return quantity.unsaid?.words ?? '';
  return place?.text === null || !place ? '' : statedText(place.text, place.statement);
}

/** A worked figure as it is printed: in a unit of its inputs' family, as fine as they allow. */
export const textOf = oncePer((derived: Derived): WorkedText => {
  const { instance, solution, figure } = derived;
  const quantity = instance.quantities.get(solution.for)?.quantity;
  const dimension = quantity?.dimension ?? 'ratio';
  const unit = unitFor(dimension, statementsOf(derived.inputs), figure);
  return workedText(figure, dimension, unit, 0, quantity?.places);
});

/** A worked figure in the unit and to the places of the stated one that it is held against. */
export function textBeside({ instance, solution, figure }: Derived, stated: Statement): WorkedText {
  const dimension = instance.quantities.get(solution.for)?.quantity.dimension ?? 'ratio';
  const ends = [stated.nominal, stated.low?.amount, stated.high?.amount];
  const amounts = ends.filter((amount) => amount !== null && amount !== undefined);
  const places = Math.max(0, ...amounts.map((amount) => amount.places ?? 0));
  return workedText(figure, dimension, amounts[0]?.unit ?? '', places);
}

/** The statements that some inputs rest on, at any remove, the nearest first. */
function statementsOf(inputs: readonly Input[]): readonly Statement[] {
  const own = inputs.flatMap(({ place, from }) =>
    from === 'stated' && place?.statement ? [place.statement] : [],
  );
  return [
    ...own,
    ...inputs.flatMap(({ derived }) => (derived ? statementsOf(derived.inputs) : [])),
  ];
}

/** The figures and what they come to, as a clause: `1-1/4 turns of 10-32 UNF is 0.0391 in`. */
export function toldText({ solution, inputs }: Derived, worked: string): string {
  const { told: words } = solution;
  if (words === undefined) return `${listed(inputs)} to ${worked}`;
  const points = new Map(
    inputs.flatMap(({ name, figure }) => {
      const stretch = figure.point ?? figure.nominal;
      return stretch ? [[name, stretch] as const] : [];
    }),
  );
  const template = typeof words === 'string' ? words : words(points);
  return filled(template, inputs, { worked });
}

/** `gap 0.028 in and bore 1-7/16 in come`, with what was taken as unsaid in brackets. */
function listed(inputs: readonly Input[]): string {
  const said = inputs
    .filter(({ from }) => from !== 'unsaid')
    .map((input) => `${input.quantity.label} ${inputText(input)}`);
  const unsaid = inputs.filter(({ from }) => from === 'unsaid').map(inputText);
  const taken = unsaid.length > 0 ? ` (${unsaid.join(', ')})` : '';
  return `${joined(said, 'and')}${taken} ${said.length === 1 ? 'comes' : 'come'}`;
}

/** `the turns, the thread or the travel`. */
export function joined(words: readonly string[], by: 'and' | 'or'): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} ${by} ${last}`;
}

/** What a message says of the figures that something was worked from. */
export interface ToldInputs {
  /** `the turns`, `the thread`: those that could be wrong. */
  readonly labels: readonly string[];
  /** The figure whose limits led to the worked ones; the first where none has limits. */
  readonly limited: string;
  /** Where they stand on the sheet, with what each is. */
  readonly places: readonly { readonly span: Span; readonly label: string }[];
}

/** The figures that a result rests on, for a message. */
export function toldInputs({ inputs }: Derived): ToldInputs {
  const places = inputs.flatMap(placesOf);
  const limited = inputs.find(({ figure }) => figure.limits || figure.side) ?? inputs[0];
  const labels = [...new Set(places.map(({ label }) => label))];
  return { labels, limited: limited ? inputText(limited) : '', places };
}

/** The places on the sheet that an input rests on, with what each is. */
export function placesOf({ place, derived, quantity }: Input): ToldInputs['places'] {
  if (derived) return derived.inputs.flatMap(placesOf);
  return place?.span ? [{ span: place.span, label: `the ${quantity.label}` }] : [];
}

/** A sentence with each `{name}` in the place of its figure. */
export function filled(
  template: string,
  inputs: readonly Input[],
  more: Readonly<Record<string, string>> = {},
): string {
  return template.replace(/\{([a-z0-9-]+)\}/g, (whole, name: string) => {
    const input = inputs.find((each) => each.name === name);
    return more[name] ?? (input ? inputText(input) : whole);
  });
}
