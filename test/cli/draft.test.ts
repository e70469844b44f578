import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { chosenFeatures } from '../../src/import/draft-choices.ts';
import { planDraft } from '../../src/import/draft-plan.ts';
import { draftSheet } from '../../src/import/draft-sheet.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { examineText } from '../../src/project/examine-file.ts';
import { openProject } from '../../src/project/project.ts';
import { folderWith } from '../project/folder.ts';
import { runs } from '../suite/part.ts';
import { gaugeleaf } from './console.ts';

const kind = builtInKinds().get('carburetor');
if (kind === undefined) throw new Error('there is no kind carburetor');

const order = {
  kind,
  maker: 'Orlo',
  model: 'T71',
  id: 'orlo-t71',
  date: '2026-10-03',
};

function findingsOf(text: string) {
  const root = folderWith();
  const project = openProject(root, root);
  return examineText(project, join(root, 'orlo-t71.md'), 'orlo-t71.md', text).findings;
}

/** Any set of features that can stand together, one at least of each set that needs one. */
const validFeatures = fc
  .tuple(
    fc.shuffledSubarray([...kind.features.keys()]),
    fc.array(fc.nat(), { minLength: 9, maxLength: 9 }),
  )
  .map(([wish, picks]) => {
    const chosen: string[] = [];
    const fits = (name: string) =>
      !chosen.some(
        (other) =>
          kind.features.get(name)?.excludes.includes(other) ||
          kind.features.get(other)?.excludes.includes(name),
      );
    kind.oneOf.forEach((set, index) => {
      const name = set[(picks[index] ?? 0) % set.length];
      if (name !== undefined && fits(name)) chosen.push(name);
    });
    for (const name of wish) if (!chosen.includes(name) && fits(name)) chosen.push(name);
    return chosen;
  });

describe('a draft', () => {
  it('passes the schema and has no findings but its blanks, whatever the features', () => {
    const root = folderWith();
    const project = openProject(root, root);
    fc.assert(
      fc.property(validFeatures, (features) => {
        const chosen = chosenFeatures(features.join(', '), kind);
        expect(chosen.ok && chosen.value).toHaveLength(features.length);
        const text = draftSheet({ ...order, features });
        const { sheet, findings } = examineText(
          project,
          join(root, 'orlo-t71.md'),
          'orlo-t71.md',
          text,
        );
        expect(findings.filter((finding) => finding.check !== 'blank-to-fill')).toEqual([]);
        // One more for the words that the draft leaves to its editor.
        expect(findings.length).toBe(text.split('fill in').length);
        // Every heading once, in the kind's working order.
        const at = sheet.operations.map((each) =>
          [...kind.operations.keys()].indexOf(each.known?.name ?? ''),
        );
        expect(at).toEqual([...new Set(at)].sort((a, b) => a - b));
        expect(at).not.toContain(-1);
      }),
      { numRuns: runs(60) },
    );
  }, 120_000);

  it('has what the features ask for, and what every unit goes through', () => {
    const { settings, operations } = planDraft(kind, [
      'two-barrel',
      'downdraft',
      'pump',
      'unloader',
    ]);
    expect(settings).toEqual(expect.arrayContaining(['float-level', 'pump-stroke', 'unloader']));
    expect(settings).not.toContain('metering-rods');
    const names = operations.map((each) => each.name);
    // Facts of the trade (common practice, no source): the unloader is set before the first start,
    // the baselines too, and the road test comes last.
    expect(names.indexOf('unloader')).toBeLessThan(names.indexOf('initial-idle'));
    expect(names.indexOf('initial-idle')).toBeLessThan(names.indexOf('first-start'));
    expect(names).toContain('idle-speed');
    expect(names.at(-1)).toBe('road-test');
  });

  it('keeps odd names as they are', () => {
    for (const [maker, model] of [
      ['Orlo: #1', '010'],
      ['on', 'null'],
      ['"Quoted"', "d'Or [x] *y*"],
      ['Ørlø', '½ & <b>'],
      ['-', '1e3'],
    ] as const) {
      const text = draftSheet({ ...order, maker, model, features: ['two-barrel', 'downdraft'] });
      const root = folderWith();
      const { sheet, findings } = examineText(
        openProject(root, root),
        join(root, 'orlo-t71.md'),
        'orlo-t71.md',
        text,
      );
      expect(sheet.unit.maker?.value).toBe(maker);
      expect(String(sheet.unit.model?.value)).toBe(model);
      expect(findings.filter((finding) => finding.check !== 'blank-to-fill')).toEqual([]);
    }
  });

  it('filled in, has no findings left', () => {
    const text = draftSheet({ ...order, features: ['two-barrel', 'downdraft'] })
      .replace(/How to tell it .* goes here\./, 'The tag has its number.')
      .replace('title: fill in', 'title: Wexcombe Six Workshop Manual, year: 1948')
      .replace(/(float-level:\n {4}value:) fill in/, '$1 13/64 in')
      .replace(/(idle-mixture:\n {4}value:) fill in/, '$1 1 turn out')
      .replace(/(idle-stop:\n {4}value:) fill in/, '$1 1/2 turn in after contact')
      .replace(/(flange-torque:\n {4}value:) fill in/, '$1 12 ft-lb')
      .replace(/(fuel-pressure:\n {4}value:) fill in/, '$1 4.5 psi')
      .replace(/(idle-speed:\n {4}value:) fill in/, '$1 450 rpm')
      .replace(/(idle-vacuum:\n {4}value:) fill in/, '$1 19 inHg')
      .replace('gasket: fill in', 'gasket: removed')
      .replace('at: fill in', 'at: free end of the float');
    expect(findingsOf(text)).toEqual([]);
  });
});

