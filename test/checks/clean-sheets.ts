/** Sheets in other hands than the demo's: nothing is wrong with any of them. */
export interface CleanSheet {
  readonly name: string;
  /** The file name, without `.md`. */
  readonly sheet: string;
  readonly text: string;
}

const safety = `:::danger{hazard=carbon-monoxide}
:::

:::warning{hazard="moving-parts, vehicle-movement, backfire"}
:::

:::caution{hazard=hot-surface}
:::
`;

/** Flow style throughout, quotes, comments, `settings` before `unit`, aliases as names. */
const flow = `---
gaugeleaf: 1
sheet: "veldane-v16" # the file's own name
title: 'Veldane V61, the early one'
revision: 4
date: "2026-02-28"
status: released
settings:
  # the bench first
  Float height: { from: vm p. 7, gasket: removed, at: "free end, cover inverted", value: '1 7/32"', also: ['1.21875"', "30.96 mm", "31.0 mm"] }
  Accelerator pump: { value: ".281 in", link: middle hole, from: [vm p. 8, card], also: ["9/32 in", '7.14 mm'] }
  vacuum break: { value: "#21 drill", also: ".159 in", from: "vm p. 9" }
  Choke thermostat: { value: index, from: vm p. 9 }
  Unloader gap: { value: "drill A", also: [".234 in", "5.944 mm"], from: vm p. 9 }
  fast idle throttle gap: { value: 18 to 22 thou, gauge: { go: 0.018 in wire, no-go: 0.022 in wire }, from: card }
  fast idle rpm: { value: "1,350 rpm", temperature: hot, gear: neutral, cam-step: highest, from: card }
  Idle mixture screw: { value: "1½ turns out", also: ["1-1/2 turns open"], from: vm p. 11 }
  stop screw: { value: 3 flats in, also: [1/2 turn in], from: vm p. 11 }
  slow idle: { value: 480 to 520 rpm, gauge: tachometer, from: vm p. 12 }
sources: { vm: { title: "Veldane Motors, Book 3", kind: manual, year: 1938 }, card: { title: Shop card } }
unit: { kind: Carburetor, maker: Veldane, model: V61, features: [one barrel, down draft, auto choke, accelerator pump, fast idle, dechoke, vacuum pull-down] }
---

# Veldane V61

## How to tell it

Cast-iron throttle body, brass tag.

## Disassembly

:::warning{hazard=fuel}
:::

:::warning{hazard=old-gaskets}
:::

1. Take the cover off.

## Float height

1. Turn the cover over and measure: :value[Float height].

## Accelerator pump

1. Set the travel to :value[pump-stroke].

## Choke thermostat

1. Set the cover to :value[choke-cover-index].

## Vacuum break

1. Pass the drill: :value[Vacuum break].

## Choke unloader

1. Pass the drill: :value[unloader].

## Fast idle clearance

1. Pass the wire: :value[fast-idle-gap].

## Baselines

1. Out: :value[idle-mixture]. In: :value[idle-stop].

## Warm-up

${safety}
1. Start it.

## Fast idle

1. Set it to :value[fast-idle-speed].

## Slow idle

1. Set it to :value[slow-idle].

## Trial

:::warning{hazard=driving}
:::

1. Drive.
`;

/** Block style, four spaces, metric, values on lines of their own, and prose full of figures. */
const block = `---
gaugeleaf: 1
sheet: castrane-32-sd
status: draft
revision: 1
date: 2026-11-01
title: >-
    Castrane E57,
    Moulin 4
unit:
    model: E57
    maker: Castrane
    kind: carburetor
    features:
        - single-barrel
        - side-draft
        - hand-choke
        - fixed-jets
        - bowl-vent
    part-numbers:
        - 32-117
        - 32-117/A
    throttle-bore: 32 mm
rounding: ordinary
wire-gauge: imperial
sources:
    notice:
        title: Notice d'entretien
        kind: manual
        year: 1955
    bench:
        title: Two units on the bench
        kind: measured
        units: 2
settings:
    main-jet:
        from: notice p. 4
        value: 1,20 mm
        also:
            - 1.2 mm drill
            - 0.047 in
    float-level:
        value: 11,0 ± 0,3 mm
        also:
            - .421–.445 in
        at: face of the cover to the float
        gasket: fitted
        from: notice p. 5
    idle-mixture:
        value: >-
            1-3/4 turns out
        from: bench
    idle-stop:
        value: 1 turn in after contact
        from: bench
    flange-torque:
        value: 15–18 N·m
        also: 11 to 13 ft-lb
        from: notice p. 3
    idle-speed:
        value: about 700 rpm
        temperature: hot
        from: notice p. 6
    idle-vacuum:
        value: 60 kPa min
        also: 17.7 inHg min
        from: bench
    bowl-vent:
        value: just open
        from: notice p. 6
---

# Castrane E57

Made from 1951 to 1958 (and in 1961, as 32-117/A). See pages 3-6, figures 2.1 and 2.2, and the
notice of 12/5/1955. The casting bears 27M, 4A or 12B; serial numbers run from 10 400 to 12 999.
It has 2 screws M6 x 1.0 and 4 of 1/4-20 UNC, weighs 1.2 kg, and holds 60 cm3 of fuel.

## Tools

A 10 mm wrench, a 7/16 in socket, a 3 mm punch, a length of 6 mm hose, No. 2 screwdriver, and
40 W lamp that is sealed.

## Strip and inspect

:::warning{hazard=gasoline-vapor}
No flame within 10 m. A spark is enough.
:::

:::warning{hazard=asbestos}
:::

1. Allow 30 minutes for the engine to cool below 40 °C.
2. Loosen both nuts by half a turn at a time, in 3 or 4 rounds.
3. At 9:30 in the morning the light is best; after 16:00 it is not.

## Jets

1. Try the jet with a pin: :value[main-jet].
2. Jet 120 is meant; 115 and 125 are for another engine.

## Float level

1. Measure at the cover: :value[float-level]. One millimeter more floods it.
2. Repeat it 3 times, 2 minutes apart.

## Bowl vent

1. See that the vent is :value[bowl-vent].

## Initial idle

1. Turn the needle :value[idle-mixture], and the stop screw :value[idle-stop].

## Fitting

1. Tighten the nuts with a 13 mm wrench: :value[flange-torque].

## Starting

${safety}
1. Start it, and wait 5 to 10 minutes, until the water is at 80 °C or 176 °F.

## Idle speed

1. Set the stop screw until it runs at :value[idle-speed], in steps of 1/8 turn.

## Idle mixture

1. Turn the needle in by 1/8 turn each time, then out to the best vacuum: :value[idle-vacuum].
2. Bring it back to :value[idle-speed].

## Road test

:::warning{hazard=road-test}
:::

1. Drive 10 km, at 40 to 60 km/h, on a 5% hill. After 500 miles or 3 months look at the plug.
`;

export const cleanSheets: readonly CleanSheet[] = [
  {
    name: 'flow style, quotes, comments, other names and another order',
    sheet: 'veldane-v16',
    text: flow,
  },
  { name: 'block style, metric, and prose full of figures', sheet: 'castrane-32-sd', text: block },
];
