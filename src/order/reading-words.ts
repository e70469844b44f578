/**
 * English as steps use it: the words that bind, deny, condition and describe. Nothing here knows of
 * any kind of unit; what verbs and parts mean is the kind's own data.
 */
function words(text: string): ReadonlySet<string> {
  return new Set(text.trim().split(/\s+/));
}

export const DETERMINERS = words(`
  the a an its their his her your our my each every both all either any no some this these those
  one two three four five six seven eight several other another same such
`);

/** Describing words that leave a part the same part: `the old brass cover`. */
export const ADJECTIVES = words(`
  new fresh old own bare dry clean complete whole entire upper lower top bottom front rear left right
  first second third last main primary secondary brass bronze cast zinc alloy iron hot warm cold
  small large little big short long good sound correct thin thick spare loose assembled finished
  stripped remaining original inner outer near far said worn used paper cork fiber nice lovely decent proper brand shiny tired nasty
  precious poor dirty greasy soft single remaining flat plain gummy sticky filthy crusty fat
  suitable second-hand ordinary
`);

/** What may stand around a verb without changing what it does. */
export const ADVERBS = words(`
  again now then next still just once twice first last finally also only even right straight quite
  fully wide well down up back away aside home together apart alike over whole dry clear free square
  flat level upright inverted outdoors outside inside indoors ashore once more here there yet too
  thereafter afterwards afterward later soon meanwhile please simply evenly crosswise slow fast hard
  further part half gently slightly wholly so bodily forward upward downward upwards downwards
  off out on in by hand complete therefore thus always altogether likewise alike too around round across
`);

export const PARTICLES = words('off out on in up down over back away apart open shut clear');

export const PREPOSITIONS = words(`
  of in on under over with between at by for from to into onto against through beside beneath below
  above toward towards behind along across around round about near past upon within inside outside
  during per via clear
`);

export const CONJUNCTIONS = words('and or but nor then plus');

/** They make everything that hangs on them a mere possibility. */
export const CONDITIONALS = words('if unless whenever lest provided providing suppose');

/** Before a colon these at the head say a case: `Out of limits: shut down`. */
export const CASES = words(`
  outside over too more less worn cracked bent still not wrong otherwise else crooked burned pitted
  burnt short long high low out no
`);

/** After these a condition only says whether there is anything to do: `if fitted`, `if not off yet`. */
export const PRESENCE = words(
  'fitted present used provided there any so equipped employed installed',
);

/** They bring a state in which something is done, or that is waited for: what they say holds. */
export const STATIVES = words('until till when once while whilst after that so as');

/** What follows has not happened, or not at all. */
export const UNDONE = words(
  'before without because since instead rather lest prior whether which how what why',
);

export const NEGATIONS = words(`
  not never don't doesn't mustn't cannot can't won't shouldn't nor neither avoid beware hardly
`);

/** After a negation these turn it round: `do not forget to refit the gasket`. */
export const OMISSIONS = words('forget omit fail neglect');

export const PRONOUNS = words('it them they');

export const SUBJECTS = words(
  'you we i he she they one who fitter mechanic helper assistant operator restorer owner driver',
);

/** Words of being and staying: between a part and its condition or its participle. */
export const COPULAS = words(`
  is are was were be been being stands stand stays stay remains remain lies lie sits sit rests rest
  comes come falls fall drops drop goes go hangs hang returns return held kept left standing resting
  lying hanging remaining has have had having gets get grows grow becomes become feels reads
`);

export const MODALS = words('must should shall will need needs ought to may can might could would');

/** Before a condition these keep it from being so: a plate that is half open is not open. */
export const DEGREES = words(`
  half part partly partially halfway third quarter slightly nearly almost little midway cracked
`);

/** Behind a particle these turn a sentence round: `Back goes the lid`. */
export const GOING = words('go goes come comes drop drops slide slides pop pops went came');

/** How far a screw goes, before the way that it goes: `one turn in`, `two flats down`. */
export const MEASURES = words('turn turns flat flats notch notches thread threads mark');

/** Work on a thing that is not moved by it: `wipe the cover off` takes nothing off. */
export const CLEANING = words(`
  wipe wash dry blow clean dust brush rinse scrub polish flush drain mop rub hose sponge number check
  mark scribe label tag inspect examine search look try gauge measure compare draw sketch note watch
  want need like see wet oil grease
`);

