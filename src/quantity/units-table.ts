import type { Dimension, PressureReference, Rational } from './model.ts';
import { ONE, rational } from './rational.ts';

/** One line of the table of units; `units.ts` makes a unit of it. */
export interface UnitRow {
  readonly dimension: Dimension;
  readonly factor: Rational;
  readonly spellings: string;
  readonly offset?: Rational;
  readonly neverVacuum?: boolean;
  readonly reference?: PressureReference;
  readonly counted?: boolean;
  readonly metric?: boolean;
}

/** Every way of writing two words that belong together, whichever stands first: `lb ft`, `ft/lbs`. */
function eitherWay(one: string, other: string): string {
  const joints = [' ', '-', '·', '/'];
  const pairs = one
    .split('|')
    .flatMap((a) => other.split('|').flatMap((b) => [[a, b] as const, [b, a] as const]));
  return pairs.flatMap(([a, b]) => joints.map((joint) => `${a}${joint}${b}`)).join('|');
}

/** Every way of writing one thing over another: `lb/sq in`, `lb per square inch`, `lb in²`. */
function over(top: string, bottom: string): string {
  const joints = ['/', ' per ', ' '];
  return top
    .split('|')
    .flatMap((a) => bottom.split('|').flatMap((b) => joints.map((joint) => `${a}${joint}${b}`)))
    .join('|');
}

/** The ohm behind each of some prefixes, spelled out and as its sign. */
function eachOhm(prefixes: string): string {
  return prefixes
    .split('|')
    .flatMap((prefix) => ['ohms', 'ohm', 'ω'].map((ohm) => `${prefix}${ohm}`))
    .join('|');
}

const PERCENT = [
  'percent by volume',
  'per cent by volume',
  '% by volume',
  'vol.-%',
  'vol-%',
  'vol.%',
  'vol. %',
  'vol %',
  '% vol.',
  '% vol',
  'percent',
  'per cent',
  '%',
];

const POUNDS = 'lb|lbs|lbf|lb f|pound|pounds';
const SQUARE_INCH = 'sq in|sq ins|sq inch|square inch|in²|in2|inch²|sqin';
const SQUARE_CM = 'cm²|cm2|sq cm|sqcm|square centimeter|square centimetre|qcm';

const inch = rational('25.4');
const cubicInch = inch.mul(inch).mul(inch).div(1000);
const poundForce = rational('0.45359237').mul(rational('9.80665'));
/** Density of mercury at 0 °C times standard gravity: the conventional column, Pa a millimeter. */
const mercuryMm = rational('13.5951').mul(rational('9.80665'));
const waterMm = rational('9.80665');
const psi = poundForce.div(inch.mul(inch).div(1_000_000));
const usGallon = cubicInch.mul(231);
const imperialGallon = rational('4546.09');

/**
 * Units, exact by definition: international yard and pound agreement of 1959; SI Brochure, 9th
 * edition; conventional columns of mercury and water with 13.5951 and 1 g/cm³ at 9.80665 m/s²
 * (NIST SP 811, appendix B).
 */
