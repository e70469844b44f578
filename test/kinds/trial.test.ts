import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { kinds } from '../../src/generated/kinds.ts';
import { readKind, tryKind } from '../../src/kinds/index.ts';
import { gaugeleaf } from '../cli/console.ts';
import { folderWith } from '../project/folder.ts';

/** The guide's example of a kind: small, with parts, readings, states and a drawing. */
const page = readFileSync(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8');
const small = /<!-- kind [\s\S]*?```yaml\n([\s\S]*?)```/.exec(page)?.[1] ?? '';

/** What is told of the small kind with one text of it put in place of another. */
function planted(from: string, to: string) {
  const text = small.replace(from, () => to);
  expect(text, from).not.toBe(small);
  expect(readKind(text, 'x.yaml').problems).toEqual([]);
  return tryKind(text).map(({ span, message, fix }) => {
    expect(fix).toMatch(/^[a-z]/);
    const line = text.slice(0, span.start).split('\n').length;
    return `${text.split('\n')[line - 1]?.trim().split(':')[0]}: ${message}`;
  });
}

test('the kinds that come with the program have nothing idle', () => {
  for (const name of Object.keys(kinds)) {
    const file = new URL(`../../src/kinds/${name}.yaml`, import.meta.url);
    const text = readFileSync(file, 'utf8');
    expect(readKind(text, name).problems).toEqual([]);
    expect(tryKind(text)).toEqual([]);
  }
});

test('nor has the guide’s example', () => {
  expect(readKind(small, 'x.yaml').problems).toEqual([]);
  expect(tryKind(small)).toEqual([]);
});

describe('planted in a small kind', () => {
  test.each([
    [
      'a setting that no operation makes',
      'settings: [lock-turns, point-gap]',
      'settings: [point-gap]',
      ['lock-turns: no operation makes `lock-turns`'],
    ],
    [
      'a hazard that no operation meets',
      'hazards: [moving-parts]',
      'hazards: [pinch]',
      ['moving-parts: no operation meets the hazard `moving-parts`'],
    ],
    [
      'a need that nothing can meet',
      "cap: { is: 'off', because: the points lie under the cap }",
      'lamp: { is: lit, because: the points are dark }',
      [
        'lamp: no words of a step are read as bringing the `lamp` into what is needed here',
        'lamp: no words of a step are read as moving the `lamp`: it has no verb, phrase or marked step',
      ],
      '  engine:\n    label: engine\n    starts: stopped',
      '  lamp:\n    label: lamp\n    conditions: { lit: {}, dark: {} }\n  engine:\n    label: engine\n    starts: stopped',
    ],
    [
      'a need that nothing can break',
      "cap: { is: 'off', because: the points lie under the cap }",
      'lamp: { is: lit, because: the points are dark }',
      [
        'lamp: nothing can break this need: the `lamp` starts so, and nothing brings it out of that',
        'lamp: no words of a step are read as moving the `lamp`: it has no verb, phrase or marked step',
      ],
      '  engine:\n    label: engine\n    starts: stopped',
      '  lamp:\n    label: lamp\n    starts: lit\n    conditions: { lit: {}, dark: {} }\n  engine:\n    label: engine\n    starts: stopped',
    ],
    [
      'a condition that no step can reach',
      '      off: { aliases: [removed, aside] }',
      '      off: { aliases: [removed, aside] }\n      taped: {}',
      ['taped: no words of a step are read as bringing the `cap` to `taped`'],
    ],
    [
      'verbs that no part reads',
      'verbs:\n',
      'verbs:\n  prise: ["prise ~ up"]\n',
      ['prise: no part reads the verbs `prise`'],
    ],
    [
      'a phrase that says two states of one part',
      'phrases:\n',
      'phrases:\n  points closed: [rides on a lobe]\n',
      ['points on-peak: `rides on a lobe` says both `points closed` and `points on-peak`'],
    ],
    [
      'an alias of two conditions',
      'closed: { aliases: [shut, together] }',
      'closed: { aliases: [shut, wide open] }',
      ['on-peak: `wide open` says both `closed` and `on-peak` of the `points`'],
    ],
    [
      'a setting that is moved by what makes it',
      '      dwell: a wider gap opens the points sooner\n    steps',
      '      point-gap: the screw moves it\n    steps',
      ['point-gap: `point-gap` moves `point-gap`, which it makes itself'],
    ],
    [
      'rules of a heading that is no work',
      '  closing:\n    label: Closing\n    aliases: [putting on the cap]\n    explain: Close the unit before the engine is started.\n    stage: before-start',
      '  closing:\n    label: Closing\n    explain: Close the unit before the engine is started.\n    stage: any',
      [
        'after: `closing` stands anywhere and is no work, so its `after` is never looked at',
        'needs: `closing` stands anywhere and is no work, so its `needs` is never looked at',
      ],
    ],
    [
      'a rule about work that changes nothing',
      '    after: { point-gap: the points lie under the cap }',
      '    after: { gathering: tools are at hand }',
      ['after: `closing` comes after `gathering`, which makes, moves and needs nothing'],
      'operations:\n',
      'operations:\n  gathering: { label: Gathering, explain: Gather the tools., stage: bench, settings: [] }\n',
    ],
    [
      'a need that never holds',
      'engine: { is: running, because: the dwell is read while the shaft turns }',
      'engine: { is: running, because: the dwell is read while the shaft turns, while: { lamp: lit } }',
      [
        'engine: this need never holds: nothing brings the `lamp` into that state',
        'lamp: no words of a step are read as moving the `lamp`: it has no verb, phrase or marked step',
      ],
      '  engine:\n    label: engine\n    starts: stopped',
      '  lamp:\n    label: lamp\n    conditions: { lit: {}, dark: {} }\n  engine:\n    label: engine\n    starts: stopped',
    ],
    [
      'a need that nothing lifts',
      'engine: { is: running, because: the dwell is read while the shaft turns }',
      'engine: { is: running, because: the dwell is read while the shaft turns, unless-stated: [length] }',
      ['engine: nothing that `dwell` makes may be stated as length'],
    ],
  ])('%s', (_name, from, to, told, also = '', with_ = '') => {
    if (also === '') expect(planted(from, to)).toEqual(told);
    else {
      const first = small.replace(also, () => with_);
      expect(first).not.toBe(small);
      const text = first.replace(from, () => to);
      expect(readKind(text, 'x.yaml').problems).toEqual([]);
      expect(
        tryKind(text).map(
          ({ span, message }) =>
            `${text.slice(0, span.end).split('\n').at(-1)?.trim().split(':')[0]}: ${message}`,
        ),
      ).toEqual(told);
    }
  });

  test('a state of the engine that follows is reached; one that nothing brings about is not', () => {
    expect(
      planted('    follows: { points: { is: closed, because: the shaft turns } }\n', ''),
    ).toEqual([]);
    expect(planted('      - Stop the engine. :state[engine stopped]\n', '')).toEqual([]);
  });

  test('a kind that is wrong is told of that, and not tried', () => {
    expect(tryKind(small.replace('kind: distributor', 'kind: [}'))).toEqual([]);
    expect(
      tryKind(small.replace('{ point-gap: the points are set first }', '{ gap: first }')),
    ).toEqual([]);
  });
});

describe('`check` of the file of a kind', () => {
  const idle = small.replace('verbs:\n', 'verbs:\n  prise: ["prise ~ up"]\n');
  const folder = () =>
    folderWith({
      'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Settings\n',
      'kinds/distributor.yaml': idle,
      'elsewhere/distributor.yaml': idle,
      'kinds/sound.yaml': small.replace('kind: distributor', 'kind: sound'),
    });

  test.each(['kinds/distributor.yaml', 'elsewhere/distributor.yaml'])(
    '%s tells what of it is idle, with its place, and does not fail for it',
    async (path) => {
      const { status, out } = await gaugeleaf(['check', path], { cwd: folder() });
      expect(out).toContain('no part reads the verbs `prise`');
      expect(out).toMatch(/\d+:3 +warning +kind-idle/);
      expect(status).toBe(0);
    },
  );

  test('a sound one has nothing to tell', async () => {
    const { out, status } = await gaugeleaf(['check', 'kinds/sound.yaml'], { cwd: folder() });
    expect(out).not.toContain('kind-idle');
    expect(status).toBe(0);
  });
});
