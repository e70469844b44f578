import type { KindReference } from '../../kinds/reference/model.ts';
import { entryRows } from './entry.ts';
import { sectionsOf } from './lines.ts';

/** A kind as a page of Markdown: a table a section, then all of every setting. */
export function kindPage(reference: KindReference): string {
  const lines = [
    `# ${reference.title}`,
    '',
    `All that the kind \`${reference.kind}\` knows: names that a sheet may use, and what each of them asks for.`,
    'Made from the data of the kind by `RENEW_GOLDEN=1 npx vitest run test/docs`; `gaugeleaf kind` tells the same of',
    'every kind, those of a club too. All of it is common practice, no source.',
  ];
  for (const { title, rows } of sectionsOf(reference)) {
    lines.push('', `## ${title.replace(/^./, (first) => first.toUpperCase())}`, '');
    lines.push('| name | what it is |', '| --- | --- |');
    for (const [name, words] of rows) lines.push(`| \`${name}\` | ${cell(words)} |`);
  }
  for (const [title, entries] of [
    ['Settings in full', reference.settings],
    ['Hazards in full', reference.hazards],
  ] as const) {
    lines.push('', `## ${title}`);
    for (const entry of entries) {
      lines.push('', `### ${entry.label}: \`${entry.name}\``, '');
      for (const [label, words] of entryRows(entry)) lines.push(`- ${label}: ${cell(words)}`);
    }
  }
  return `${lines.join('\n')}\n`;
}

function cell(words: string): string {
  return words.replace(/\s+/g, ' ').replaceAll('|', '\\|').replaceAll('<', '&lt;');
}
