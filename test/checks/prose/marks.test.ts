import { describe, expect, it } from 'vitest';
import { examine } from '../../../src/checks/list.ts';
import { exampleContext } from '../examples.ts';
import { fronts } from './stand.ts';

/** Ways in which marks are mistyped; each has to be told once, whatever check says it. */
const values = [
  ': value[float-level]',
  'value[float-level]',
  ':value [float-level]',
  ':values[float-level]',
  ':value(float-level)',
  ':value{float-level}',
  '::value[float-level]',
  '[value:float-level]',
  '[value: float-level]',
  '[:value float-level]',
  ';value[float-level]',
  ':value:[float-level]',
  'value:[float-level]',
  ':vaule[float-level]',
  'vaule[float-level]',
  ':value[float-level',
  ':value float-level]',
  ':value[float-level)',
  '`:value[float-level]`',
  ':value<float-level>',
  '{value: float-level}',
  ': value [float-level]',
  ':value[]',
  ':val[float-level]',
];
const states = [
  ': state[cover inverted]',
  'state[cover inverted]',
  ':state [cover inverted]',
  ':states[cover inverted]',
  ':state(cover inverted)',
  ':state{cover inverted}',
  '::state[cover inverted]',
  '[state:cover inverted]',
  '[state: cover inverted]',
  ';state[cover inverted]',
  ':state[cover inverted',
  ':state cover inverted]',
  ':sate[cover inverted]',
  '`:state[cover inverted]`',
];

const places: readonly (readonly [string, (mark: string) => string])[] = [
  ['a step', (mark) => `## Float level\n\n1. Pass the gauge ${mark} now.\n`],
  ['a paragraph', (mark) => `## Float level\n\nThe gauge is ${mark} here.\n`],
  ['a heading', (mark) => `## Float level\n\n### Gauge ${mark}\n`],
  ['a table', (mark) => `## Float level\n\n| what | size |\n| --- | --- |\n| gauge | ${mark} |\n`],
  ['notes', (mark) => `## Notes\n\n- The gauge is ${mark} there.\n`],
  [
    'a caution',
    (mark) => `## Float level\n\n:::caution{hazard=compressed-air}\nKeep off ${mark} now.\n:::\n`,
  ],
  ['a quote', (mark) => `## Float level\n\n> The gauge is ${mark} there.\n`],
  ['bold words', (mark) => `## Float level\n\n1. Pass **the gauge ${mark} now**.\n`],
];

const reading = new Set([
  'mark-broken',
  'value-undefined',
  'state-unknown',
  'directive-unknown',
  'message-broken',
]);

function told(body: string): readonly string[] {
  const text = `${fronts.downdraft}---\n\n# Prose\n\n${body}`;
  const { findings } = examine(text, 'sheets/prose.md', exampleContext());
  return findings
    .filter(({ check }) => reading.has(check))
    .map(({ check, span }) => `${check}: ${text.slice(span.start, span.end)}`);
}

describe('marks that are none', () => {
  for (const [place, body] of places) {
    it(`tells every one of them once in ${place}`, () => {
      const missed = [...values, ...states]
        .map((mark) => [mark, told(body(mark))] as const)
        .filter(
          ([mark, found]) => !(place === 'a table' && mark.includes('|')) && found.length !== 1,
        )
        .map(([mark, found]) => `${mark} -> ${found.join('; ') || 'nothing'}`);
      expect(missed).toEqual([]);
    });
    it(`says nothing of right marks and plain words in ${place}`, () => {
      const quiet = [
        ':value[float-level]',
        ':state[cover inverted]',
        ':Value[Float Level]',
        '\\:value[float-level]',
        'the value (in inches)',
        'the state of the art',
        'value: see below',
        'a valve [needle]',
        'the value [1]',
        'value for money (float level apart)',
        'states (three of them)',
      ];
      expect(quiet.filter((words) => told(body(words)).length > 0)).toEqual([]);
    });
  }
});
