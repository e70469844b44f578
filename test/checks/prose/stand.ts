import { examine } from '../../../src/checks/list.ts';
import { exampleContext } from '../examples.ts';

/** What ought to be said of a sentence's figure: a warning, a note that it is typed again, or nothing. */
export type Verdict = 'warned' | 'noted' | 'quiet';

/** A verdict, the sheet and the heading it stands under, the step, and the figure it is told at. */
export type Sentence = readonly [Verdict, keyof typeof fronts, string, string, string?];

const head = (kind: string, features: string): string => `---
gaugeleaf: 1
sheet: prose
title: Prose
unit:
  kind: ${kind}
  maker: Orlo
  model: F27
  features: [${features}]
fits:
  - { marque: Wexcombe, model: Four, years: 1947-1949 }
revision: 1
date: 2026-10-03
status: proof
sources:
  m48: { title: Wexcombe Four Workshop Manual, kind: manual, year: 1948 }
  b17: { title: Bulletin 17, kind: bulletin, year: 1949 }
settings:
`;

/** Front matters that the sentences are put under; no figure is of a real unit. */
export const fronts = {
  downdraft: `${head('carburetor', 'single-barrel, downdraft, pump')}  main-jet: { value: No. 47 drill, from: m48 p. 28 }
  float-level: { value: 13/64 in, at: free end of the float, cover: inverted, gasket: removed, from: m48 p. 31 }
  float-drop: { value: 23/32 in, at: free end of the float, from: m48 p. 31 }
  pump-stroke: { value: 17/64 in, link: middle hole, from: m48 p. 34 }
  choke-cover-index: { value: 1 notch rich, from: m48 p. 33 }
  unloader: { value: No. 29 drill, at: upper edge of the choke plate, from: m48 p. 33 }
  fast-idle-gap: { value: 0.028 in wire, at: throttle plate edge, from: m48 p. 34 }
  idle-mixture: { value: 1-1/4 turns out, from: m48 p. 40 }
  idle-stop: { value: 3/4 turn in after contact, from: m48 p. 40 }
  flange-torque: { value: 12 ft-lb, from: m48 p. 27 }
  fuel-pressure: { value: 3-1/2 psi, from: m48 p. 21 }
  fast-idle-speed: { value: 1425 rpm, cam-step: highest, temperature: hot, gear: neutral, from: m48 p. 35 }
  idle-speed: { value: 500 rpm, temperature: hot, gear: neutral, from: m48 p. 35 }
  idle-vacuum: { value: 18 inHg, from: m48 p. 35 }
`,
  'side-draft': `${head('carburetor', 'single-barrel, side-draft, constant-depression')}  jet-height: { value: 12 flats down, from: m48 p. 6 }
  fuel-level: { value: 18 mm, from: m48 p. 7 }
  idle-speed: { value: 750 ± 50 rpm, temperature: hot, gear: neutral, from: m48 p. 9 }
`,
  distributor: `${head('ignition-distributor', 'contact-points, centrifugal-advance, vacuum-advance')}  points-gap: { value: 0.016 in, from: m48 p. 50 }
  breaker-spring-tension: { value: 20 oz, from: m48 p. 50 }
  dwell: { value: 42°, from: m48 p. 51 }
  rotor-gap: { value: 0.012 in, from: m48 p. 51 }
  static-timing: { value: 8° BTDC, from: m48 p. 52 }
  timing: { value: 10° BTDC, from: m48 p. 52 }
  advance-start: { value: 400 rpm, from: m48 p. 53 }
  advance-maximum: { value: 12° distributor, from: m48 p. 53 }
  vacuum-start: { value: 5 inHg, from: m48 p. 53 }
  vacuum-maximum: { value: 7° distributor, from: m48 p. 53 }
  clamp-torque: { value: 9 ft-lb, from: m48 p. 54 }
  plug-gap: { value: 0.025 in, from: m48 p. 54 }
  plug-torque: { value: 18 ft-lb, from: m48 p. 54 }
`,
} as const;

const spoken = new Set(['prose-disagrees', 'number-typed', 'number-unplaced']);

/** What the checks of numbers in the text say of a sentence, and at which words. */
export function saidOf([, front, heading, step]: Sentence): readonly {
  check: string;
  at: string;
  message: string;
}[] {
  const text = `${fronts[front]}---\n\n# Prose\n\n## ${heading}\n\n${step}\n`;
  const { findings } = examine(text, 'sheets/prose.md', exampleContext());
  return findings
    .filter(({ check }) => spoken.has(check))
    .map(({ check, span, message }) => ({ check, at: text.slice(span.start, span.end), message }));
}

/** Why the checks do not say what the verdict asks for; null where they do. */
export function missed(sentence: Sentence): string | null {
  const [verdict, , , , figure = ''] = sentence;
  const said = saidOf(sentence);
  const shown = said.map(({ check, at }) => `${check} at "${at}"`).join(', ') || 'nothing';
  if (verdict === 'quiet') return said.length === 0 ? null : shown;
  const wanted = verdict === 'warned' ? 'prose-disagrees' : 'number-typed';
  const found = said.length === 1 && said[0]?.check === wanted && said[0].at === figure;
  return found ? null : shown;
}
