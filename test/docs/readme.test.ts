import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { readStatement, writeStatement } from '../../src/quantity/index.ts';
import { browserHere } from '../press/stand.ts';
import {
  change,
  commandsOf,
  demoCopy,
  type MarkedBlock,
  markedBlocks,
  root,
  show,
} from './marked-blocks.ts';

const renew = process.env.RENEW_GOLDEN === '1';
const path = join(root, 'README.md');
const page = readFileSync(path, 'utf8');
const blocks = markedBlocks(page);
const fresh = new Map<MarkedBlock, string>();

/**
 * What a block should hold: its commands, each with what it writes. `head="12"` keeps the first
 * lines only, and `tail="5"` the last ones too, with `...` for the rest; `file`, `from` and `to`
 * change the demo before.
 */
async function carriedOut(block: MarkedBlock): Promise<string> {
  const { folder, remove } = demoCopy();
  try {
    const { options } = block;
    const file = options.get('file');
    if (file !== undefined) {
      change(join(folder, file), options.get('from') ?? '', options.get('to') ?? '');
    }
    let text = '';
    for (const command of commandsOf(block)) {
      const shown = await show(command, folder);
      expect(shown.status, `exit status of ${command}`).toBe(Number(options.get('exit') ?? '0'));
      text += `$ ${command}\n${shortened(shown.text, options.get('head'), options.get('tail'))}`;
    }
    return text;
  } finally {
    remove();
  }
}

function shortened(text: string, head: string | undefined, tail = '0'): string {
  const lines = text.replace(/\n$/, '').split('\n');
  if (head === undefined || lines.length <= Number(head) + Number(tail)) return text;
  const first = lines.slice(0, Number(head)).join('\n').trimEnd();
  return [first, '...', ...lines.slice(lines.length - Number(tail)), ''].join('\n');
}

describe('the commands of the README', () => {
  const runs = blocks.filter((block) => block.mark === 'run');

  test('are there', () => {
    const commands = runs.flatMap(commandsOf).map((command) => command.split(' ')[1]);
    expect(new Set(commands)).toEqual(
      new Set([
        'check',
        'pages',
        'record',
        'work',
        'order',
        'draw',
        'sources',
        'compare',
        'size',
        'draft',
        'explain',
      ]),
    );
  });

  test.each(runs.map((block) => [block.line, commandsOf(block).join('; '), block] as const))(
    'line %i: %s',
    async (_line, _commands, block) => {
      const text = await carriedOut(block);
      fresh.set(block, text);
      if (!renew) expect(block.text).toBe(text);
    },
    120_000,
  );
});

const browser = await browserHere();

describe('the printing commands of the README', () => {
  const prints = blocks.filter((block) => block.mark === 'print');

  test('are there', () => {
    const commands = prints.flatMap(commandsOf).map((command) => command.split(' ')[1]);
    expect(new Set(commands)).toEqual(new Set(['card', 'booklet', 'gauges']));
  });

  if (typeof browser === 'string') console.warn(`skipped, nothing to print with: ${browser}`);
  test
    .skipIf(typeof browser === 'string')
    .each(prints.map((block) => [block.line, commandsOf(block).join('; '), block] as const))(
    'line %i: %s',
    async (_line, _commands, block) => {
      const text = await carriedOut(block);
      fresh.set(block, text);
      // How many pages a booklet has depends on the make of browser too: near is enough.
      const pages = (shown: string) =>
        [...shown.matchAll(/(\d+) pages?$/gm)].map(([, n]) => Number(n));
      const unnumbered = (shown: string) => shown.replace(/\d+ pages?$/gm, 'pages');
      if (renew) return;
      expect(unnumbered(block.text)).toBe(unnumbered(text));
      for (const [index, count] of pages(text).entries()) {
        expect(Math.abs((pages(block.text)[index] ?? 0) / count - 1)).toBeLessThan(0.1);
      }
    },
    240_000,
  );
});

/** The text of the one block with that mark. */
function blockMarked(mark: string): string {
  const [block, ...more] = blocks.filter((each) => each.mark === mark);
  if (block === undefined || more.length > 0) throw new Error(`one block marked ${mark} is wanted`);
  return block.text;
}

