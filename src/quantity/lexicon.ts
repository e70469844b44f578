import type { Sense } from './model.ts';

/** Words of the notation. All lower case; longer phrases stand before those that begin them. */

/** Said before a number to make it a rough one. */
export const ABOUT_WORDS = [
  'approximately',
  'approx.',
  'approx',
  'about',
  'roughly',
  'circa',
  'abt.',
  'abt',
  'say',
  'ca.',
  'nominally',
  '~',
  '≈',
];

/** Said before a number to make it the only limit. */
export const MIN_PREFIXES = [
  'and not less than',
  'nor less than',
  'not less than',
  'no less than',
  'at least',
  'more than',
  'over',
  'minimum of',
  'minimum',
  'min.',
  '≥',
  '>=',
];
/** Said before a number to make it the highest allowed. */
export const MAX_PREFIXES = [
  'and not more than',
  'nor more than',
  'nor over',
  'not more than',
  'no more than',
  'not over',
  'not exceeding',
  'not to exceed',
  'at most',
  'less than',
  'under',
  'up to',
  'maximum of',
  'maximum',
  'max.',
  'max',
  '≤',
  '<=',
];

/** Said after a number to make it the only limit. */
export const MIN_SUFFIXES = ['or more', 'or over', 'or above', 'minimum', 'min.', 'min'];
/** Said after a number to make it the highest allowed. */
export const MAX_SUFFIXES = ['or less', 'or under', 'or below', 'maximum', 'max.', 'max'];

/** Ways a sense is said beside turns, notches or an angle, and what it is; points are free. */
export const SENSES: readonly (readonly [string, Sense])[] = [
  ...deadCenters(['before', 'b', 'avant', 'av', 'vor', 'v', 'in advance of'], 'before'),
  ...deadCenters(['after', 'past', 'a', 'apres', 'après', 'nach', 'n'], 'after'),
  ['outwards', 'out'],
  ['outward', 'out'],
  ['out', 'out'],
  ['open', 'out'],
  ['inwards', 'in'],
  ['inward', 'in'],
  ['in', 'in'],
  ['downwards', 'down'],
  ['downward', 'down'],
  ['down', 'down'],
  ['upwards', 'up'],
  ['upward', 'up'],
  ['up', 'up'],
  ...sides(['richer', 'rich'], 'rich'),
  ...sides(['leaner', 'lean', 'weaker', 'weak'], 'lean'),
];

/** Top dead center by every name that papers give it, in three languages. */
function deadCenters(words: readonly string[], sense: Sense): (readonly [string, Sense])[] {
  const spoken = ['top dead center', 'top dead centre', 'upper dead center', 'upper dead centre'];
  const short = ['top center', 'top centre', 'dead center', 'dead centre'];
  const letters = [
    't d c',
    'tdc',
    'u d c',
    'udc',
    't c',
    'tc',
    'd c',
    'dc',
    'o t',
    'ot',
    'p m h',
    'pmh',
  ];
  const all = [...spoken, ...short, ...letters];
  return words.flatMap((word) => [
    ...all.map((center) => [`${word} ${center}`, sense] as const),
    // Glued, as in `BTDC`: one letter before the letters.
    ...(word.length === 1 && word !== 'v' && word !== 'n'
      ? ['tdc', 't d c', 'tc', 't c', 'udc', 'u d c'].map((c) => [`${word}${c}`, sense] as const)
      : []),
  ]);
}

function sides(words: readonly string[], sense: Sense): (readonly [string, Sense])[] {
  return words.flatMap((word) => [
    [`on the ${word} side`, sense] as const,
    [`to the ${word} side`, sense] as const,
    [`on ${word} side`, sense] as const,
    [`toward the ${word} side`, sense] as const,
    [`towards the ${word} side`, sense] as const,
    [`towards ${word}`, sense] as const,
    [`toward ${word}`, sense] as const,
    [`to ${word}`, sense] as const,
    [word, sense] as const,
  ]);
}

