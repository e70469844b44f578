import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { describe, expect, test } from 'vitest';
import { buildProgram } from '../../src/cli/program.ts';
import type { CardModel } from '../../src/press/card/model.ts';
import { render } from '../../src/press/html/render.ts';
import { relations } from '../../src/relations/formulas/list.ts';
import { builtInTemplates } from '../press/stand.ts';
import { expectEnclosed, middle, refusal } from '../relations/sampling.ts';
import { reports } from '../report/specimens.ts';
import { counted, countedShape } from './example-card-field.ts';
import { addSettings } from './example-command.ts';
import { toPlaceLines } from './example-format.ts';
import pile from './example-formula.ts';
import { demoCopy, markedBlocks, root } from './marked-blocks.ts';

const blocks = markedBlocks(readFileSync(join(root, 'DEVELOPERS.md'), 'utf8'));
const examples = blocks.filter(({ mark }) => mark === 'same-as');

test('there is an example of each sort', () => expect(examples).toHaveLength(5));

test.each(examples.map((block) => [block.options.get('') ?? '', block.text] as const))(
  '%s stands in the guide as it is run',
  (path, text) => expect(text).toBe(readFileSync(join(root, path), 'utf8')),
);

describe('the example of a formula', () => {
  test('is a new one, and works either way', () => {
    expect(relations.map(({ id }) => id)).not.toContain(pile.id);
    expect(middle(pile, 'pile', { count: 3, thickness: 0.5 })).toBeCloseTo(1.5, 12);
    expect(middle(pile, 'count', { pile: 1.5, thickness: 0.5 })).toBeCloseTo(3, 12);
    expectEnclosed(
      pile,
      'pile',
      { count: [1, 6], thickness: [0.1, 2] },
      ({ count = 0, thickness = 0 }) => count * thickness,
    );
  });

  test('refuses washers of no thickness', () => {
    expect(refusal(pile, 'count', { pile: 1, thickness: 0 })).toContain('too close to nothing');
  });
});

test('the example of a command is parsed, and prints what a sheet says', async () => {
  const { folder, remove } = demoCopy();
  try {
    let text = '';
    const stream = { write: (chunk: string | Uint8Array) => (text += String(chunk)), isTTY: false };
    const io = {
      stdout: stream,
      stderr: stream,
      stdin: Readable.from([]),
      env: {},
      cwd: folder,
      today: () => '2026-11-25',
    };
    let status: number | null = null;
    const done = (outcome: number): void => {
      status = outcome;
    };
    const program = buildProgram(io, done);
    expect(program.commands.map((command) => command.name())).not.toContain('settings');
    addSettings(program, io, done);
    await program.parseAsync(['settings', 'orlo-t71-wexcombe-six'], { from: 'user' });
    expect(status).toBe(0);
    expect(text).toContain('unloader: No. 29 drill\n');
  } finally {
    remove();
  }
});

test('the example of a format is one line a finding, without those that were accepted', () => {
  const lines = toPlaceLines(reports).trimEnd().split('\n');
  expect(lines).toHaveLength(3);
  expect(lines[0]).toBe(
    'sheets/orlo.md:5:12: error: No. 29 drill is 0.1360 in, but `also` says 0.163 in (0.027 in more) [sizes-disagree]',
  );
});

test('the example of a field is told to clubs, and printed where the template says it', async () => {
  const card: CardModel = JSON.parse(
    readFileSync(join(root, 'test/press/golden/card-model.json'), 'utf8'),
  );
  expect(countedShape.fields.settingCount).toMatchObject({ is: 'number' });
  const [line] = blocks.filter(({ mark }) => mark === 'card-line');
  const built = builtInTemplates();
  const masthead = '{{> card-masthead}}\n';
  const texts = new Map(built.texts);
  const before = texts.get('card.hbs') ?? '';
  texts.set('card.hbs', before.replace(masthead, `${masthead}${line?.text}`));
  const templates = { ...built, texts };
  const html = await render('card.hbs', counted(card), templates);
  expect(html).toContain(`<p class="count">${card.settings.length}</p>`);
  await expect(render('card.hbs', card, templates)).rejects.toThrow('settingCount');
});