describe('gaugeleaf draft', () => {
  const argv = [
    'draft',
    '--maker',
    'Orlo',
    '--model',
    'T71',
    '--features',
    'Two barrels, downdraft',
  ];

  it('writes a sheet into the project and never over another', async () => {
    const cwd = folderWith({ 'sheets/other.md': '' });
    const first = await gaugeleaf(argv, { cwd });
    expect(first).toMatchObject({ status: 0, out: 'sheets/orlo-t71.md\n' });
    const text = readFileSync(join(cwd, 'sheets/orlo-t71.md'), 'utf8');
    expect(text).toContain('sheet: orlo-t71\n');
    expect(text).toContain('date: 2026-10-03\n');
    expect(text).toContain('features: [two-barrel, downdraft]\n');
    const second = await gaugeleaf([...argv, '--date', '2026-11-01'], { cwd });
    expect(second.status).toBe(2);
    expect(second.err).toContain('sheets/orlo-t71.md is there already');
    expect(readFileSync(join(cwd, 'sheets/orlo-t71.md'), 'utf8')).toBe(text);
  });

  it('can write elsewhere, and to standard output', async () => {
    const cwd = folderWith();
    expect((await gaugeleaf([...argv, '--out', 'my-unit'], { cwd })).out).toBe('my-unit.md\n');
    expect(readFileSync(join(cwd, 'my-unit.md'), 'utf8')).toContain('sheet: my-unit\n');
    expect((await gaugeleaf([...argv, '--out', '-'], { cwd })).out).toContain('sheet: orlo-t71\n');
    const bad = await gaugeleaf([...argv, '--out', 'My Unit.md'], { cwd });
    expect(bad.status).toBe(2);
    expect(existsSync(join(cwd, 'My Unit.md'))).toBe(false);
  });

  it('asks on a terminal for what is missing, again where an answer will not do', async () => {
    const ask = async (answers: readonly string[]) => {
      const stdin = Object.assign(new PassThrough(), { isTTY: true });
      const stderr = new PassThrough();
      let talk = '';
      const left = [...answers];
      stderr.on('data', (chunk: Buffer) => {
        talk += chunk.toString();
        if (!/: $/.test(talk)) return;
        const answer = left.shift();
        if (answer === undefined) stdin.end();
        else stdin.write(`${answer}\n`);
      });
      let out = '';
      const cwd = folderWith();
      const status = await run(['draft', '--maker', 'Orlo', '--out', '-'], {
        stdout: {
          write: (text) => {
            out += text;
          },
        },
        stderr,
        stdin,
        env: {},
        cwd,
        today: () => '2026-10-03',
      });
      return { status, out, talk };
    };
    const done = await ask(['carb', 'carburetor', '', 'T71', 'two-barel', 'two-barrel, downdraft']);
    expect(done.status).toBe(0);
    expect(done.talk).toContain('there is no kind of unit called carb');
    expect(done.talk).toContain('the model has to be a name');
    expect(done.talk).toContain('perhaps two-barrel was meant');
    expect(done.talk).toContain('automatic-choke');
    expect(done.out).toContain('features: [two-barrel, downdraft]');
    const cut = await ask(['carburetor', 'T71']);
    expect(cut.status).toBe(2);
    expect(cut.out).toBe('');
    expect(cut.talk).toContain('no answer was given; nothing was written');
  });

  it('says what is missing or cannot be', async () => {
    const cwd = folderWith();
    const err = async (...more: string[]) => {
      const kind = more.includes('--kind') ? [] : ['--kind', 'carburetor'];
      const outcome = await gaugeleaf(['draft', ...kind, ...more], { cwd });
      expect(outcome.status).toBe(2);
      return outcome.err;
    };
    const named = ['--maker', 'Orlo', '--model', 'T71', '--features'];
    const bare = await gaugeleaf(['draft', '--maker', 'Orlo'], { cwd });
    expect(bare.err).toContain('a new sheet needs --kind, --model, --features');
    expect(await err('--maker', 'Orlo')).toContain('a new sheet needs --model, --features');
    expect(await err(...named, 'two-barel,downdraft')).toContain('perhaps two-barrel was meant');
    expect(await err(...named, 'two-barrel,single-barrel,downdraft')).toContain('at once');
    expect(await err(...named, 'two-barrel')).toContain('downdraft, updraft, side-draft');
    expect(await err(...named, 'two-barrel,downdraft', '--kind', 'carburettor')).toContain(
      'perhaps carburetor was meant',
    );
    expect(await err(...named, 'two-barrel,downdraft', '--date', '3.10.2026')).toContain(
      'is no date',
    );
  });
});