/** With these a thing only may be, unless it may `now` be or may `then` be. */
export const POSSIBLES = words('may can might could would');

/** Before `to` these make the verb after it a demand: `be sure to close the throttle`. */
export const DEMANDS = words(`
  sure remember forget omit fail neglect careful need needs has have is are ought necessary best
  important essential proceed continue
`);

/**
 * Words too short to mean a condition by themselves in running text: they count only behind a
 * copula or `with`, and at the end of what is said.
 */
export const WEAK = words(`
  in on off out set down up step engine bench back slow clear home contact cool warm high named still
  loose released highest fast free hard firm snug away aside slack gone lifted drawn second
`);

/** Past participles (and where it differs the past) that do not follow the rule. */
const IRREGULAR: Readonly<Record<string, string>> = {
  take: 'taken',
  put: 'put',
  set: 'set',
  shut: 'shut',
  draw: 'drawn',
  swing: 'swung',
  hold: 'held',
  hang: 'hung',
  leave: 'left',
  let: 'let',
  lay: 'laid',
  run: 'run',
  wind: 'wound',
  bring: 'brought',
  undo: 'undone',
  keep: 'kept',
  make: 'made',
  cut: 'cut',
  get: 'got',
  give: 'given',
  spring: 'sprung',
  stand: 'stood',
  fall: 'fallen',
  slide: 'slid',
  drive: 'driven',
  throw: 'thrown',
  tie: 'tied',
  withdraw: 'withdrawn',
  unwind: 'unwound',
  rewind: 'rewound',
  reset: 'reset',
  spin: 'spun',
  stick: 'stuck',
  bear: 'borne',
  find: 'found',
  feel: 'felt',
  meet: 'met',
  sit: 'sat',
  shake: 'shaken',
  tear: 'torn',
  break: 'broken',
  go: 'gone',
  come: 'come',
  spread: 'spread',
  bind: 'bound',
  lie: 'lain',
  thread: 'threaded',
  split: 'split',
};

const PLAIN: ReadonlyMap<string, string> = new Map(
  Object.entries(IRREGULAR).map(([plain, past]) => [past, plain]),
);

/** Whether a word may be a past participle, of a verb that nobody knows too. */
export function isParticiple(word: string): boolean {
  return (word.length > 4 && word.endsWith('ed')) || PLAIN.has(word);
}

export type Form = 'base' | 's' | 'ing' | 'past';

/** The forms of an English verb from its plain one, by rule and by the table of exceptions. */
export function formsOf(verb: string): readonly (readonly [Form, string])[] {
  const doubled =
    /^(?:un|re)?[^aeiou]+[aeiou][bdgklmnprt]$/.test(verb) && !/[aeiou]{2}.$/.test(verb);
  const stem = doubled ? verb + verb.slice(-1) : verb.replace(/e$/, '');
  const soft = /[^aeiou]y$/.test(verb) ? verb.replace(/y$/, 'i') : stem;
  const s = /(?:s|x|ch|sh|o)$/.test(verb)
    ? `${verb}es`
    : soft.endsWith('i')
      ? `${soft}es`
      : `${verb}s`;
  return [
    ['base', verb],
    ['s', s],
    ['ing', verb === 'tie' ? 'tying' : `${stem}ing`],
    ['past', (Object.hasOwn(IRREGULAR, verb) ? IRREGULAR[verb] : undefined) ?? `${soft}ed`],
  ];
}

/** The plain forms that a word may be a form of, itself first; most of them are no words at all. */
export function plainForms(word: string): ReadonlySet<string> {
  const plain = new Set([word]);
  const irregular = PLAIN.get(word);
  if (irregular !== undefined) plain.add(irregular);
  const add = (ending: string): void => {
    const stem = word.slice(0, -ending.length);
    plain.add(stem).add(`${stem}e`);
    if (stem.endsWith('i')) plain.add(`${stem.slice(0, -1)}y`);
    if (stem.length > 2 && stem.at(-1) === stem.at(-2)) plain.add(stem.slice(0, -1));
  };
  if (word === 'tying') plain.add('tie');
  if (word.length < 3) return plain;
  if (word.endsWith('s')) add('s');
  if (word.endsWith('es')) add('es');
  if (word.endsWith('ed')) add('ed');
  if (word.endsWith('ing')) add('ing');
  return plain;
}
