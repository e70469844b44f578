import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { tablesModule } from '../../src/build/tables.mjs';
import { allChecks, explainCheck } from '../../src/checks/index.ts';
import { runChecks } from '../../src/checks/run.ts';
import yearsReversed from '../../src/checks/years-reversed.ts';
import { readKind, tryKind } from '../../src/kinds/index.ts';
import { render } from '../../src/press/html/render.ts';
import { readTemplates } from '../../src/project/templates.ts';
import { readSheet } from '../../src/sheet/index.ts';
import { exampleContext, exampleFile, wholeSheet } from '../checks/examples.ts';
import { builtInTemplates } from '../press/stand.ts';
import { change, markedBlocks, root, show } from './marked-blocks.ts';

const page = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
const blocks = markedBlocks(page);

/** The one block with that mark, and the path that stands beside the mark. */
function example(mark: string): { readonly path: string; readonly text: string } {
  const [block, ...more] = blocks.filter((each) => each.mark === mark);
  if (block === undefined || more.length > 0) throw new Error(`one block marked ${mark} is wanted`);
  return { path: block.options.get('') ?? '', text: block.text };
}

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-guide-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Puts an example where the guide says it goes, in the test's own folder. */
function put({ path, text }: { readonly path: string; readonly text: string }): void {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), text);
}

describe('the example of a check', () => {
  test('is one of the program’s own', () => {
    expect(allChecks).toContain(yearsReversed);
  });

  test.each(yearsReversed.examples.map((each) => [each.name, each] as const))('%s', (_, each) => {
    const context = exampleContext();
    const { kinds, gauges, wireGauge } = context;
    const text = wholeSheet(each.sheet);
    const sheet = readSheet(text, exampleFile, { kinds, gauges, wireGauge });
    const findings = runChecks(allChecks, sheet, context);
    expect(
      findings.map(({ check, severity, span, message, fix }) => ({
        check,
        severity,
        at: text.slice(span.start, span.end),
        message,
        fix,
      })),
    ).toEqual(each.expect.map((one) => ({ check: 'years-reversed', severity: 'error', ...one })));
  });

  test('explains itself', () => {
    expect(explainCheck(yearsReversed)).toContain('1950-1948 ends 2 years before it begins');
  });
});

test('the example of a gauge is compiled into the tables', () => {
  const { path, text } = example('row');
  cpSync(join(root, 'src/gauges/data'), join(folder, 'src/gauges/data'), { recursive: true });
  const table = readFileSync(join(folder, path), 'utf8');
  expect(table.startsWith('# ')).toBe(true);
  const before = tablesModule(folder);
  writeFileSync(join(folder, path), `${table.trimEnd()}\n${text}`);
  const after = tablesModule(folder);
  // 0.027 in is 685800 nanometers, to three places.
  expect(before).not.toContain('0.027 in\\t685800\\t3\\tin');
  expect(after).toContain('0.027 in\\t685800\\t3\\tin');
});

describe('the example of a kind of unit', () => {
  test('is a kind', () => {
    const { path, text } = example('kind');
    const { kind, problems } = readKind(text, path);
    expect(problems).toEqual([]);
    expect(kind?.settingNamed('Breaker gap')?.name).toBe('point-gap');
    expect(kind?.parts.size).toBeGreaterThan(2);
    expect(kind?.settings.get('point-gap')?.symptoms.size).toBe(2);
    expect(kind?.operations.get('point-gap')?.drawings).toHaveLength(1);
    expect([...(kind?.verbs.keys() ?? [])]).toContain('meet');
    expect(tryKind(text)).toEqual([]);
  });

  test('drafts a sheet that has only blanks, and finds an unusual gap on it', async () => {
    put(example('kind'));
    mkdirSync(join(folder, 'sheets'));
    writeFileSync(join(folder, 'edition.yaml'), 'gaugeleaf-edition: 1\ntitle: Distributors\n');
    const features = '--features contact-points,vacuum-advance';
    await show(`gaugeleaf draft --kind distributor --maker Tarn --model B17 ${features}`, folder);
    const blank = JSON.parse((await show('gaugeleaf check --format json', folder)).text) as {
      findings: { name: string }[];
    };
    expect(new Set(blank.findings.map(({ name }) => name))).toEqual(new Set(['blank-to-fill']));

    const sheet = join(folder, 'sheets/tarn-b17.md');
    change(sheet, 'title: fill in', 'title: Leaflet, year: 1957');
    change(sheet, 'point-gap:\n    value: fill in', 'point-gap:\n    value: 0.15 in');
    change(sheet, 'advance-start:\n    value: fill in', 'advance-start:\n    value: 4 inHg');
    const { text } = await show('gaugeleaf check', folder);
    expect(text).toMatch(/warning {2}size-unusual/);
    expect(text).toContain('0.15 in');
    expect(text).toContain('1 warning in 1 sheet');

    change(sheet, ' :state[cap off]', '');
    change(sheet, 'Lift the cap off.', 'Look at the cap.');
    expect((await show('gaugeleaf check', folder)).text).toContain('cap on');
  });
});

test('the example of a template takes the place of the built-in one and of no other', async () => {
  const overlay = example('template');
  put(overlay);
  const built = builtInTemplates();
  const laid = readTemplates(folder);
  const changed = [...laid.texts].filter(([name, text]) => built.texts.get(name) !== text);
  expect(changed).toEqual([['partials/cover.hbs', overlay.text]]);
  expect([...laid.fonts.keys()]).toEqual([...built.fonts.keys()]);
  const model: object = JSON.parse(
    readFileSync(join(root, 'test/press/golden/booklet-model.json'), 'utf8'),
  );
  const html = await render('booklet.hbs', model, laid);
  expect(html).toContain('<p class="issue">For members only, First edition</p>');
});

describe('what the guide speaks of', () => {
  test('rooms are those of src, in an order that the layers allow', () => {
    const named = [...page.matchAll(/^\| `src\/([a-z-]+)\/` \|/gm)].map(([, room = '']) => room);
    const rooms = readdirSync(join(root, 'src')).filter((room) => room !== 'generated');
    expect([...named].sort()).toEqual(rooms.sort());
    const layers = readFileSync(join(root, 'test/layers.test.ts'), 'utf8');
    const floors = /const floors[^=]*= \[([\s\S]*?)^\];/m.exec(layers)?.[1] ?? '';
    const order = [...floors.matchAll(/'([a-z-]+)'/g)].map(([, room = '']) => room);
    expect(named).toEqual([...order, 'build']);
  });

  test('files and folders are there', () => {
    // A list that is counted is held to the files by its own test.
    const text = page.replace(/^(`{3,})[\s\S]*?^\1$|`[^`]*NAME[^`]*`/gm, '');
    const paths = [...text.matchAll(/`((?:src|test|templates|schemas|docs)\/[\w./-]*)`/g)];
    const absent = new Set(
      paths.map(([, path = '']) => path).filter((path) => !existsSync(join(root, path))),
    );
    // Made by the build, so absent in a tree that has none yet.
    absent.delete('src/generated/');
    expect([...absent]).toEqual([]);
  });

  test('commands of npm are there', () => {
    const described: { scripts: Record<string, string> } = JSON.parse(
      readFileSync(join(root, 'package.json'), 'utf8'),
    );
    for (const [, name = ''] of page.matchAll(/npm run ([a-z]+)/g)) {
      expect(Object.keys(described.scripts)).toContain(name);
    }
  });
});