describe('what the README tells a club to write', () => {
  test('two lines are an edition, and a draft in its folder has blanks and nothing else', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-own-'));
    try {
      mkdirSync(join(folder, 'sheets'));
      writeFileSync(join(folder, 'edition.yaml'), blockMarked('edition'));
      const features = 'single-barrel,downdraft,hand-choke,pump';
      const draft = `gaugeleaf draft --kind carburetor --maker Tarn --model K35 --features ${features}`;
      expect((await show(draft, folder)).text).toContain('sheets/tarn-k35.md');
      const { status, text } = await show('gaugeleaf check --format json', folder);
      const { findings } = JSON.parse(text) as { findings: { name: string; file: string }[] };
      expect(status).toBe(1);
      expect(new Set(findings.map(({ name, file }) => `${file} ${name}`))).toEqual(
        new Set(['sheets/tarn-k35.md blank-to-fill']),
      );
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  test('the kit can be read', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-kit-'));
    try {
      mkdirSync(join(folder, 'sheets'));
      writeFileSync(join(folder, 'sheets', 'one.md'), '# One\n');
      writeFileSync(join(folder, 'edition.yaml'), blockMarked('kit'));
      const { text } = await show('gaugeleaf check --format json', folder);
      const { findings } = JSON.parse(text) as { findings: { file: string }[] };
      expect(findings.filter(({ file }) => file === 'edition.yaml')).toEqual([]);
      expect(findings).not.toEqual([]);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  test('the sheet is clean', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-sheet-'));
    try {
      mkdirSync(join(folder, 'sheets'));
      const name = blocks.find((each) => each.mark === 'sheet')?.options.get('') ?? '';
      writeFileSync(join(folder, name), blockMarked('sheet'));
      const shown = await show('gaugeleaf check --all', folder);
      expect(shown).toEqual({ status: 0, text: 'No findings in 1 sheet\n' });
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  test('the variant is clean, and prints what its base says', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-variant-'));
    try {
      mkdirSync(join(folder, 'sheets'));
      for (const mark of ['sheet', 'variant']) {
        const name = blocks.find((each) => each.mark === mark)?.options.get('') ?? '';
        writeFileSync(join(folder, name), blockMarked(mark));
      }
      const shown = await show('gaugeleaf check --all', folder);
      expect(shown).toEqual({ status: 0, text: 'No findings in 2 sheets\n' });
      const { text } = await show('gaugeleaf export --format csv', folder);
      const rows = text.split('\n').filter((row) => row.startsWith('orlo-f27-wexcombe-export,'));
      expect(rows).toHaveLength(2);
      expect(rows[0]).toContain('7/32 ± 1/64 in');
      expect(rows[0]).toContain('free end of the float');
      expect(rows[1]).toContain('1-1/4 ± 1/4 turns out');
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  test('rules of a unit’s own are understood, and turn two headings about', async () => {
    const { folder, remove } = demoCopy();
    try {
      const file = 'sheets/orlo-t71-wexcombe-six.md';
      change(join(folder, file), 'settings:\n', `${blockMarked('work')}settings:\n`);
      const { text } = await show(`gaugeleaf check --format json ${file}`, folder);
      const { findings } = JSON.parse(text) as { findings: { name: string; message: string }[] };
      expect(findings.map(({ name }) => name)).toContain('operation-early');
      expect(findings.filter(({ name }) => name.startsWith('work-rule'))).toEqual([]);
      expect(findings.find(({ name }) => name === 'operation-early')?.message).toMatch(
        /Unloader.*Fast idle gap/,
      );
    } finally {
      remove();
    }
  });

  test('a warning that is accepted this way no longer stops a released sheet', async () => {
    const { folder, remove } = demoCopy();
    try {
      const file = 'sheets/orlo-t71-wexcombe-six.md';
      const sheet = join(folder, file);
      const drop =
        '    value: 23/32 ± 1/32 in\n    also: [0.71875 in, 18.256 mm, 17.463–19.050 mm]\n';
      change(
        sheet,
        `${drop}    gauge: 23/32 drill\n    travel: 33/64 in\n`,
        '    value: 5-3/4 ± 1/32 in\n',
      );
      change(sheet, 'status: proof\n', 'status: released\n');
      const before = await show(`gaugeleaf check ${file}`, folder);
      expect(before.status).toBe(1);
      expect(before.text).toContain('size-unusual');
      const accept = blockMarked('accept');
      change(sheet, 'settings:\n', `${accept}settings:\n`);
      const after = await show(`gaugeleaf check --all ${file}`, folder);
      expect(after.text).toContain('Measured on three units. The bowl of this one is deep.');
      expect(after.status).toBe(0);
    } finally {
      remove();
    }
  });
});

describe('how sizes are written', () => {
  const section = page.slice(
    page.indexOf('\n## How sizes are written\n'),
    page.indexOf('\n## Numbers in the text\n'),
  );
  const forms = [...section.matchAll(/^\| (`.*?) \|/gm)].flatMap(([, cell = '']) =>
    [...cell.matchAll(/`([^`]+)`/g)].map(([, form = '']) => form),
  );

  test('every row is looked at', () => expect(forms.length).toBeGreaterThan(40));

  test.each(forms)('%s', (form) => {
    const reading = readStatement(form, { gauges: gaugeBook() });
    expect(reading.ok).toBe(true);
    if (reading.ok) expect(writeStatement(reading.statement)).toBe(form);
  });

  test('a bare number is refused, and a bare SWG is doubtful', () => {
    expect(readStatement('No. 60', { gauges: gaugeBook() }).ok).toBe(false);
    const wire = readStatement('22 SWG', { gauges: gaugeBook() });
    expect(wire.ok && wire.statement.ambiguous.map((gauge) => gauge.label)).toEqual([
      'No. 22 US steel wire',
    ]);
  });
});

describe('what the README points to', () => {
  const links = [...page.matchAll(/\]\(([^)\s]+)\)/g)].map(([, target = '']) => target);

  test.each(links.filter((link) => !/^https?:/.test(link)))('%s is there', (link) => {
    const [file = '', anchor] = link.split('#');
    const target = file === '' ? path : join(dirname(path), file);
    expect(existsSync(target), target).toBe(true);
    if (anchor !== undefined) expect(anchorsOf(readFileSync(target, 'utf8'))).toContain(anchor);
  });

  test('pictures have words and are small', () => {
    const pictures = [...page.matchAll(/!\[([^\]]*)\]\(([^)]+)\)/g)];
    expect(pictures.length).toBeGreaterThanOrEqual(2);
    for (const [, words = '', file = ''] of pictures) {
      expect(words.length).toBeGreaterThan(20);
      expect(statSync(join(root, file)).size).toBeLessThan(150_000);
    }
  });

  test('findings named in it exist', async () => {
    const { acrossChecks, allChecks } = await import('../../src/checks/index.ts');
    const { projectChecks } = await import('../../src/project/file-faults.ts');
    const ids = [...allChecks, ...acrossChecks, ...projectChecks].map((check) => check.id);
    const section = page.slice(page.indexOf('\n## Findings\n'), page.indexOf('\n### Accepting'));
    const table = [...section.matchAll(/^\| ([A-Z][^|]*) \| (.*) \|$/gm)];
    const named = table.flatMap(([, , cell = '']) =>
      [...cell.matchAll(/`([a-z-]+)`/g)].map(([, name = '']) => name),
    );
    expect(named.sort()).toEqual(ids.sort());
  });
});

/** The anchors of a page's headings, as code hosts make them. */
function anchorsOf(text: string): readonly string[] {
  return [...text.matchAll(/^#{1,6} (.+)$/gm)].map(([, heading = '']) =>
    heading
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\s-]/gu, '')
      .replace(/\s/g, '-'),
  );
}

// With RENEW_GOLDEN=1 the blocks are written anew, from the last to the first.
afterAll(() => {
  if (!renew) return;
  let text = page;
  for (const block of [...fresh.keys()].sort((a, b) => b.start - a.start)) {
    text = text.slice(0, block.start) + (fresh.get(block) ?? '') + text.slice(block.end);
  }
  if (text !== page) writeFileSync(path, text);
});
