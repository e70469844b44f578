import type { AcrossExample } from './across/define.ts';
import { type Check, type CheckGroup, checkGroups, type Example, type Severity } from './define.ts';

/** What the findings page and `explain` tell of a check, of one sheet or across sheets. */
export type ToldCheck = Pick<Check, 'id' | 'severity' | 'group' | 'summary' | 'explain'> & {
  readonly examples: readonly (Example | AcrossExample)[];
};

const titles: Readonly<Record<CheckGroup, string>> = {
  reading: 'Reading the sheet',
  sizes: 'Sizes',
  prose: 'Numbers in the text',
  order: 'The order of work',
  provenance: 'Where the figures come from',
  cautions: 'Cautions',
  acceptance: 'Accepted points',
  across: 'Across sheets',
};

const severities: Readonly<Record<Severity, string>> = {
  error: 'wrong or impossible; stops the press, can only be mended',
  warning: 'doubtful; mend it, or accept it with a reason',
  note: 'worth knowing',
};

/** The findings page of the documentation, in Markdown, ending in a line feed. */
export function findingsPage(checks: readonly ToldCheck[]): string {
  const lines: string[] = [
    '# Findings',
    '',
    'What `gaugeleaf check` can say of a sheet. This page is made from the checks themselves, and',
    'every example on it runs as a test. `gaugeleaf explain NAME` prints one entry.',
    '',
  ];
  for (const [severity, meaning] of Object.entries(severities)) {
    lines.push(`- **${severity}**: ${meaning}.`);
  }
  const grouped = checkGroups
    .map((group) => [titles[group], checks.filter((check) => check.group === group)] as const)
    .filter(([, members]) => members.length > 0);
  lines.push('', '| group | findings |', '| --- | --- |');
  for (const [title, members] of grouped) {
    lines.push(`| ${title} | ${members.map(({ id }) => `[\`${id}\`](#${id})`).join(', ')} |`);
  }
  lines.push('');
  for (const [title, members] of grouped) {
    lines.push(`## ${title}`, '');
    for (const check of members) lines.push(...entry(check));
  }
  return `${lines.join('\n').trimEnd()}\n`;
}

function entry(check: ToldCheck): readonly string[] {
  const lines = [`### ${check.id}`, '', `*${check.severity}.* ${check.summary}`, ''];
  lines.push(check.explain, '');
  for (const example of chosen(check)) {
    lines.push(`${example.expect.length > 0 ? 'Wrong' : 'Right'}: ${example.name}.`, '');
    lines.push(...fenced(source(example), language(example)), '');
    if (example.expect.length > 0) lines.push(...fenced(result(check, example), 'text'), '');
  }
  return lines;
}

/** One entry as plain text for a terminal, ending in a line feed. */
export function explainCheck(check: ToldCheck): string {
  const lines = [`${check.id} (${check.severity}: ${severities[check.severity]})`, ''];
  lines.push(...wrapped(check.summary), '', ...wrapped(check.explain), '');
  for (const example of chosen(check)) {
    lines.push(`${example.expect.length > 0 ? 'Wrong' : 'Right'}: ${example.name}`, '');
    lines.push(...source(example).map(indented), '');
    if (example.expect.length > 0) lines.push(...result(check, example).map(indented), '');
  }
  return `${lines.join('\n').trimEnd()}\n`;
}

/** All wrong examples, and the first right one that shows something. */
function chosen(check: ToldCheck): ToldCheck['examples'] {
  const wrong = check.examples.filter((example) => example.expect.length > 0);
  const right = check.examples.filter(
    (example) => example.expect.length === 0 && source(example).length > 0,
  );
  return [...wrong, ...right.slice(0, 1)];
}

/** The lines of an example as they stand in a sheet, front matter before body. */
function source(example: ToldCheck['examples'][number]): readonly string[] {
  if ('sheets' in example) {
    return Object.entries(example.sheets).flatMap(([id, sheet], index) => [
      ...(index === 0 ? [] : ['']),
      `# sheets/${id}.md`,
      ...source({ name: '', sheet, expect: [] }),
    ]);
  }
  const { sheet } = example;
  if (typeof sheet === 'string') return sheet.trim() === '' ? ['(an empty file)'] : trimmed(sheet);
  const lines: string[] = [];
  if (sheet.front !== undefined) lines.push(...trimmed(sheet.front));
  if (sheet.settings !== undefined) {
    lines.push('settings:', ...trimmed(sheet.settings).map((line) => `  ${line}`));
  }
  if (sheet.body !== undefined) {
    if (lines.length > 0) lines.push('---', '');
    lines.push(...trimmed(sheet.body));
  }
  return lines;
}

function language(example: ToldCheck['examples'][number]): string {
  if ('sheets' in example) return 'yaml';
  const { sheet } = example;
  return typeof sheet === 'string' || sheet.body !== undefined ? 'markdown' : 'yaml';
}

function result(check: ToldCheck, example: ToldCheck['examples'][number]): readonly string[] {
  const lines: string[] = [];
  if ('sheets' in example) {
    for (const { in: id, at, message, fix, severity, see } of example.expect) {
      lines.push(`${severity ?? check.severity}  ${check.id}  sheets/${id}.md at: ${at}`);
      lines.push(`  ${message}`);
      if (fix !== null) lines.push(`  fix: ${fix}`);
      for (const [other, words] of see) lines.push(`  see: sheets/${other}.md at: ${words}`);
    }
    return lines.map(visible);
  }
  for (const { at, message, fix, severity, fixed } of example.expect) {
    lines.push(
      `${severity ?? check.severity}  ${check.id}  at: ${at === '' ? 'the start' : visible(at)}`,
      `  ${message}`,
    );
    if (fix !== null) lines.push(`  fix: ${fix}`);
    if (fixed !== undefined) lines.push(`  --fix writes: ${fixed}`);
  }
  return lines.map(visible);
}

/** Control and other invisible characters as escapes, so that a page shows what is there. */
function visible(text: string): string {
  return text.replace(
    /[\p{Cc}\p{Cf}\p{Co}\p{Cn}\uFFFD]/gu,
    (character) => `\\u${(character.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`,
  );
}

function trimmed(text: string): readonly string[] {
  const lines = text.split(/\r\n|\r|\n/);
  while (lines.length > 0 && lines[0]?.trim() === '') lines.shift();
  while (lines.length > 0 && lines.at(-1)?.trim() === '') lines.pop();
  return lines.map(visible);
}

function fenced(lines: readonly string[], name: string): readonly string[] {
  let fence = '```';
  while (lines.some((line) => line.includes(fence))) fence += '`';
  return [`${fence}${name}`, ...lines, fence];
}

function indented(line: string): string {
  return line === '' ? '' : `  ${line}`;
}

/** Words in lines of at most 80 characters; a longer word gets a line of its own. */
function wrapped(text: string): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + word.length >= 80) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  if (line !== '') lines.push(line);
  return lines;
}
