import type { BoundPlace, Kind, KindBinding } from '../kinds/model.ts';
import type { Dimension } from '../quantity/model.ts';
import type { Relation, RelationQuantity } from './model.ts';

/** Base units, as the page names them. */
const UNITS: Readonly<Partial<Record<Dimension, string>>> = {
  length: 'mm',
  turns: 'turns',
  angle: 'degrees',
  speed: 'rpm',
  vacuum: 'Pa below ambient',
  pressure: 'Pa',
  volume: 'mL',
  delivery: 'mL a stroke',
  flow: 'mL/s',
  'mass-flow': 'g/s',
  torque: 'N·m',
  time: 's',
  mass: 'g',
  force: 'N',
  'spring-rate': 'N/mm',
  voltage: 'V',
  current: 'A',
  density: 'kg/m³',
  temperature: '°C',
  area: 'mm²',
  percent: '%',
};

/** The page of all relations: docs/relations.md, made from the formulas and what the kinds bind. */
export function relationsPage(relations: readonly Relation[], kinds: Iterable<Kind>): string {
  const all = [...kinds];
  const lines = [
    '# Relations',
    '',
    'Figures of a sheet that are worked from one another. A sheet that states all the figures of a',
    'relation proves itself (`worked-disagrees`, `relation-unworkable`); one that lacks a figure can be',
    'given it (`worked-missing`, `gaugeleaf work SHEET`). Every figure counts as the whole stretch of',
    'what it may be a rounding of, and its limits as theirs; results are rounded outward, so that what',
    'is called wrong is wrong. This page is made from the formulas and the kinds of unit.',
    '',
    '| relation | formula | holds for |',
    '| --- | --- | --- |',
    ...relations.map(
      ({ id, formula, range }) => `| [${id}](#${id}) | ${cell(formula)} | ${cell(range)} |`,
    ),
  ];
  for (const relation of relations) lines.push('', ...section(relation, all));
  return `${lines.join('\n')}\n`;
}

function section(relation: Relation, kinds: readonly Kind[]): readonly string[] {
  const { id, title, formula, quantities, source, assumptions, range, solutions } = relation;
  const ways = solutions.map(({ for: name, from, hold, offer }) => {
    const is = hold === 'equals' ? 'from' : hold === 'at-most' ? 'at most, by' : 'at least, by';
    const shown = hold === 'equals' && !offer ? ', as a proof only' : '';
    return `- ${labelOf(relation, name)} ${is} ${from.map((each) => labelOf(relation, each)).join(', ')}${shown}`;
  });
  const bindings = kinds.flatMap((kind) => bound(relation, kind));
  return [
    `## ${id}`,
    '',
    `${title}: \`${formula}\``,
    '',
    '| quantity | symbol | in the formula in | where nothing is said |',
    '| --- | --- | --- | --- |',
    ...quantities.map(quantityRow),
    '',
    'Worked and proved:',
    '',
    ...ways,
    '',
    `Source: ${source}.`,
    '',
    ...(assumptions.length > 0
      ? ['Assumes:', '', ...assumptions.map((each) => `- ${each}`), '']
      : []),
    `Range: ${range}.`,
    '',
    ...(bindings.length > 0 ? ['On sheets:', '', ...bindings] : ['No built-in kind binds it.']),
  ];
}

function quantityRow({ name, label, symbol, dimension, unsaid }: RelationQuantity): string {
  const unit = dimension === 'ratio' ? 'a number' : (UNITS[dimension] ?? dimension);
  return `| ${cell(label)} (\`${name}\`) | ${cell(symbol)} | ${unit} | ${unsaid ? cell(unsaid.words) : 'not worked'} |`;
}

function labelOf({ quantities }: Relation, name: string): string {
  return quantities.find((each) => each.name === name)?.label ?? name;
}

function bound({ id, quantities }: Relation, kind: Kind): readonly string[] {
  return kind.relations.bindings
    .filter((each) => each.relation === id)
    .map((binding) => {
      const places = quantities.flatMap(({ name, label }) => {
        const place = binding.quantities.get(name);
        return place ? [`${label} ${placeWords(place)}`] : [];
      });
      return `- \`${kind.name}\`, ${ofWords(binding)}: ${places.join('; ')}`;
    });
}

function ofWords({ of, ifFeature, same }: KindBinding): string {
  const features = ifFeature.map((name) => `\`${name}\``).join(' or ');
  const keys = same.map((key) => `\`${key}\``).join(' and ');
  const where = features === '' ? '' : ` with ${features}`;
  return `\`${of}\`${where}${keys === '' ? '' : `, ${keys} the same`}`;
}

function placeWords(place: BoundPlace): string {
  switch (place.is) {
    case 'setting': {
      const at = place.atPlace === null ? '' : ` at \`${place.atPlace}\``;
      return place.key === null
        ? `\`${place.setting}\`${at}`
        : `\`${place.key}\` of \`${place.setting}\`${at}`;
    }
    case 'unit':
      return `\`${place.name}\` of the unit`;
    case 'thread':
      return `of the thread of \`${place.name}\``;
    case 'count':
      return 'by the features';
    case 'edition':
      return `\`${place.name}\` of the edition`;
    case 'fixed':
      return `${place.text}, ${place.because}`;
    case 'worked':
      return 'on no sheet, worked only';
  }
}

/** Words in a table: a bar would end the cell. */
function cell(text: string): string {
  return text.replaceAll('|', '\\|');
}
