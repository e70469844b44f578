/** One mistake put into a clean sheet of the demo: one textual edit and what should come of it. */
export interface Planting {
  /** The sheet's file name, without `.md`. */
  readonly sheet: string;
  /** A text that stands once in the sheet, or that the first of is changed, and what it becomes. */
  readonly from: string;
  readonly to: string;
  /** The check that has to speak. */
  readonly check: string;
  /** A text on the line that the finding stands at; the first changed line where it is not given. */
  readonly on?: string;
  /** Other checks that the same mistake sets off, rightly. */
  readonly with?: readonly string[];
}

const orlo = 'orlo-t71-wexcombe-six';
const four = 'orlo-m58-wexcombe-marchwood';
const fennock = 'fennock-l83-larkmoor-ten';
const bressac = 'bressac-e52-astrelle-1100';
const pellow = 'pellow-p44-ravensgarth-sports';
const tamsel = 'tamsel-t15-drayle-350';
const bassen = 'bassen-g47-skerrow-two';
const eight = 'dunnow-c31-tollgarth-eight';
const brennick = 'brennick-b12-larkmoor-ten';
const updraft = 'dunnow-a6-marlbeck-20';

const vapor = ':::warning{hazard=gasoline-vapor}';

/** By group, as the findings page has them. */
export const plantings: readonly Planting[] = [
  // provenance: second readings
  {
    sheet: orlo,
    from: 'status: proof',
    to: 'status: released',
    check: 'figure-read-once',
  },
  {
    sheet: orlo,
    from: 'status: proof',
    to: 'status: proof\ncompiled-by: T. Aldous',
    check: 'read-by-same',
    on: 'T. Aldous',
  },
  // provenance: measured units
  {
    sheet: eight,
    from: 'choke-pull-down: [3.90 mm, 3.93 mm, 3.91 mm, 3.89 mm, 3.92 mm]',
    to: 'choke-pull-down: [3.90 mm, 3.93 mm, 3.91 mm, 3.89 mm, 3.29 mm]',
    check: 'measured-outlier',
    with: ['measured-contradicts', 'measured-spread'],
  },
  {
    sheet: eight,
    from: 'float-level: [7.50 mm, 7.54 mm, 7.58 mm, 7.52 mm, 7.56 mm]',
    to: 'float-level: [7.90 mm, 7.94 mm, 7.98 mm, 7.92 mm, 7.96 mm]',
    check: 'measured-contradicts',
    on: 'value: 19/64 ± 1/64 in',
    with: ['measured-value-off'],
  },
  {
    sheet: eight,
    from: 'idle-mixture: [1.62 turns out, 1.64 turns out, 1.60 turns out, 1.63 turns out, 1.61 turns out]',
    to: 'idle-mixture: [1.62 turns out, 2.04 turns out, 1.20 turns out, 1.83 turns out, 1.41 turns out]',
    check: 'measured-spread',
    on: 'value: 1-5/8 ± 1/8 turns out',
  },
  {
    sheet: eight,
    from: '    units: 5\n',
    to: '    units: 6\n',
    check: 'measured-units-differ',
  },
  {
    sheet: eight,
    from: '      float-level: [7.50',
    to: '      flaot-level: [7.50',
    check: 'measured-unknown',
  },
  {
    sheet: eight,
    from: '[7.50 mm, 7.54 mm,',
    to: '[7.50 to 7.52 mm, 7.54 mm,',
    check: 'measured-unlike',
  },
  {
    sheet: eight,
    from: 'value: 1-5/8 ± 1/8 turns out\n    also: [1-1/2 to 1-3/4 turns out]\n    travel: 0.0508 in',
    to: 'value: 1-7/8 ± 1/8 turns out',
    check: 'measured-value-off',
    with: ['worked-missing'],
  },
  // sizes: tables
  {
    sheet: brennick,
    from: '{ at: 900 rpm, value: 6 ± 1° }',
    to: '{ at: 700 rpm, value: 6 ± 1° }',
    check: 'curve-station-repeated',
  },
  {
    sheet: brennick,
    from: '{ at: 700 rpm, value: 3-1/2',
    to: '{ at: 7000 rpm, value: 3-1/2',
    check: 'curve-stations-disordered',
  },
  {
    sheet: brennick,
    from: '{ at: 900 rpm, value: 6 ± 1° }',
    to: '{ at: 900 rpm, value: 60 ± 1° }',
    check: 'curve-course-broken',
    with: ['curve-disagrees'],
  },
  {
    sheet: brennick,
    from: '{ at: 900 rpm, value: 6 ± 1° }',
    to: '{ at: 900 rpm, value: 8.2 ± 1° }',
    check: 'curve-row-odd',
    with: ['curve-disagrees'],
  },
  {
    sheet: brennick,
    from: 'value: 6 ± 1° distributor\n    crank: 12 ± 2°',
    to: 'value: 8-1/2 ± 1° distributor\n    crank: 17 ± 2°',
    check: 'curve-disagrees',
  },
  {
    sheet: brennick,
    from: 'value: 24 ± 2° BTDC',
    to: 'value: 42 ± 2° BTDC',
    check: 'total-disagrees',
  },
  {
    sheet: brennick,
    from: '  advance-curve:\n    table:\n      - { at: 425 rpm, value: 0 to 1° }\n      - { at: 700 rpm, value: 3-1/2 ± 1°, also: [7 ± 2° crank] }\n      - { at: 900 rpm, value: 6 ± 1° }\n      - { at: 1250 rpm, value: 10 ± 1°, also: [20 ± 2° crank] }\n      - { at: 1600 rpm, value: 14 ± 1°, also: [28 ± 2° crank], note: no more above this speed }',
    to: '  advance-curve:\n    value: 14 ± 1°',
    check: 'table-misplaced',
  },
  // reading: the file and its front matter
  { sheet: orlo, from: '---\n', to: '', check: 'front-matter-absent' },
  { sheet: orlo, from: 'title: Orlo', to: 'title: "Orlo', check: 'front-matter-unreadable' },
  {
    sheet: orlo,
    from: 'settings:\n',
    to: 'settings:\n\tmain-jet: {}\n',
    check: 'front-matter-unreadable',
  },
  { sheet: orlo, from: 'float-drop:', to: 'float-level:', check: 'front-matter-unreadable' },
  { sheet: bassen, from: '1949-1957', to: '1957-1949', check: 'years-reversed' },
  {
    sheet: bassen,
    from: 'fixed-jets, governor]',
    to: 'fixed-jets]',
    check: 'feature-dropped',
    on: 'governor-speed:',
  },
  {
    sheet: bassen,
    from: 'value: 650 ± 50 rpm',
    to: 'value: 2650 ± 50 rpm',
    check: 'figures-reversed',
    with: ['size-unusual', 'prose-disagrees'],
  },
  {
    sheet: bassen,
    from: '    travel: 0.0273 in\n    from: sk p. 21',
    to: '    travel: 0.0273 in\n    from: sk',
    check: 'page-unsaid',
    on: 'from: sk\n',
  },
  { sheet: orlo, from: 'status: proof', to: 'status: finished', check: 'front-matter-invalid' },
  { sheet: orlo, from: 'revision: 2', to: 'revision: two', check: 'front-matter-invalid' },
  { sheet: orlo, from: 'date: 2026-10-03', to: 'date: 2026-13-03', check: 'front-matter-invalid' },
  { sheet: orlo, from: '# Orlo T71', to: '\u0000# Orlo T71', check: 'file-unreadable' },
  {
    sheet: orlo,
    from: 'sheet: orlo-t71-wexcombe-six',
    to: 'sheet: orlo-t71-wexcombe-sixt',
    check: 'sheet-misnamed',
  },
  {
    sheet: orlo,
    from: 'title: Orlo',
    to: 'based-on: orlo-t72\ntitle: Orlo',
    check: 'base-unresolved',
  },
  {
    sheet: orlo,
    from: 'settings:\n  main-jet',
    to: 'based-on: dunnow-c31-tollgarth-eight\nsettings:\n  governor: none\n  main-jet',
    on: 'governor: none',
    check: 'variant-idle',
    // The other unit's work comes in between.
    with: ['part-refitted', 'feature-dropped', 'figures-reversed'],
  },
  {
    sheet: orlo,
    from: '  float-drop:\n',
    to: '  Float Level: { value: 7/32 in, at: free end of the float, cover: inverted, gasket: removed, from: m48 p. 31 }\n  float-drop:\n',
    check: 'setting-repeated',
  },
  { sheet: orlo, from: 'kind: carburetor', to: 'kind: carburettor', check: 'kind-unknown' },
  {
    sheet: orlo,
    from: 'metering-rods, fast',
    to: 'metering-rod-set, fast',
    check: 'feature-unknown',
  },
  {
    sheet: orlo,
    from: 'features: [two-barrel, ',
    to: 'features: [two-barrel, single-barrel, ',
    check: 'features-exclusive',
  },
  {
    sheet: orlo,
    from: 'features: [two-barrel, downdraft, ',
    to: 'features: [two-barrel, ',
    check: 'feature-unsaid',
  },
  {
    sheet: orlo,
    from: '  unloader:\n',
    to: '  unlaoder:\n',
    check: 'setting-unknown',
    with: ['value-undefined'],
  },
  { sheet: orlo, from: 'cam-step: highest', to: 'cam-stpe: highest', check: 'key-misspelt' },
  {
    sheet: fennock,
    from: 'fixed-jets, pump]',
    to: 'fixed-jets, pump, dashpot]',
    check: 'setting-missing',
  },
  {
    sheet: orlo,
    from: '    gasket: removed\n',
    to: '',
    check: 'condition-unsaid',
    on: '  float-level:',
  },
  {
    sheet: eight,
    from: '    link: upper hole of the throttle lever\n',
    to: '',
    check: 'condition-unsaid',
    on: '  pump-stroke:',
  },
  { sheet: orlo, from: '## Unloader', to: '## Unlaoder', check: 'operation-unknown' },
  {
    sheet: bassen,
    from: '## Governor speed',
    to: '## Notes on speed {#notes}',
    check: 'operation-missing',
    on: '  features:',
  },
  {
    sheet: tamsel,
    from: '## Fuel level',
    to: '## Remarks {#notes}',
    check: 'operation-missing',
    on: '  kind:',
  },
  { sheet: orlo, from: '## Float drop', to: '## Float level', check: 'heading-repeated' },
  {
    sheet: orlo,
    from: ':value[float-drop]',
    to: ':value[float-dorp]',
    check: 'value-undefined',
    with: ['setting-unused'],
  },
  { sheet: orlo, from: 'value: 1425 ± 50 rpm', to: 'value: fill in', check: 'blank-to-fill' },
  {
    sheet: orlo,
    from: 'reads :value[fast-idle-speed]',
    to: 'reads right',
    check: 'setting-unused',
    on: '  fast-idle-speed:',
  },
  {
    sheet: orlo,
    from: ':value[unloader]',
    to: ':valeu[unloader]',
    check: 'directive-unknown',
    with: ['setting-unused'],
  },
  {
    sheet: orlo,
    from: '1. Take out the idle needles.',
    to: '1. Take out the <b>idle</b> needles.',
    check: 'html-in-text',
  },
  {
    sheet: orlo,
    from: '(pictures/float-level.svg)',
    to: '(pictures/flaot-level.svg)',
    check: 'picture-unprintable',
  },
  {
    sheet: pellow,
    from: '![Section through',
    to: '![](pictures/jet-nut.svg)\n\n![Section through',
    check: 'picture-untold',
  },

  {
    sheet: orlo,
    from: 'throttle-closed-angle:',
    to: 'throttle-closd-angle:',
    check: 'unit-size-unknown',
    with: ['worked-missing', 'relation-unworkable', 'worked-disagrees'],
  },

  {
    sheet: orlo,
    from: 'value: 500 ± 25 rpm',
    to: 'value: 500 ± 525 rpm',
    check: 'limits-too-wide',
    with: ['size-unusual', 'sizes-disagree'],
  },

  // sizes: what cannot be read
  { sheet: orlo, from: 'value: parallel', to: 'value: paralell', check: 'condition-unknown' },
  {
    sheet: orlo,
    from: 'value: parallel',
    to: 'value: parallel\n    also: [1/4 in]',
    check: 'condition-beside-figure',
    on: '1/4 in',
  },
  {
    sheet: orlo,
    from: 'idle-needle-thread: 10-32 UNF',
    to: 'idle-needle-thread: 10-33 UNF',
    check: 'thread-unknown',
    with: ['worked-missing', 'relation-unworkable', 'worked-disagrees'],
  },
  { sheet: orlo, from: 'value: 500 ± 25 rpm', to: 'value: 5OO ± 25 rpm', check: 'size-unreadable' },
  {
    sheet: orlo,
    from: 'value: 23/32 ± 1/32 in',
    to: 'value: 23/32 ± 1/32 im',
    check: 'size-unreadable',
  },
  {
    sheet: orlo,
    from: 'value: 13/64 ± 1/64 in',
    to: 'value: 13/46 ± 1/64 in',
    check: 'size-unreadable',
  },
  {
    sheet: updraft,
    from: 'value: No. 60 drill',
    to: 'value: No. 60',
    check: 'size-without-system',
  },
  { sheet: orlo, from: 'also: [0.2656 in,', to: 'also: [0.2656,', check: 'size-without-system' },
  {
    sheet: orlo,
    from: 'value: No. 70 drill',
    to: 'value: No. 170 drill',
    check: 'gauge-nonexistent',
  },
  {
    sheet: bressac,
    from: 'gauge: 1.15 mm drill',
    to: 'gauge: 1.13 mm drill',
    check: 'gauge-nonexistent',
  },
  {
    sheet: pellow,
    from: 'value: 2-1/4 to 2-3/4 psi',
    to: 'value: 2-3/4 to 2-1/4 psi',
    check: 'limits-inverted',
  },
  {
    sheet: tamsel,
    from: 'value: 950 ± 50 rpm',
    to: 'value: 950 ± 50 mm',
    check: 'dimension-wrong',
  },
  { sheet: orlo, from: 'value: 500 ± 25 rpm', to: 'value: 500 ± 25 psi', check: 'dimension-wrong' },
  {
    sheet: pellow,
    from: 'throttle-bore: 1-3/4 in',
    to: 'throttle-bore: 1-3/4 turns',
    check: 'dimension-wrong',
  },

  // sizes: two statements that are not one
  { sheet: orlo, from: 'also: [0.1360 in', to: 'also: [0.1630 in', check: 'sizes-disagree' },
  {
    sheet: orlo,
    from: 'value: No. 47 drill',
    to: 'value: No. 74 drill',
    check: 'sizes-disagree',
    with: ['worked-disagrees', 'relation-unworkable'],
  },
  {
    sheet: orlo,
    from: '5.159 mm',
    to: '51.59 mm',
    check: 'sizes-disagree',
    with: ['size-unusual'],
  },
  { sheet: orlo, from: 'gauge: 17/64 drill', to: 'gauge: 19/64 drill', check: 'sizes-disagree' },
  {
    sheet: orlo,
    from: 'value: 22 SWG',
    to: 'value: 23 SWG',
    check: 'sizes-disagree',
    with: ['gauge-system-ambiguous'],
  },
  { sheet: orlo, from: '4.763–5.556 mm', to: '4.763–5.656 mm', check: 'sizes-disagree' },
  {
    sheet: four,
    from: 'value: No. 20 AWG',
    to: 'value: No. 21 AWG',
    check: 'sizes-disagree',
    with: ['worked-disagrees'],
  },
  { sheet: four, from: 'value: drill N', to: 'value: drill M', check: 'sizes-disagree' },
  { sheet: bressac, from: 'also: [16–20 N·m]', to: 'also: [16–22 N·m]', check: 'sizes-disagree' },
  { sheet: pellow, from: '1-2/3 turns down', to: '1-1/3 turns down', check: 'sizes-disagree' },
  { sheet: tamsel, from: '164.38 cm3/min', to: '146.38 cm3/min', check: 'sizes-disagree' },
  { sheet: bassen, from: '2100 to 2200 rpm', to: '2000 to 2200 rpm', check: 'sizes-disagree' },
  {
    sheet: bassen,
    from: '4.3656 mm',
    to: '4.3656 in',
    check: 'sizes-disagree',
    with: ['size-unusual'],
  },
  {
    sheet: orlo,
    from: 'value: 3/4 turn in after',
    to: 'value: 3/4 turn out after',
    check: 'size-unusual',
  },
  {
    sheet: bassen,
    from: 'value: 7/8 ± 1/8 turn out',
    to: 'value: 7/8 ± 1/8 turn in',
    check: 'sizes-disagree',
    on: 'also: [3/4 to 1 turn out]',
    with: ['size-unusual'],
  },
  { sheet: updraft, from: '0.0400 in', to: '.0399 in', check: 'sizes-disagree' },
  { sheet: updraft, from: '0.046875 in', to: '.046 in', check: 'size-chopped' },
  { sheet: eight, from: 'also: [0.234 in', to: 'also: [0.23 in', check: 'size-loosely-rounded' },
  { sheet: four, from: '1.985–2.778 mm', to: '1.984–2.778 mm', check: 'limits-widened' },
  { sheet: bassen, from: '10.35–17.23 kPa', to: '10.34–17.23 kPa', check: 'limits-widened' },
  { sheet: tamsel, from: 'value: 950 ± 50 rpm', to: 'value: 9500 ± 50 rpm', check: 'size-unusual' },
  {
    sheet: fennock,
    from: 'value: 34 to 36 thou',
    to: 'value: 340 to 360 thou',
    check: 'size-unusual',
  },
  {
    sheet: tamsel,
    from: 'throttle-bore: 15/16 in',
    to: 'throttle-bore: 15/12 in',
    check: 'fraction-unruled',
  },
  {
    sheet: orlo,
    from: 'gauge: 13/64 drill',
    to: 'gauge: 15/64 drill',
    check: 'gauge-outside-limits',
  },
  {
    sheet: bressac,
    from: 'gauge: 12.5 mm drill',
    to: 'gauge: 13.5 mm drill',
    check: 'gauge-outside-limits',
  },
  { sheet: four, from: 'gauge: 21/64 drill', to: 'gauge: 11/32 drill', check: 'gauge-off-nominal' },
  {
    sheet: four,
    from: 'value: 0.012 in leaf',
    to: 'value: 30 SWG',
    check: 'gauge-system-ambiguous',
  },
  {
    sheet: fennock,
    from: 'value: 34 to 36 thou',
    to: 'value: 0.0341 to 0.0345 in',
    check: 'gauge-none-fits',
  },
  {
    sheet: orlo,
    from: 'gauge: 0.028 in wire',
    to: 'gauge: 0.028 in leaf',
    check: 'leaf-in-bore',
  },
  {
    sheet: four,
    from: '    places-differ: the secondary barrels open only for full power and have no enrichment of their own\n',
    to: '',
    check: 'places-differ',
    on: 'places: {',
  },
  { sheet: orlo, from: 'travel: 0.0391 in', to: 'travel: 0.0319 in', check: 'worked-disagrees' },
  { sheet: pellow, from: 'travel: 1.215 mm', to: 'travel: 1.251 mm', check: 'worked-disagrees' },
  {
    sheet: orlo,
    from: 'idle-needle-thread: 10-32 UNF',
    to: 'idle-needle-thread: 10-24 UNC',
    check: 'worked-disagrees',
    on: 'travel: 0.0391 in',
  },

  {
    sheet: 'brennick-b12-larkmoor-ten',
    from: 'value: 60.0 ± 3.3 %',
    to: 'value: 64.0 ± 3.3 %',
    check: 'worked-disagrees',
  },
  {
    sheet: 'ostrel-n63-tollgarth-eight',
    from: 'crank: 20 ± 2°',
    to: 'crank: 26 ± 2°',
    check: 'worked-disagrees',
  },
  {
    sheet: 'ostrel-n63-tollgarth-eight',
    from: '{ value: 27 ± 1°,',
    to: '{ value: 57 ± 1°,',
    check: 'relation-unworkable',
    with: ['dissent-unruled'],
  },
  {
    sheet: 'ostrel-n63-tollgarth-eight',
    from: '    crank: 20 ± 2°\n',
    to: '',
    check: 'worked-missing',
    on: 'value: 10 ± 1° distributor',
  },
  // prose
  {
    sheet: orlo,
    from: 'from the cover face to the free end: :value[float-drop]',
    to: 'from the cover face to the free end: :value[pump-stroke]',
    check: 'value-misplaced',
    with: ['setting-unused'],
  },
  {
    sheet: orlo,
    from: 'Turn both needles out alike: :value[idle-mixture]',
    to: 'Turn both needles out alike: value[idle-mixture]',
    check: 'mark-broken',
  },
  {
    sheet: orlo,
    from: 'Where a tag differs',
    to: '\n\n---\ngaugeleaf: 1\nsheet: orlo-t72\n---\n\nWhere a tag differs',
    check: 'sheets-joined',
    on: '---\ngaugeleaf: 1\nsheet: orlo-t72',
  },
  {
    sheet: orlo,
    from: 'until the tachometer reads :value[fast-idle-speed]',
    to: 'to 1525 rpm by the tachometer, not :value[fast-idle-speed]',
    check: 'prose-disagrees',
  },
  {
    sheet: orlo,
    from: 'Pass the gauge under',
    to: 'Pass a 15/64 in gauge under',
    check: 'prose-disagrees',
  },
  {
    sheet: fennock,
    from: 'Turn it out: :value[idle-mixture]',
    to: 'Back it out 2-1/2 turns, that is :value[idle-mixture]',
    check: 'prose-disagrees',
  },
  {
    sheet: bressac,
    from: 'give ten full strokes',
    to: 'give twenty full strokes',
    check: 'count-disagrees',
  },
  {
    sheet: tamsel,
    from: 'engine back to :value[idle-speed]',
    to: 'engine back to 950 ± 50 rpm',
    check: 'number-typed',
    with: ['setting-disturbed'],
  },
  {
    sheet: orlo,
    from: 'Draw the screws down evenly',
    to: 'Draw the screws down to 18 in-lb evenly',
    check: 'number-unplaced',
  },
  {
    sheet: bassen,
    from: '## Notes\n\n',
    to: '## Notes\n\nLeave 0.031 in of it standing. ',
    check: 'number-unplaced',
    on: 'Leave 0.031',
  },

  // provenance
  {
    sheet: orlo,
    from: '    value: 1 notch rich\n    from: m48 p. 33\n',
    to: '    value: 1 notch rich\n',
    check: 'setting-unsourced',
    on: '  choke-cover-index:',
  },
  { sheet: orlo, from: 'from: b17 p. 3', to: 'from: b71 p. 3', check: 'source-unknown' },
  {
    sheet: orlo,
    from: 'b17: { title: Bulletin 17, kind',
    to: 'b17: { kind',
    check: 'source-untitled',
  },
  {
    sheet: fennock,
    from: 'from: sl4 p. 1',
    to: 'from: hb p. 1',
    check: 'source-unused',
    on: '  sl4:',
  },
  {
    sheet: eight,
    from: '        ruling: >-\n          The letter was sent to dealers in hot country only. Club members in such country may\n          follow it, and should write so on the card.\n',
    to: '',
    check: 'dissent-unruled',
    on: 'value: 1 notch lean',
  },
  {
    sheet: eight,
    from: '{ value: 0.1540 in, from: sl2 p. 2 }',
    to: '{ value: 0.1450 in, from: sl2 p. 2 }',
    check: 'dissent-unruled',
  },
  { sheet: eight, from: '    follows: te\n', to: '    follows: ta\n', check: 'ruling-unsupported' },
  {
    sheet: eight,
    from: 'settings:\n  main-jet:\n    value: No. 43 drill\n',
    to: '  t2: { title: Second Shop Book, kind: manual, year: 1953 }\nsettings:\n  main-jet:\n    value: No. 43 drill\n    but: [{ value: No. 44 drill, from: t2 p. 50 }]\n',
    check: 'older-ruled',
    on: '    but: [{ value: No. 44',
  },
  { sheet: orlo, from: 'measured, units: 3', to: 'measured, units: 1', check: 'measured-too-few' },
  {
    sheet: 'brennick-b12-larkmoor-ten',
    from: ', kind: leaflet, year: about 1957',
    to: ', kind: leaflet',
    check: 'source-unfindable',
  },

  // cautions
  {
    sheet: orlo,
    from: ':::danger{hazard=carbon-monoxide}',
    to: ':::danger{hazard=hot-surface}',
    check: 'caution-missing',
    on: '## First start',
  },
  {
    sheet: orlo,
    from: '## Road test\n\n:::warning{hazard=road-test}',
    to: '## Road test\n\n1. Drive off.\n\n:::warning{hazard=road-test}',
    check: 'caution-late',
    on: ':::warning{hazard=road-test}',
  },
  {
    sheet: orlo,
    from: ':::warning{hazard=solvent}',
    to: '::: warning{hazard=solvent}',
    check: 'message-broken',
    with: ['caution-missing'],
  },
  {
    sheet: orlo,
    from: vapor,
    to: ':::warning{hazard=gasoline-vapour-x}',
    check: 'hazard-unknown',
    with: ['caution-missing'],
  },
  {
    sheet: orlo,
    from: ':::warning{hazard=asbestos}',
    to: ':::warning',
    check: 'hazard-unnamed',
    with: ['caution-missing'],
  },
  {
    sheet: orlo,
    from: ':::danger{hazard=carbon-monoxide}',
    to: ':::caution{hazard=carbon-monoxide}',
    check: 'signal-too-mild',
  },

  // acceptance
  {
    sheet: orlo,
    from: 'status: proof\n',
    to: 'status: proof\naccept: [{ finding: size-chopt, at: unloader, reason: as printed }]\n',
    check: 'acceptance-unknown',
    on: 'accept:',
  },
  {
    sheet: orlo,
    from: 'status: proof\n',
    to: 'status: proof\naccept: [{ finding: size-chopped, at: unloader, reason: as printed }]\n',
    check: 'acceptance-unused',
    on: 'accept:',
  },
  {
    sheet: orlo,
    from: 'status: proof\n',
    to: 'status: proof\naccept: [{ finding: size-chopped, at: unloader }]\n',
    check: 'acceptance-unreasoned',
    on: 'accept:',
    with: ['acceptance-unused'],
  },
  // what was measured
  {
    sheet: eight,
    from: '7.50 mm, 7.54 mm',
    to: '7.05 mm, 7.54 mm',
    check: 'measured-outlier',
    with: ['measured-contradicts', 'measured-spread'],
  },
  {
    sheet: eight,
    from: '      idle-vacuum: [',
    to: '      idle-vacum: [',
    check: 'measured-unknown',
  },
  { sheet: eight, from: 'units: 5', to: 'units: 4', check: 'measured-units-differ' },
  {
    sheet: eight,
    from: '[1.62 turns out,',
    to: '[about 1.62 turns out,',
    check: 'measured-unlike',
  },
  {
    sheet: eight,
    from: 'value: 1-5/8 ± 1/8',
    to: 'value: 1-3/8 ± 1/8',
    check: 'measured-value-off',
    with: ['sizes-disagree', 'worked-disagrees', 'measured-spread'],
  },
  {
    sheet: eight,
    from: '[7.50 mm, 7.54 mm, 7.58 mm, 7.52 mm, 7.56 mm]',
    to: '[8.50 mm, 8.54 mm, 8.58 mm, 8.52 mm, 8.56 mm]',
    check: 'measured-contradicts',
    on: '19/64 ± 1/64 in',
  },
  {
    sheet: eight,
    from: '[1.62 turns out, 1.64 turns out, 1.60',
    to: '[1.72 turns out, 1.54 turns out, 1.60',
    check: 'measured-spread',
    on: '1-5/8 ± 1/8 turns out',
  },
];
