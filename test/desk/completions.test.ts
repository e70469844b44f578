import { describe, expect, test } from 'vitest';
import { completions } from '../../src/desk/completions.ts';
import { retyped } from '../../src/desk/document.ts';
import { opened } from './opened.ts';

const head = `---
gaugeleaf: 1
sheet: orlo-f27
title: Orlo F27
unit:
  kind: carburetor
  maker: Orlo
  model: F27
  features: [single-barrel, downdraft, pump]
sources:
  m48: { title: Manual, kind: manual, year: 1948 }
`;

const body = `---

# Orlo F27

## Float level

1. Pass the gauge under the free end: :value[float-level].
`;

function labels(marked: string): readonly string[] {
  const { document, offset } = opened(marked);
  return completions(document, offset).map(({ label }) => label);
}

/** The text once the completion of that label is taken. */
function taken(marked: string, label: string): string {
  const { document, offset } = opened(marked);
  const found = completions(document, offset).find((each) => each.label === label);
  if (found === undefined) throw new Error(`no completion ${label}`);
  const { span, text } = found.edit;
  return document.text.slice(0, span.start) + text + document.text.slice(span.end);
}

describe('in the front matter', () => {
  test.each([
    ['a key of the sheet', `---\nga|`, 'gaugeleaf'],
    ['a key of the sheet below others', `${head}set|\n${body}`, 'settings'],
    ['a key of the unit', `---\nunit:\n  kind: carburetor\n  thr|\n${body}`, 'throttle-bore'],
    ['a kind', `---\nunit:\n  kind: carb|\n${body}`, 'carburetor'],
    ['a feature', head.replace('pump]', 'pump, unl|]') + body, 'unloader'],
    [
      'a feature, block list',
      `---\nunit:\n  kind: carburetor\n  features:\n    - pump\n    - unl|\n${body}`,
      'unloader',
    ],
    ['a setting', `${head}settings:\n  float|\n${body}`, 'float-drop'],
    ['a setting on an empty line', `${head}settings:\n  |\n${body}`, 'float-drop'],
    ['a key of a setting', `${head}settings:\n  float-level:\n    val|\n${body}`, 'value'],
    [
      'a key of a setting in brackets',
      `${head}settings:\n  float-level: { value: 1/4 in, al| }\n${body}`,
      'also',
    ],
    ['a source', `${head}settings:\n  float-level:\n    from: |\n${body}`, 'm48'],
    [
      'a source in a list',
      `${head}settings:\n  float-level:\n    from: [m48 p. 3, m|]\n${body}`,
      'm48',
    ],
    [
      'a page used so far',
      `${head}settings:\n  float-level:\n    value: 13/64 in\n    from: m48 p. 31\n  float-drop:\n    from: |\n${body}`,
      'm48 p. 31',
    ],
    [
      'a gauge near what is typed',
      `${head}settings:\n  float-level:\n    value: 0.136|\n${body}`,
      'No. 29 drill',
    ],
    [
      'a unit behind what is typed',
      `${head}settings:\n  float-level:\n    value: 13/64|\n${body}`,
      '13/64 in',
    ],
    [
      'a drill by number',
      `${head}settings:\n  unloader:\n    value: No. 29|\n${body}`,
      'No. 29 drill',
    ],
    [
      'the same in millimeters',
      `${head}settings:\n  float-level:\n    value: 13/64 in\n    also: [|]\n${body}`,
      '5.16 mm',
    ],
    ['a choice', `${head}status: |\n${body}`, 'proof'],
    ['what is to be said', `${head}settings:\n  float-level:\n    cover: |\n${body}`, 'inverted'],
    [
      'a part a rule needs',
      `${head}work:\n  float-level:\n    needs:\n      |\n${body}`,
      'throttle',
    ],
    [
      'a condition of that part',
      `${head}work:\n  float-level:\n    needs:\n      throttle: |\n${body}`,
      'shut',
    ],
  ])('%s', (_, marked, label) => {
    expect(labels(marked)).toContain(label);
  });

  test('a setting comes with what must be said of it, and the value to write', () => {
    expect(taken(`${head}settings:\n  float-l|\n${body}`, 'float-level')).toContain(
      '\n  float-level:\n    value: \n    gasket: \n    at: \n    from: \n',
    );
  });

  test('what is there already is not offered', () => {
    const marked = `${head}settings:\n  float-drop:\n    value: 1 in\n  |\n${body}`;
    expect(labels(marked)).not.toContain('float-drop');
    expect(labels(marked)).toContain('float-level');
  });

  test('a key before its colon changes only itself', () => {
    expect(
      taken(`${head}settings:\n  float-l|: { value: 1/4 in }\n${body}`, 'float-drop'),
    ).toContain('settings:\n  float-drop: { value: 1/4 in }\n');
  });

  test('a value right behind its colon gets a blank', () => {
    expect(taken(`${head}status:|\n${body}`, 'proof')).toContain('\nstatus: proof\n');
  });
});

describe('in the work', () => {
  const whole = (line: string) =>
    `${head}settings:\n  float-level:\n    value: 13/64 in\n    from: m48\n---\n\n# Orlo F27\n\n## Float level\n\n${line}\n`;
  test.each([
    ['a setting in a mark', whole('1. Measure :value[|'), 'float-level'],
    ['a setting in a closed mark', whole('1. Measure :value[flo|].'), 'float-level'],
    ['a state', whole('1. Off. :state[gas|]'), 'cover-gasket off'],
    ['a mark of its own', whole('1. Off. :|'), 'cover-gasket off'],
    ['a hazard', whole(':::warning{hazard=|}'), 'gasoline-vapor'],
    ['a safety message', whole(':::|'), ':::warning{hazard=gasoline-vapor}'],
    ['a heading', whole('1. A step.\n\n## |'), 'Pump stroke'],
    [
      'the next step',
      whole('1. A step.\n|'),
      'Keep the gauge level and let the float hang by itself.',
    ],
  ])('%s', (_, marked, label) => {
    if (label.startsWith('Keep')) expect(labels(marked).length).toBeGreaterThan(0);
    else expect(labels(marked)).toContain(label);
  });

  test('a mark is closed once', () => {
    expect(taken(whole('1. Measure :value[|'), 'float-level')).toContain(':value[float-level]\n');
    expect(taken(whole('1. Measure :value[f|].'), 'float-level')).toContain(':value[float-level].');
  });
});

test('while a letter is not read yet, completion goes by the sheet as it was before', () => {
  const before = opened(`${head}settings:\n  float-level:\n    value: 13/64 in\n${body}`).document;
  const marked = `${head}settings:\n  float-level:\n    value: 13/64 in\n    from: |\n${body}`;
  const offset = marked.indexOf('|');
  const document = retyped(before, marked.replace('|', ''));
  expect(completions(document, offset).map(({ label }) => label)).toContain('m48');
});
