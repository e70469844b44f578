import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import type { Kind } from '../../src/kinds/model.ts';
import { readSheet } from '../../src/sheet/index.ts';
import type { Sheet } from '../../src/sheet/model.ts';
import type { Span } from '../../src/text/span.ts';

const kinds: ReadonlyMap<string, Kind> = builtInKinds();

/** Reads a text as the sheet `sheets/x.md`. */
export function read(text: string, wireGauge: string | null = null): Sheet {
  return readSheet(text, 'sheets/x.md', { kinds, gauges: gaugeBook(), wireGauge });
}

/** The characters that a span covers. */
export function under(sheet: Sheet, span: Span | null | undefined): string | null {
  return span ? sheet.text.slice(span.start, span.end) : null;
}

/** The kinds and places of a sheet's problems: `schema "valeu"`. */
export function problems(sheet: Sheet): readonly string[] {
  return sheet.problems.map(({ kind, span }) => `${kind} ${JSON.stringify(under(sheet, span))}`);
}

/** A sheet of everything that a sheet may hold. */
export const good = `---
# yaml-language-server: $schema=../schemas/sheet.schema.json
gaugeleaf: 1
sheet: x
title: Orlo T71 😀 two-barrel
unit:
  kind: carburetor
  maker: Orlo
  model: "010"
  part-numbers: [T71-104, 0104]
  features: [two-barrel, downdraft, Metering Rods]
  throttle-bore: 1-7/16 in
  throttle-closed-angle: 12°
  idle-needle-thread: 10-32 UNF
  casting: raised letters
fits:
  - { marque: Wexcombe, model: Six, years: 1948-1950 }
revision: 2
date: 2026-10-03
status: proof
wire-gauge: us-steel
rounding: ordinary
sources:
  m48: { title: Wexcombe Six Workshop Manual, kind: manual, year: 1948 }
  bench: { title: Good units measured, kind: measured, units: 3 }
settings:
  float-level:
    value: 13/64 ± 1/64 in
    also: ['0.203 in', 5.16 mm]
    gauge: { go: 3/16 drill, no-go: 7/32 drill }
    at: free end of the float
    cover: inverted
    gasket: removed
    from: m48 p. 31
  Choke Unloader:
    value: '#29 drill'
    gauge: No. 29 drill
    from: [m48 p. 33, bench]
    but:
      - { value: No. 30 drill, from: bench, ruling: one unit was worn }
  idle-mixture:
    places: { primary: 1-1/4 turns out, secondary: 1 turn out }
    places-differ: the secondary side is leaner
    travel: 0.039 in
    rounding: inward
    note: "hot, in neutral"
    from: bench
accept:
  - { finding: chopped, at: float-level, reason: as printed }
---

# Orlo T71

Text &plusmn; \\*star, 10:30 and ![Front view][front].

[front]: pictures/front.png

## Float level {#float-level}

High floods, *low* starves at :value[float-level] 😀.

1. Turn the cover over. :state[cover inverted]
2. Pass the gauge: :value[float-level],
   then :value[ Choke Unloader ].

:::warning{hazard="gasoline-vapor, solvent"}
No flame. ![Sign](pictures/sign.png)
:::

## :value[idle-mixture] set

| Screw | Turns |
| --- | --- |
| both | :value[idle-mixture] |

3. Third.
4. Fourth.

\`1/4 in\` <b>raw</b> :vlaue[x]

> ## Not an operation
`;
