import type { Example } from '../../src/checks/define.ts';

/** Settings of units that no example has, in the hands of different editors; those of `unseen` nobody looked at while the search was built. */
export const slipSheets: readonly Example['sheet'][] = [
  {
    settings: `float-level:
  value: 9/32 in
  also: [.281 in, 7.14 mm]
  gauge: 9/32 drill
  at: seam
  gasket: removed
  from: m48 p. 9
float-drop: { value: 1-3/16 in, also: ["30,16 mm"], at: seam, gasket: removed, from: m48 p. 9 }
pump-stroke: { value: 0.390 ± 0.015 in, also: [9.91 mm], link: outer hole, from: m48 p. 12 }
choke-pull-down: { value: No. 22 drill, also: [0.157 in], from: m48 p. 13 }
unloader: { value: 17/64 in, also: [17/64 drill, 0.2656 in], from: m48 p. 14 }
fast-idle-gap: { value: 20 SWG imperial, also: [0.036 in], from: m48 p. 15 }
main-jet: { value: 0.0520 in, also: [No. 55 drill, 1.321 mm], from: m48 p. 6 }
idle-tube: { value: 0.71 mm, also: [0.028 in], from: m48 p. 6 }
fuel-pressure: { value: 3.5 psi, also: [24.1 kPa], from: m48 p. 3 }
flange-torque: { value: 16 ft-lb, also: [21.7 N·m], from: m48 p. 3 }`,
  },
  {
    settings: `float-level: { value: 15.5 mm, also: [0.610 in], at: free end, gasket: fitted, from: m48 p. 31 }
fast-idle-cam: { value: 18 AWG, also: [0.0403 in], from: m48 p. 2 }
vacuum-piston-gap: { value: 0.035 in, also: ["0,89 mm"], from: m48 p. 2 }
bowl-vent: { value: 5/64 in, also: [0.078 in], from: m48 p. 2 }
secondary-lockout: { value: 0.026 in, also: [0.66 mm], from: m48 p. 2 }
air-bleed: { value: No. 68 drill, also: [0.0310 in], from: m48 p. 2 }
pump-nozzle: { value: drill A, also: [0.2340 in], from: m48 p. 2 }
power-jet: { value: 3/64 drill, also: [1.191 mm], from: m48 p. 2 }
idle-vacuum: { value: 18.5 inHg, also: [62.6 kPa, 470 mmHg], from: m48 p. 2 }
damper-oil: { value: 12.5 mm, also: [0.492 in], from: m48 p. 2 }
dashpot: { value: 3/32 in, also: [0.0938 in, 2.38 mm], from: m48 p. 2 }
inlet-seat: { value: 0.0810 in, also: [No. 46 drill], from: m48 p. 2 }`,
  },
  {
    front: `unit: { kind: ignition-distributor, maker: Orlo, model: K14, features: [six-lobe, single-points, centrifugal-advance] }
settings:
  shaft-end-play: { value: 0.006 to 0.012 in, also: [0.152–0.305 mm], from: m48 p. 1 }
  points-gap: { value: 0.018 in, also: [18 thou, 0.457 mm], from: m48 p. 1 }
  breaker-spring-tension: { value: 19 oz, also: [539 g], at: contact, from: m48 p. 1 }
  plug-gap: { value: 0.025 in, also: [0.64 mm], from: m48 p. 1 }
  rotor-gap: { value: 1/32 in, also: [0.0313 in], from: m48 p. 1 }
  clamp-torque: { value: 55 in-lb, also: [6.21 N·m], from: m48 p. 1 }
  dwell: { value: 38°, from: m48 p. 1 }
  dwell-percent: { value: 63.3 %, from: m48 p. 1 }
  shaft-side-play: { value: 0.0035 in max, also: [0.089 mm max], from: m48 p. 1 }
  vacuum-start: { value: 5.5 inHg, also: [18.6 kPa], from: m48 p. 1 }
  plug-torque: { value: 28 ± 2 ft-lb, also: [35.3–40.6 N·m], from: m48 p. 1 }`,
  },
  {
    settings: `float-level:
  value: 0.343 in
  also: [11/32 in]
  gauge: 11/32 drill
  at: center
  gasket: removed
  from: m48 p. 31
float-drop: { value: 48.4 mm, also: [1-29/32 in], at: free end, gasket: removed, from: m48 p. 31 }
fuel-level: { value: 21/32 in, also: [16.67 mm, 0.656 in], from: m48 p. 31 }
pump-delivery: { value: 12.5 cm3 per 10 strokes, also: [1.25 cm3 per stroke], from: m48 p. 31 }
pump-stroke: { value: 29/64 in, also: [0.4531 in], link: middle hole, from: m48 p. 34 }
idle-stop: { value: 1-1/2 turns in after contact, also: [9 flats in after contact], from: m48 p. 3 }
choke-pull-down: { value: 0.1130 in, also: [No. 33 drill, 2.870 mm], from: m48 p. 3 }
fast-idle-gap: { value: 0.0253 in, also: [22 AWG], from: m48 p. 3 }
metering-rods: { value: 2.468 in, also: [62.69 mm], from: m48 p. 3 }
economy-step: { value: 0.0715 in, also: [1.816 mm], from: m48 p. 3 }
power-step: { value: 0.0490 in, also: [1.245 mm], from: m48 p. 3 }
fuel-pressure: { value: 0.28 bar, also: [4.06 psi], from: m48 p. 3 }`,
  },
];

/** Run once when all was built; what fails here is not to be mended here. */
export const unseen: readonly Example['sheet'][] = [
  {
    settings: `float-level: { value: 5/16 in, also: [7.94 mm], at: toe, gasket: fitted, from: m48 p. 5 }
float-drop: { value: 33.3 mm, also: [1.311 in], at: toe, gasket: fitted, from: m48 p. 5 }
pump-stroke: { value: .469 in, also: [15/32 in], link: center hole, from: m48 p. 6 }
choke-pull-down: { value: No. 16 drill, also: [0.1770 in, 4.496 mm], from: m48 p. 6 }
fast-idle-gap: { value: 24 SWG imperial, also: [0.022 in], from: m48 p. 6 }
main-jet: { value: 1.25 mm, also: [0.0492 in], from: m48 p. 2 }
air-bleed: { value: No. 57 drill, also: [1.092 mm], from: m48 p. 2 }
inlet-seat: { value: 3/32 in, also: [0.0938 in, 2.381 mm], from: m48 p. 2 }
fuel-pressure: { value: 2.75 psi, also: [18.96 kPa], from: m48 p. 1 }
flange-torque: { value: 132 in-lb, also: [11 ft-lb, 14.91 N·m], from: m48 p. 1 }
idle-vacuum: { value: 17.5 inHg, also: [59.3 kPa], from: m48 p. 9 }
idle-mixture: { value: 1-1/3 turns out, also: [8 flats out], from: m48 p. 9 }
damper-oil: { value: 3/8 in, also: [9.53 mm], from: m48 p. 9 }
bowl-vent: { value: 0.062 ± 0.008 in, also: [1.57 mm], from: m48 p. 9 }
economy-step: { value: 0.0605 in, also: [1.537 mm], from: m48 p. 9 }`,
  },
];
