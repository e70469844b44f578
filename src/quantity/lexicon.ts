import type { GaugeSystem, Sense } from './model.ts';

/** Words of the notation. All lower case; longer phrases stand before those that begin them. */

/** Said before a number to make it a rough one. */
export const ABOUT_WORDS = [
  'approximately',
  'approx.',
  'approx',
  'about',
  'roughly',
  'circa',
  'ca.',
  'nominally',
  '~',
  '≈',
];

/** Said before a number to make it the only limit. */
export const MIN_PREFIXES = [
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

/** Ways a sense is said after a number, and what it is. */
export const SENSES: readonly (readonly [string, Sense])[] = [
  ['before top dead center', 'before'],
  ['before top dead centre', 'before'],
  ['before tdc', 'before'],
  ['b.t.d.c.', 'before'],
  ['btdc', 'before'],
  ['after top dead center', 'after'],
  ['after top dead centre', 'after'],
  ['after tdc', 'after'],
  ['a.t.d.c.', 'after'],
  ['atdc', 'after'],
  ['outward', 'out'],
  ['out', 'out'],
  ['open', 'out'],
  ['inward', 'in'],
  ['in', 'in'],
  ['down', 'down'],
  ['up', 'up'],
  ['richer', 'rich'],
  ['rich', 'rich'],
  ['leaner', 'lean'],
  ['lean', 'lean'],
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
    'each every per both all barrel barrels side sides screw needle needles ' +
    'lightly first full fully just seat seated bottomed contact touching flush bridge index top bottom ' +
    'hot cold warm warmed neutral drive gear idle idling steady highest lowest slow fast second third high low step cam ' +
    'dwell crank crankshaft distributor tdc advance retard engine speed ' +
    'drill drills twist bit wire leaf feeler gauge gage pin rod round flat plug blade ' +
    'diameter dia dia. bore wide thick long gap clearance clear travel lift depth width drop ' +
    'open shut closed free edge center centre end float casting face rim bowl cover gasket flange stop lever ' +
    'throttle choke plate plates valve vacuum gauge absolute depression fuel level measured dry wet nominal size ' +
    'primary secondary left right front rear upper lower inner outer counting'
  ).split(' '),
);

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
]);

/** Words after a number that name a gauge, and the system they stand for. Longest first. */
export const SYSTEM_WORDS: readonly (readonly [string, GaugeSystem | 'drill' | 'bare-swg'])[] = [
  ['imperial standard wire gauge', 'swg'],
  ['standard wire gauge', 'bare-swg'],
  ['us steel wire gauge', 'us-steel-wire'],
  ['u.s. steel wire gauge', 'us-steel-wire'],
  ['us steel wire', 'us-steel-wire'],
  ['american wire gauge', 'awg'],
  ['swg (imperial)', 'swg'],
  ['swg, imperial', 'swg'],
  ['swg imperial', 'swg'],
  ['imperial swg', 'swg'],
  ['british swg', 'swg'],
  ['us swg', 'us-steel-wire'],
  ['swg (us steel)', 'us-steel-wire'],
  ['s.w.g.', 'bare-swg'],
  ['swg', 'bare-swg'],
  ['a.w.g.', 'awg'],
  ['awg', 'awg'],
  ['b & s', 'awg'],
  ['b&s', 'awg'],
  ['w & m', 'us-steel-wire'],
  ['w&m', 'us-steel-wire'],
  ['music wire gauge', 'music-wire'],
  ['music wire', 'music-wire'],
  ['piano wire', 'music-wire'],
  ['bwg', 'bwg'],
  ['twist drill', 'drill'],
  ['drill bit', 'drill'],
  ['drill', 'drill'],
];

/** Words after a size that make it a gauge named by its own size. */
export const SIZED_GAUGE_WORDS: readonly (readonly [string, 'wire' | 'leaf' | 'pin'])[] = [
  ['wire gauge', 'wire'],
  ['wire gage', 'wire'],
  ['round wire', 'wire'],
  ['wire feeler', 'wire'],
  ['wire', 'wire'],
  ['leaf feeler', 'leaf'],
  ['feeler leaf', 'leaf'],
  ['feeler gauge', 'leaf'],
  ['feeler blade', 'leaf'],
  ['leaves', 'leaf'],
  ['leaf', 'leaf'],
  ['feeler', 'leaf'],
  ['blade', 'leaf'],
  ['plug gauge', 'pin'],
  ['gauge pin', 'pin'],
  ['pin', 'pin'],
  ['rod', 'pin'],
];

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
