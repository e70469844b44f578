import { describe, expect, test } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { lettersFor, readSheet, tasksOf } from '../../src/sheet/index.ts';

function tasks(settings: string, body: string) {
  const text = `---
gaugeleaf: 1
sheet: orlo-p29
unit: { kind: carburetor, maker: Orlo, model: P29, features: [single-barrel, downdraft] }
settings:
${settings}---

${body}`;
  const sheet = readSheet(text, 'orlo-p29.md', {
    kinds: builtInKinds(),
    gauges: gaugeBook(),
    wireGauge: null,
  });
  const { tasks: all, settings: numbered, numberOf } = tasksOf(sheet);
  return {
    tasks: all.map(({ number, operation }) => `${number} ${operation.heading.value}`),
    settings: numbered.map(({ number, setting }) => `${number} ${setting.name.value}`),
    numberOf,
  };
}

const level = '  float-level: 13/64 in\n';
const mixture = '  idle-mixture: 1 turn out\n';
const stop = '  idle-stop: 1/2 turn in after contact\n';

describe('one number a task', () => {
  test('a setting goes by the number of its task, and headings that are no work do not count', () => {
    const found = tasks(
      level,
      '## Identification\n\nBrass.\n\n## Strip\n\n1. Open.\n\n## Float level\n\n1. Set :value[float-level].\n',
    );
    expect(found.tasks).toEqual(['1 Strip', '2 Float level']);
    expect(found.settings).toEqual(['2 float-level']);
    expect([0, 1, 2].map(found.numberOf)).toEqual([null, 1, 2]);
  });

  test('two that one task makes get letters, in the order that its steps print them', () => {
    const found = tasks(
      mixture + stop,
      '## Initial idle\n\n1. Set :value[idle-stop].\n2. Set :value[idle-mixture].\n',
    );
    expect(found.settings).toEqual(['1a idle-stop', '1b idle-mixture']);
  });

  test('one that is made twice keeps the number of the first, whatever printed it before', () => {
    const found = tasks(
      `${level}  idle-speed: 500 rpm\n`,
      '## Strip\n\n1. Write down :value[idle-speed].\n\n## Float level\n\n1. Set :value[float-level].\n\n' +
        '## Idle speed\n\n1. Set :value[idle-speed].\n\n## Idle speed, again {#idle-speed}\n\n1. Set :value[idle-speed].\n',
    );
    expect(found.settings).toEqual(['2 float-level', '3 idle-speed']);
    expect(found.tasks[3]).toBe('4 Idle speed, again');
  });

  test('one that no task makes stands last, under a capital letter', () => {
    const found = tasks(
      `${stop}${mixture}${level}`,
      '## Float level\n\n1. Set :value[float-level].\n',
    );
    expect(found.settings).toEqual(['1 float-level', 'A idle-stop', 'B idle-mixture']);
  });

  test('a heading that the kind does not know is a task where it has steps, and none without', () => {
    const found = tasks(
      level,
      '## Polishing\n\n1. Polish.\n\n## History\n\nOld.\n\n## Float level\n\n1. Set.\n',
    );
    expect(found.tasks).toEqual(['1 Polishing', '2 Float level']);
  });

  test('letters go on behind z', () => {
    expect([0, 25, 26, 51, 52].map(lettersFor)).toEqual(['a', 'z', 'aa', 'az', 'ba']);
  });
});
