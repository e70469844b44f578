import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

const root = join(import.meta.dirname, '..', '..', '..');
const read = (...names: readonly string[]) => readFileSync(join(root, ...names), 'utf8');

/** What kind of file it is: which commands read it. */
export type Sort = 'sheet' | 'project' | 'record' | 'list' | 'print';

/** A file of a sound project. */
export interface Target {
  readonly name: string;
  readonly sort: Sort;
  readonly text: string;
}

const variant = `---
gaugeleaf: 1
sheet: variant
based-on: dunnow-c31-tollgarth-eight
title: A later one
fits:
  - { marque: Tollgarth, model: Eight, years: 1951-1953 }
revision: 1
date: 2026-10-03
status: draft
settings:
  float-level: { value: 7/32 in, from: m48 p. 31 }
---
`;

const list = `Maker,Model,Float level (in),Float level (mm),Idle mixture,Car,Years
Orlo,F27,13/64,5.16,1-1/4 turns out,Wexcombe Four,1947-1949
Orlo,F28,7/32,5.56,"1 1/2, each",Wexcombe Six,1950
Dunnow,C31,0.203,5.16,1-3/8,Tollgarth,
`;

const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 40"><title>Bowl</title>
<defs><g id="a"><rect width="10" height="10" fill="#333"/></g></defs><use href="#a" x="5"/>
<path d="M1 1L9 9" stroke="black" style="fill:none"/><text x="2" y="20">Bowl</text></svg>
`;

const edition = `gaugeleaf-edition: 1
title: Sheets for the Bench
club: Wexcombe Bench Register
edition: first
year: 2026
date: 2026-11-20
paper: half-letter
card-paper: letter
altitude: 1350 ft
wire-gauge: imperial
kit:
  - drill index 1-60
  - leaf set 0.0015-0.025 in
introduction: |
  What these sheets are, *and* what they are not.
`;

/** Files of every sort that is read, as found right. */
export function targets(): readonly Target[] {
  const sheets = readdirSync(join(root, 'sheets')).filter((name) => name.endsWith('.md'));
  const record = readdirSync(join(root, 'sheets', 'records'))[0] ?? '';
  return [
    ...sheets.map(
      (name): Target => ({ name: `sheets/${name}`, sort: 'sheet', text: read('sheets', name) }),
    ),
    { name: 'sheets/variant.md', sort: 'sheet', text: variant },
    { name: 'edition.yaml', sort: 'project', text: edition },
    {
      name: 'sources.yaml',
      sort: 'project',
      text: 'shared:\n  title: Shared Paper\n  kind: manual\n  year: 1950\n',
    },
    {
      name: 'kinds/rig.yaml',
      sort: 'project',
      text: read('src', 'kinds', 'ignition-distributor.yaml').replace(/^kind: .*$/m, 'kind: rig'),
    },
    { name: `sheets/records/${record}`, sort: 'record', text: read('sheets', 'records', record) },
    { name: 'list.csv', sort: 'list', text: list },
    { name: 'sheets/pictures/bowl.svg', sort: 'print', text: svg },
    { name: 'templates/wording.yaml', sort: 'print', text: read('templates', 'wording.yaml') },
    {
      name: 'templates/club.css',
      sort: 'print',
      text: '.card { color: #222; }\n@page { margin: 9mm }\n',
    },
    {
      name: 'templates/pages/unit.hbs',
      sort: 'print',
      text: read('templates', 'pages', 'unit.hbs'),
    },
  ];
}

/** A folder for one case, with the file that is altered and what it needs around it. */
export function projectWith(all: readonly Target[], altered: Target, bytes: Uint8Array): string {
  const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-fuzz-'));
  const write = (name: string, content: string | Uint8Array) => {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), content);
  };
  write('edition.yaml', edition);
  const needs = neededBy(altered);
  for (const { name, text } of all) if (needs(name)) write(name, text);
  if (altered.sort === 'print') {
    write(
      'sheets/shown.md',
      (all[0]?.text ?? '').replace('\n## ', '\n![A bowl](pictures/bowl.svg)\n\n## '),
    );
  }
  write(altered.name, bytes);
  return folder;
}

/** Which other files a case reads: as few as say something, since there are thousands of cases. */
function neededBy({ name, sort }: Target): (other: string) => boolean {
  if (sort === 'record')
    return (other) =>
      name.includes(other.slice('sheets/'.length, -'.md'.length)) && other.endsWith('.md');
  if (sort === 'print') return (other) => other.startsWith('sheets/pictures/');
  if (name.endsWith('variant.md'))
    return (other) => other.endsWith('dunnow-c31-tollgarth-eight.md');
  if (sort === 'project')
    return (other) =>
      other.endsWith('dunnow-c31-tollgarth-eight.md') || other.startsWith('sources');
  return () => false;
}

/** Takes a case's folder away. */
export function remove(folder: string): void {
  rmSync(folder, { recursive: true, force: true });
}