export const UNIT_ROWS: Readonly<Record<string, UnitRow>> = {
  in: {
    dimension: 'length',
    factor: inch,
    spellings: "of an inch|of an in.|of one inch|inches|inch|ins.|ins|in.|in|″|\"|”|“|''|’’|′′",
  },
  mm: {
    dimension: 'length',
    factor: ONE,
    spellings: 'millimeters|millimetres|millimeter|millimetre|mms|m/ms|m/m|mm.|mm',
    metric: true,
  },
  thou: {
    dimension: 'length',
    factor: inch.div(1000),
    spellings:
      'thousandths of an inch|thousandths of one inch|thousandths inch|thousandths|thousandth|thous|thou|mils|mil',
  },
  'hundredths of mm': {
    dimension: 'length',
    factor: rational(1, 100),
    spellings:
      'hundredths of a millimeter|hundredths of a millimetre|hundredths of one mm|hundredths of a mm|hundredths of mm|hundredths mm',
    metric: true,
  },
  cm: {
    dimension: 'length',
    factor: rational(10),
    spellings: 'centimeters|centimetres|centimeter|centimetre|cms|c/m|cm',
    metric: true,
  },
  um: {
    dimension: 'length',
    factor: rational(1, 1000),
    spellings: 'microns|micron|µm|μm',
    metric: true,
  },
  ft: { dimension: 'length', factor: inch.mul(12), spellings: 'feet|foot|ft.|ft|′' },
  m: {
    dimension: 'length',
    factor: rational(1000),
    spellings: 'meters|metres|meter|metre|m',
    metric: true,
  },

  turn: { dimension: 'turns', factor: ONE, spellings: 'turns|turn', counted: true },
  flat: { dimension: 'turns', factor: rational(1, 6), spellings: 'flats|flat', counted: true },

  deg: { dimension: 'angle', factor: ONE, spellings: 'degrees|degree|degs|deg.|deg|°|º' },

  rpm: {
    dimension: 'speed',
    factor: ONE,
    spellings:
      'revolutions per minute|r.p.m.|r.p.m|revolutions a minute|revs per minute|rev. per min.|rev per min|revs. per min.|rpm|rev./min.|rev/min|revs/min|revolutions/min|revs per min|revs/m|revs|revolutions|r/min|min⁻¹|min-1|1/min|' +
      // German, French and Italian papers.
      'umdrehungen/min|umdr/min|upm|u/min|u/m|tours/min|tours/mn|tr/min|tr/mn|t/min|t/mn|giri/min',
  },

  psi: {
    dimension: 'pressure',
    factor: psi,
    neverVacuum: true,
    spellings: `${over(POUNDS, SQUARE_INCH)}|lbs pressure|lb pressure|pounds pressure|p.s.i.|psi`,
  },
  // A technical atmosphere over ambient or over nothing, as German papers tell it.
  atü: {
    dimension: 'pressure',
    factor: rational('98066.5'),
    spellings: 'atü',
    reference: 'gauge',
    metric: true,
  },
  ata: {
    dimension: 'pressure',
    factor: rational('98066.5'),
    spellings: 'ata',
    reference: 'absolute',
    metric: true,
  },
  psig: { dimension: 'pressure', factor: psi, spellings: 'psig', reference: 'gauge' },
  psia: { dimension: 'pressure', factor: psi, spellings: 'psia', reference: 'absolute' },
  bar: { dimension: 'pressure', factor: rational(100_000), spellings: 'bar', metric: true },
  mbar: {
    dimension: 'pressure',
    factor: rational(100),
    spellings: 'millibars|millibar|mbar|mb',
    metric: true,
  },
  kPa: {
    dimension: 'pressure',
    factor: rational(1000),
    spellings: 'kilopascals|kpa',
    metric: true,
  },
  hPa: { dimension: 'pressure', factor: rational(100), spellings: 'hpa', metric: true },
  Pa: { dimension: 'pressure', factor: ONE, spellings: 'pascals|pascal|pa', metric: true },
  'kgf/cm2': {
    dimension: 'pressure',
    factor: rational('98066.5'),
    spellings: over('kgf|kg|kgs|kp|kilograms|kilogrammes', SQUARE_CM),
    metric: true,
  },
  'gf/cm2': {
    dimension: 'pressure',
    factor: rational('98.0665'),
    spellings: over('gf|g|gr|grs|gms|gm|grams|grammes|p', SQUARE_CM),
    metric: true,
  },
  atm: { dimension: 'pressure', factor: rational(101_325), spellings: 'atm', metric: true },
  inHg: {
    dimension: 'vacuum',
    factor: mercuryMm.mul(inch),
    spellings:
      'inches of mercury vacuum|inches of vacuum|inches vacuum|inches vac|inch vacuum|in. of vacuum|in. vacuum|in. vac.|in. vac|in vacuum|in vac|ins. vacuum|ins vacuum|" vacuum|″ vacuum|” vacuum|in. of mercury|ins of mercury|ins of hg|in of hg|ins mercury|inch mercury|inch of mercury|in mercury|" mercury|" of mercury|″ of mercury|in. of hg|inches of hg|in/hg|ins. hg|ins hg|inches of mercury|inches mercury|inches hg|inch hg|in. hg|in.hg|in hg|inhg|"hg|" hg|″hg|″ hg|”hg|” hg',
  },
  mmHg: {
    dimension: 'vacuum',
    factor: mercuryMm,
    spellings:
      'millimeters of mercury|millimetres of mercury|mm of mercury|mm of hg|mm mercury|mm/hg|mm hg|mmhg|mm qs|mm q s|torr',
    metric: true,
  },
  cmHg: {
    dimension: 'vacuum',
    factor: mercuryMm.mul(10),
    spellings:
      'centimeters of mercury|centimetres of mercury|cm of mercury|cm of hg|cm mercury|cm hg|cmhg',
    metric: true,
  },
  inH2O: {
    dimension: 'pressure',
    factor: waterMm.mul(inch),
    spellings:
      'inches of water|inches water|ins of water|in of water|in water|" of water|" water|in wg|in. h2o|in h2o|inh2o|in h₂o|inh₂o|in wc',
  },
  mmH2O: {
    dimension: 'pressure',
    factor: waterMm,
    spellings:
      'millimeters of water|millimetres of water|mm of water|mm water|mm ws|mm ce|mm c e|mm h2o|mmh2o|mm h₂o|mmh₂o',
    metric: true,
  },

  cm3: {
    dimension: 'volume',
    factor: ONE,
    spellings:
      'cubic centimeters|cubic centimetres|cubic cm|cu. cm.|cu cms|cu cm|ccm|cmc|cm³|cm3|ccs|c.c.|cc.|cc|milliliters|millilitres|milliliter|millilitre|mls|ml',
    metric: true,
  },
  in3: {
    dimension: 'volume',
    factor: cubicInch,
    spellings: 'cubic inches|cubic inch|cubic in|cu inches|cu. ins|cu. in.|cu in|in³|in3',
  },
  L: {
    dimension: 'volume',
    factor: rational(1000),
    spellings: 'liters|litres|liter|litre|ltrs|ltr|l',
    metric: true,
  },
  'US fl oz': {
    dimension: 'volume',
    factor: usGallon.div(128),
    spellings: 'us fluid ounces|us fluid ounce|us fluid oz|us fl. oz.|us fl ozs|us fl oz',
  },
  'US pt': {
    dimension: 'volume',
    factor: usGallon.div(8),
    spellings: 'us pints|us pint|us pts|us pt',
  },
  'US gal': {
    dimension: 'volume',
    factor: usGallon,
    spellings: 'us gallons|us gallon|us gals|us gal',
  },
  'imp fl oz': {
    dimension: 'volume',
    factor: imperialGallon.div(160),
    spellings:
      'imperial fluid ounces|imperial fluid ounce|imperial fl oz|imp fluid ounces|imp. fl. oz.|imp fl ozs|imp fl oz',
  },
  'imp pt': {
    dimension: 'volume',
    factor: imperialGallon.div(8),
    spellings: 'imperial pints|imperial pint|imperial pt|imp pints|imp pint|imp pts|imp. pt|imp pt',
  },
  'imp gal': {
    dimension: 'volume',
    factor: imperialGallon,
    spellings:
      'imperial gallons|imperial gallon|imperial gal|imp gallons|imp gallon|imp gals|imp. gal|imp gal',
  },

  'ft-lb': {
    dimension: 'torque',
    factor: poundForce.mul(inch).mul(12).div(1000),
    spellings: eitherWay(POUNDS, 'ft|foot|feet'),
  },
  'in-oz': {
    dimension: 'torque',
    factor: poundForce.mul(inch).div(16_000),
    spellings: eitherWay('oz|ozs|ozf|ounce|ounces', 'in|ins|inch|inches'),
  },
  'in-lb': {
    dimension: 'torque',
    factor: poundForce.mul(inch).div(1000),
    spellings: eitherWay(POUNDS, 'in|ins|inch|inches'),
  },
  N·m: {
    dimension: 'torque',
    factor: ONE,
    spellings:
      'newton meters|newton metres|newton-meters|newton-metres|newton meter|newton metre|newton-meter|newton-metre|n·m|n.m|n-m|n⋅m|nm|n m|m n|m.n|mn',
    metric: true,
  },
  daN·m: {
    dimension: 'torque',
    factor: rational(10),
    spellings: 'dan·m|dan.m|dan m|danm|m.dan|m dan|mdan',
    metric: true,
  },
  kgf·m: {
    dimension: 'torque',
    factor: rational('9.80665'),
    spellings: `${eitherWay('kg|kgf|kp', 'm')}|kgfm|kgm|kpm|mkg|mkp`,
    metric: true,
  },

  kgf·cm: {
    dimension: 'torque',
    factor: rational('0.0980665'),
    spellings: `${eitherWay('kg|kgf|kp', 'cm')}|kgcm|cmkg|cmkp`,
    metric: true,
  },

  notch: {
    dimension: 'notches',
    factor: ONE,
    spellings: 'notches|notch|grooves|groove',
    counted: true,
  },

  s: {
    dimension: 'time',
    factor: ONE,
    spellings: 'seconds|second|secs|sec.|sec|sek|s',
    metric: true,
  },
  ms: {
    dimension: 'time',
    factor: rational(1, 1000),
    spellings: 'milliseconds|millisecond|ms',
    metric: true,
  },
  minute: { dimension: 'time', factor: rational(60), spellings: 'minutes|minute|mins' },
  h: { dimension: 'time', factor: rational(3600), spellings: 'hours|hour|hrs|hr|h' },

  g: {
    dimension: 'mass',
    factor: ONE,
    spellings: 'grams|grammes|gramme|gram|gms|gm|g',
    metric: true,
  },
  kg: {
    dimension: 'mass',
    factor: rational(1000),
    spellings: 'kilograms|kilogram|kilogrammes|kilogramme|kgs|kg',
    metric: true,
  },
  oz: { dimension: 'mass', factor: rational('28.349523125'), spellings: 'ounces|ounce|ozs|oz.|oz' },
  lb: { dimension: 'mass', factor: rational('453.59237'), spellings: 'pounds|pound|lbs|lb.|lb' },

  N: { dimension: 'force', factor: ONE, spellings: 'newtons|newton|n', metric: true },
  gf: {
    dimension: 'force',
    factor: rational('0.00980665'),
    spellings: 'grams-force|gram-force|grams force|gram force|gf',
    metric: true,
  },
  kgf: {
    dimension: 'force',
    factor: rational('9.80665'),
    spellings: 'kilograms-force|kilogram-force|kilopond|kgf|kp',
    metric: true,
  },
  ozf: {
    dimension: 'force',
    factor: poundForce.div(16),
    spellings: 'ounces-force|ounce-force|ounces force|ounce force|ozf',
  },
  lbf: {
    dimension: 'force',
    factor: poundForce,
    spellings: 'pounds-force|pound-force|pounds force|pound force|lbf.|lbf',
  },

  uF: {
    dimension: 'capacitance',
    factor: ONE,
    // Old papers write `mfd` for a millionth; both signs of micro are in use.
    spellings:
      'microfarads|microfarad|micro farads|micro-farads|mfds|mfd.|mfd|m.f.d.|mf|m.f.|µfd|μfd|µf|μf|uf',
    metric: true,
  },

  ohm: { dimension: 'resistance', factor: ONE, spellings: 'ohms|ohm|ω', metric: true },
  kilohm: {
    dimension: 'resistance',
    factor: rational(1000),
    spellings: `kilohms|kilohm|${eachOhm('kilo-|kilo|kilo |k-|k|k ')}`,
    metric: true,
  },
  // A thousandth of an ohm is read by nothing of the trade: `read.ts` tells its small letter.
  megohm: {
    dimension: 'resistance',
    factor: rational(1_000_000),
    spellings: `megohms|megohm|megs|meg|${eachOhm('mega-|mega|mega |meg-|meg |m-|m|m ')}`,
    metric: true,
  },
  nF: {
    dimension: 'capacitance',
    factor: rational(1, 1000),
    spellings: 'nanofarads|nanofarad|nano farads|nano-farads|nf',
    metric: true,
  },
  pF: {
    dimension: 'capacitance',
    factor: rational(1, 1_000_000),
    // A millionth of a millionth was `mmfd` before it was pico.
    spellings:
      'picofarads|picofarad|pico farads|pico-farads|micromicrofarads|micromicrofarad|mmfds|mmfd.|mmfd|m.m.f.d.|mmf|m.m.f.|µµfd|μμfd|µµf|μμf|uuf|pf',
    metric: true,
  },

  V: { dimension: 'voltage', factor: ONE, spellings: 'volts|volt|v', metric: true },
  mV: {
    dimension: 'voltage',
    factor: rational(1, 1000),
    spellings: 'millivolts|millivolt|mv',
    metric: true,
  },
  kV: {
    dimension: 'voltage',
    factor: rational(1000),
    spellings: 'kilovolts|kilovolt|kv',
    metric: true,
  },
  A: {
    dimension: 'current',
    factor: ONE,
    spellings: 'amperes|ampere|ampères|ampère|amps|amp|a',
    metric: true,
  },
  mA: {
    dimension: 'current',
    factor: rational(1, 1000),
    spellings: 'milliamperes|milliampere|milliamps|milliamp|ma',
    metric: true,
  },

  'kg/m3': { dimension: 'density', factor: ONE, spellings: 'kg/m³|kg/m3', metric: true },
  'g/cm3': {
    dimension: 'density',
    factor: rational(1000),
    spellings: 'g/cm³|g/cm3|g/ml|g/cc|kg/l',
    metric: true,
  },

  degC: {
    dimension: 'temperature',
    factor: ONE,
    spellings:
      '°c|° c|ºc|degrees celsius|degrees centigrade|degrees cent|degrees c|deg celsius|deg centigrade|deg c|° celsius|° centigrade|°celsius|°centigrade|° cent|℃',
    metric: true,
  },
  degF: {
    dimension: 'temperature',
    factor: rational(5, 9),
    offset: rational(-160, 9),
    spellings:
      '°f|° f|ºf|degrees fahrenheit|degrees fahr|degrees f|deg fahrenheit|deg f|° fahrenheit|°fahrenheit|° fahr|℉',
  },

  mm2: { dimension: 'area', factor: ONE, spellings: 'mm²|mm2|sq mm|sq. mm', metric: true },
  cm2: {
    dimension: 'area',
    factor: rational(100),
    spellings: 'cm²|cm2|sq cm|sq. cm',
    metric: true,
  },
  in2: { dimension: 'area', factor: inch.mul(inch), spellings: 'in²|in2|sq in|sq. in.' },

  percent: {
    dimension: 'percent',
    factor: ONE,
    spellings: PERCENT.flatMap((each) => [`${each} co by volume`, `${each} co`, each]).join('|'),
    metric: true,
  },
};
