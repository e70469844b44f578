import { scalar } from '../text/index.ts';
import { columnLetters } from './cell-address.ts';
import type { MappingGuess } from './guess-mapping.ts';
import { targetText } from './mapping.ts';

/** A proposed mapping as the YAML file that the editor reads, mends and keeps beside the list. */
export function mappingText(guess: MappingGuess, file: string, schema: string): string {
  const { mapping, columns, open } = guess;
  const lines = [
    `# yaml-language-server: $schema=${schema}`,
    `# How \`gaugeleaf draft --from\` reads ${oneLine(file)}. The program proposed it; the editor settles it.`,
    'gaugeleaf-mapping: 1',
  ];
  if (mapping.table !== null) lines.push(`table: ${scalar(mapping.table)}`);
  lines.push(
    `heads: ${mapping.heads} # the row of heads; first: and last: say which rows are read`,
    mapping.layout === 'row-is-unit'
      ? 'layout: row-is-unit # or row-is-setting'
      : 'layout: row-is-setting # or row-is-unit',
    `kind: ${mapping.kind}`,
  );
  if (mapping.maker !== null) lines.push(`maker: ${scalar(mapping.maker)}`);
  lines.push(
    `features: [${mapping.features.join(', ')}] # what all the units have, besides what columns say`,
    'merged: list # `repeat` takes a merged cell for every row and column that it covers',
    'hidden: skip # `read` reads hidden rows and columns too',
  );
  for (const point of open) lines.push(`# To settle: ${point}`);
  lines.push('columns:');
  for (const { column, head, to, unit, confidence, because } of columns) {
    const entries = [`head: ${scalar(oneLine(head))}`, `to: ${targetText(to)}`];
    if (unit !== null) entries.push(`unit: ${scalar(unit)}`);
    const word = confidence === 'none' ? 'not known' : confidence;
    lines.push(
      `  ${columnLetters(column)}: { ${entries.join(', ')} } # ${word}: ${oneLine(because)}`,
    );
  }
  return `${lines.join('\n')}\n`;
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