/** What else a screw's turns and flats are said to go, behind the figure. */
export const SCREW_SENSES: readonly (readonly [string, Sense])[] = [
  ['backed off', 'out'],
  ['backed out', 'out'],
  ['back off', 'out'],
  ['back', 'out'],
  ['unscrewed', 'out'],
  ['off', 'out'],
  ['screwed in', 'in'],
  ['screwed out', 'out'],
];

/** What a paper tells a screw to do before it says how far. */
export const SCREW_VERBS: readonly (readonly [string, Sense])[] = [
  ['unscrew', 'out'],
  ['back off', 'out'],
  ['back out', 'out'],
  ['screw out', 'out'],
  ['turn out', 'out'],
  ['screw in', 'in'],
  ['turn in', 'in'],
  ['screw down', 'down'],
];

/** Words that name what turns, flats and notches are counted from, and the name we keep. */
export const DATUMS: readonly (readonly [string, string])[] = [
  ['seated', 'seated'],
  ['seat', 'seated'],
  ['bottomed', 'seated'],
  ['contact', 'contact'],
  ['touching', 'contact'],
  ['flush', 'flush'],
  ['bridge', 'flush'],
  ['index', 'index'],
  ['top', 'top'],
  ['bottom', 'bottom'],
];

/**
 * Words that may follow a size and say of what, where or when it is. A word that is not here is
 * not passed over: `0.020 in mni` must not lose its limit.
 */
export const QUALIFIER_WORDS: ReadonlySet<string> = new Set(
  (
    'a an the at on in of off to and or from after past before below above over under between with ' +
    'jet jets orifice bleed nozzle hole holes without back backed adjusting adjustment screws mixture volume turned clockwise anticlockwise counterclockwise counter anti short medium long hole mark ' +
    'by its their each every per both all barrel barrels side sides screw needle needles ' +
    'lightly first full fully just seat seated bottomed contact touching flush bridge index top bottom ' +
    'turning hot cold warm warmed neutral drive gear idle idling steady highest lowest slow fast second third high low step cam ' +
    'dwell closed angle crank crankshaft crankshafts distributor dist kw cam camshaft tdc btdc atdc b.t.d.c a.t.d.c t.d.c dead advance retard engine speed ' +
    'drill drills twist bit wire leaf feeler gauge gage pin rod round flat plug blade ' +
    'diameter dia dia. bore wide thick long gap clearance clear travel lift depth width drop ' +
    'open shut closed free edge center centre end float casting face rim bowl cover gasket flange stop lever ' +
    'throttle choke plate plates valve vacuum gauge absolute depression fuel level measured dry wet nominal size ' +
    'primary secondary left right front rear upper lower inner outer counting co'
  ).split(' '),
);

/** What a sheet writes where a source gives no figure: printed as it stands, and no size of anything. */
export const NOT_STATED = 'not stated';

/** Settings that are a condition and no number. A kind may know more. */
export const CONDITIONS: ReadonlySet<string> = new Set([
  'parallel',
  'flush',
  'just touches',
  'just touching',
  'touches',
  'touching',
  'level',
  'square',
  'central',
  'centered',
  'aligned',
  'in line',
  'straight',
  'free',
  'just free',
  'just clear',
  'closed',
  'shut',
  'fully shut',
  'fully closed',
  'open',
  'wide open',
  'bottomed',
  'bottomed and clamped',
  'seated',
  'lightly seated',
  'vertical',
  'horizontal',
  'equal',
  'synchronized',
  'none',
  NOT_STATED,
]);

/** One character that is a whole fraction: numerator and denominator. */
export const VULGAR: ReadonlyMap<string, readonly [number, number]> = new Map([
  ['½', [1, 2]],
  ['⅓', [1, 3]],
  ['⅔', [2, 3]],
  ['¼', [1, 4]],
  ['¾', [3, 4]],
  ['⅕', [1, 5]],
  ['⅖', [2, 5]],
  ['⅗', [3, 5]],
  ['⅘', [4, 5]],
  ['⅙', [1, 6]],
  ['⅚', [5, 6]],
  ['⅐', [1, 7]],
  ['⅛', [1, 8]],
  ['⅜', [3, 8]],
  ['⅝', [5, 8]],
  ['⅞', [7, 8]],
  ['⅑', [1, 9]],
  ['⅒', [1, 10]],
]);
