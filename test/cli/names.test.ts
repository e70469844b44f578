import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { cardModel } from '../../src/press/card/model.ts';
import { unitMatter } from '../../src/press/site/unit-model.ts';
import { examineFile } from '../../src/project/examine-file.ts';
import { openProject } from '../../src/project/project.ts';
import { folderWith } from '../project/folder.ts';
import { isQuick } from '../suite/part.ts';
import { gaugeleaf } from './console.ts';

// However a name is written, every command understands the same by it.

const file = 'orlo-t71-wexcombe-six.md';
const demo = readFileSync(new URL(`../../sheets/${file}`, import.meta.url), 'utf8');

const record = `gaugeleaf-record: 1
sheet: orlo-t71-wexcombe-six
revision: 2
serial: "0417"
date: 2026-10-03
by: A. Setter
settings:
  float-level: { found: 13/64 in, left: 13/64 in, with: caliper }
`;

/** Everything that the commands say of a sheet, by command; what stands in it as written is left out. */
async function saidOf(text: string, entry = record): Promise<Readonly<Record<string, unknown>>> {
  const cwd = folderWith({
    'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Settings\n',
    [`sheets/${file}`]: text,
    'sheets/records/orlo-t71-wexcombe-six-0417.yaml': entry,
  });
  const said: Record<string, unknown> = {};
  const path = `sheets/${file}`;
  const record = ['record', 'sheets/records/orlo-t71-wexcombe-six-0417.yaml'];
  const commands = [
    ['check'],
    ['order', path, '--text'],
    ['work', path],
    ['draw', path],
    ['export', '--format', 'csv'],
    ['sources', path],
    record,
  ];
  for (const argv of commands) {
    const { status, out, err } = await gaugeleaf(argv, { cwd });
    // A record tells the names of what it leaves out as the sheet writes them.
    const told = out.replace(/Not in the record:[\s\S]*/, '');
    said[argv[0] ?? ''] = { status, out: told, err };
  }
  said.drawings = readdirSync(join(cwd, 'print')).map((name) => [
    name,
    readFileSync(join(cwd, 'print', name), 'utf8'),
  ]);
  const project = openProject(cwd, cwd);
  const read = examineFile(project, join(cwd, path));
  if (!read.ok) throw new Error(read.refused.message);
  const { sheet } = read;
  const card = cardModel(sheet, [], null, {
    paper: 'letter',
    draft: false,
    picture: null,
    capHeights: new Map(),
    readings: null,
  });
  said.card = printed(card);
  said.page = printed(
    unitMatter({ sheet, findings: [] }, 1, {
      picture: null,
      texts: new Map(),
      facts: { altitude: null },
      pages: new Set(),
    }),
  );
  return said;
}

/** A model without its rows' own keys, which are the names as the sheet writes them. */
function printed(model: unknown): unknown {
  return JSON.parse(
    JSON.stringify(model, (key, value) => (key === 'name' || key === 'anchor' ? undefined : value)),
  );
}

let plain: Readonly<Record<string, unknown>>;
beforeAll(async () => {
  plain = await saidOf(demo);
});

const respelled: readonly (readonly [string, string | RegExp, string])[] = [
  ['a kind with a capital', 'kind: carburetor', 'kind: Carburetor'],
  ['a kind in capitals and blanks', 'kind: carburetor', 'kind: " CARBURETOR "'],
  ['a key in words', '  float-level:\n', '  Float Level:\n'],
  ['a key with an underscore', '  unloader:\n', '  UNLOADER:\n'],
  ['a key that is an alias', '  idle-vacuum:\n', '  idle_vacuum:\n'],
  ['a mark in words', ':value[float-level]', ':value[Float Level]'],
  ['a mark with an underscore', ':value[fast-idle-gap]', ':value[fast_idle_gap]'],
  ['a feature in words', 'two-barrel, downdraft', 'Two Barrel, DOWNDRAFT'],
  ['a feature with an underscore', 'fast-idle-cam, unloader]', 'fast_idle_cam, Unloader]'],
  ['a hazard with an underscore', /hazard=gasoline-vapor/g, 'hazard=Gasoline_Vapor'],
  ['a hazard in the other word for the key', /hazard=gasoline-vapor/g, 'hazards=gasoline-vapor'],
  ['a hazard in capitals', /hazard=carbon-monoxide/g, 'hazard=CARBON-MONOXIDE'],
  ['a source in a capital', /m48 p\./g, 'M48 p.'],
  ['a source in a capital, once', 'from: b17 p. 3', 'from: B17 p. 3'],
  ['a source in a capital where it differs', 'from: b17 p. 2', 'from: B17 p. 2'],
  ['a state in capitals', /:state\[(\w+) (\w+)\]/g, ':state[$1: $2]'],
];

/** The demo written so; each of the spellings has to be there to be changed. */
function written(...spellings: typeof respelled): string {
  return spellings.reduce((text, [what, from, to]) => {
    const changed = text.replaceAll(from as string, to);
    expect(changed, what).not.toBe(text);
    return changed;
  }, demo);
}

/** How many spellings of the same place stand above this one. */
function turnOf(spelling: (typeof respelled)[number]): number {
  const above = respelled.slice(0, respelled.indexOf(spelling));
  return above.filter(([, from]) => String(from) === String(spelling[1])).length;
}

// One spelling at a time; the quick part has as many on one sheet as do not stand in each other's way.
const alone = respelled.map((one) => [one[0], [one]] as const);
const together = [0, 1].map(
  (at) =>
    [
      `the ${at === 0 ? 'first' : 'second'} spelling of each name`,
      respelled.filter((one) => turnOf(one) === at),
    ] as const,
);

test.each<readonly [string, typeof respelled]>(isQuick ? together : alone)(
  '%s is understood by every command as it is in plain',
  async (_, spellings) => {
    const said = await saidOf(written(...spellings));
    for (const [command, outcome] of Object.entries(plain)) {
      expect(said[command], command).toEqual(outcome);
    }
  },
);

test('an identifier of a heading in capitals and underscores', async () => {
  const named = (id: string) =>
    demo.replace(
      /^## (Choke unloader[^\n{]*?)(?: \{#[^}]*\})?$/m,
      `## Wide-open business {#${id}}`,
    );
  const [one, two] = [await saidOf(named('unloader')), await saidOf(named('UNLOADER'))];
  for (const command of Object.keys(one)) expect(two[command], command).toEqual(one[command]);
});

test.each(['Float Level', 'float_level', 'FLOAT-LEVEL', 'float level'])(
  'a record calls a setting `%s`',
  async (name) => {
    const said = await saidOf(demo, record.replace('float-level', name));
    expect(said.record).toEqual(plain.record);
  },
);

test.each([
  ['heater-flap', 'heater flap'],
  ['heater-flap', 'Heater Flap'],
  ['heater-flap', 'heater_flap'],
  ['Heater Flap', 'heater-flap'],
  ['heater_flap', 'heater flap'],
])('a setting `%s` that no kind knows, called `:value[%s]`', async (key, mark) => {
  const text = demo
    .replace(
      '\n  float-level:\n',
      `\n  ${key}: { value: 7/32 in, from: m48 p. 36 }\n  float-level:\n`,
    )
    .replace(':value[float-level]', `:value[${mark}] and :value[float-level]`);
  const said = await saidOf(text);
  for (const model of [said.card, said.page]) {
    expect(JSON.stringify(model)).not.toContain('not set');
    expect(JSON.stringify(model)).toContain('7/32 in');
  }
  expect(said.check).not.toMatchObject({ out: expect.stringMatching(/no setting `\S+` is given/) });
});

test('a kind is named to `draft` as on a sheet', async () => {
  const cwd = folderWith({ 'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Settings\n' });
  for (const kind of [
    'Carburetor',
    ' CARBURETOR',
    'Ignition Distributor',
    'ignition_distributor',
  ]) {
    const argv = ['draft', '--kind', kind, '--maker', 'Orlo', '--model', 'T71', '--features', ''];
    const { err } = await gaugeleaf(argv, { cwd });
    expect(err, kind).not.toContain('no kind of unit');
  }
});

describe('one setting under two names', () => {
  test.each([
    ['float-level', 'Float Level'],
    ['float-level', 'float_level'],
    ['Float Level', 'float-level'],
    ['unloader', 'choke-unloader'],
    ['heater-flap', 'Heater Flap'],
  ])('`%s` and `%s` are told at the second', async (first, second) => {
    const entry = (name: string) => `\n  ${name}: { value: 13/64 in, from: m48 p. 31 }`;
    const text = demo
      .replace(/\n {2}(?:float-level|unloader):\n(?: {4}[^\n]*\n)+?(?= {2}\S)/g, '\n')
      .replace('\nsettings:', `\nsettings:${entry(first)}${entry(second)}`);
    const cwd = folderWith({ [`sheets/${file}`]: text });
    const { status, out } = await gaugeleaf(['check', `sheets/${file}`, '--format', 'json'], {
      cwd,
    });
    expect(status).toBe(1);
    const found = JSON.parse(out).findings.filter(
      ({ name }: { name: string }) => name === 'setting-repeated',
    );
    expect(found).toHaveLength(1);
    expect(found[0].message).toContain(`\`${first}\``);
    expect(found[0].message).toContain(`\`${second}\``);
    expect(found[0].line).toBe(
      text.slice(0, text.indexOf(`\n  ${second}:`) + 1).split('\n').length,
    );
  });

  test('a figure of its own that only sounds alike is not', async () => {
    const text = demo.replace(
      '\nsettings:',
      '\nsettings:\n  idle-speed-in-drive: { value: 450 rpm, from: m48 p. 36 }',
    );
    const cwd = folderWith({ [`sheets/${file}`]: text });
    const { out } = await gaugeleaf(['check', `sheets/${file}`], { cwd });
    expect(out).not.toContain('setting-repeated');
  });
});
