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
    spellings: "of an inch|of one inch|inches|inch|ins.|ins|in.|in|″|\"|”|“|''|’’|′′",
  },
  mm: {
    dimension: 'length',
    factor: ONE,
    spellings: 'millimeters|millimetres|millimeter|millimetre|mm.|mm',
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
    spellings: 'centimeters|centimetres|centimeter|centimetre|cm',
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

  deg: { dimension: 'angle', factor: ONE, spellings: 'degrees|degree|deg.|deg|°|º' },

  rpm: {
    dimension: 'speed',
    factor: ONE,
    spellings:
      'revolutions per minute|r.p.m.|r.p.m|revolutions a minute|revs per minute|rev. per min.|rev per min|revs. per min.|rpm|rev./min.|rev/min|revs/min|r/min|min⁻¹|min-1|1/min',
  },

  psi: {
    dimension: 'pressure',
    factor: psi,
    neverVacuum: true,
    spellings:
      'pounds per square inch|lbs. per sq. in.|lbs per sq in|lb. per square inch|lb per square inch|lbs/sq in|lb./sq. in.|lb/sq. in.|lbs/in²|lbs/in2|lbf/in²|lbf/in2|lb/in²|lb/in2|lb/sq in|lb. per sq. in.|lb per sq in|p.s.i.|psi',
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
    spellings: 'kgf/cm²|kgf/cm2|kg/cm²|kg/cm2',
    metric: true,
  },
  atm: { dimension: 'pressure', factor: rational(101_325), spellings: 'atm', metric: true },
  inHg: {
    dimension: 'vacuum',
    factor: mercuryMm.mul(inch),
    spellings:
      'inches of vacuum|inches vacuum|inches vac|inch vacuum|in. of vacuum|in. vacuum|in. vac.|in. vac|in vacuum|in vac|ins. vacuum|ins vacuum|" vacuum|″ vacuum|” vacuum|in. of mercury|in. of hg|inches of hg|ins. hg|ins hg|inches of mercury|inches mercury|inches hg|inch hg|in. hg|in.hg|in hg|inhg|"hg|" hg|″hg|″ hg|”hg|” hg',
  },
  mmHg: {
    dimension: 'vacuum',
    factor: mercuryMm,
    spellings: 'mm of mercury|mm hg|mmhg|torr',
    metric: true,
  },
  cmHg: {
    dimension: 'vacuum',
    factor: mercuryMm.mul(10),
    spellings: 'cm of mercury|cm hg|cmhg',
    metric: true,
  },
  inH2O: {
    dimension: 'pressure',
    factor: waterMm.mul(inch),
    spellings: 'inches of water|in. h2o|in h2o|inh2o|in h₂o|inh₂o|in wc',
  },
  mmH2O: {
    dimension: 'pressure',
    factor: waterMm,
    spellings: 'mm of water|mm h2o|mmh2o|mm h₂o|mmh₂o',
    metric: true,
  },

  cm3: {
    dimension: 'volume',
    factor: ONE,
    spellings:
      'cubic centimeters|cubic centimetres|cu. cm.|cu cm|cm³|cm3|ccs|c.c.|cc.|cc|milliliters|millilitres|milliliter|millilitre|ml',
    metric: true,
  },
  in3: {
    dimension: 'volume',
    factor: cubicInch,
    spellings: 'cubic inches|cubic inch|cu. in.|cu in|in³|in3',
  },
  L: {
    dimension: 'volume',
    factor: rational(1000),
    spellings: 'liters|litres|liter|litre|l',
    metric: true,
  },
  'US fl oz': {
    dimension: 'volume',
    factor: usGallon.div(128),
    spellings: 'us fluid ounces|us fl. oz.|us fl oz',
  },
  'US pt': { dimension: 'volume', factor: usGallon.div(8), spellings: 'us pints|us pint|us pt' },
  'US gal': { dimension: 'volume', factor: usGallon, spellings: 'us gallons|us gallon|us gal' },
  'imp fl oz': {
    dimension: 'volume',
    factor: imperialGallon.div(160),
    spellings: 'imperial fluid ounces|imperial fl oz|imp. fl. oz.|imp fl oz',
  },
  'imp pt': {
    dimension: 'volume',
    factor: imperialGallon.div(8),
    spellings: 'imperial pints|imperial pint|imperial pt|imp pints|imp pint|imp. pt|imp pt',
  },
  'imp gal': {
    dimension: 'volume',
    factor: imperialGallon,
    spellings: 'imperial gallons|imperial gallon|imperial gal|imp gallons|imp. gal|imp gal',
  },

  'ft-lb': {
    dimension: 'torque',
    factor: poundForce.mul(inch).mul(12).div(1000),
    spellings:
      'lbs. ft.|lbs ft|lbs-ft|lbs.ft|ft. lbs.|ft. lbs|ft.lbs.|ft.lbs|ft.-lbs.|ft-lbs.|lb.-ft.|lb/ft|pounds feet|foot-pounds|foot pounds|pounds-feet|pound-feet|pound feet|lbf·ft|lbf-ft|lbf ft|lb·ft|lb-ft|lb ft|lb.ft|lb. ft.|ft·lbf|ft-lbf|ft lbf|ft·lb|ft-lbs|ft-lb|ft lbs|ft lb|ft. lb.|ft.lb|ft.-lb.|ft-lb.',
  },
  'in-lb': {
    dimension: 'torque',
    factor: poundForce.mul(inch).div(1000),
    spellings:
      'lbs. in.|lbs in|lbs-in|lb. in.|lb.in.|lb.in|lb.-in.|inch-pounds|inch pounds|pound-inches|lbf·in|lbf-in|lbf in|lb·in|lb-in|lb in|in·lbf|in-lbf|in lbf|in·lb|in-lbs|in-lb|in lbs|in lb|in. lb.|in.-lb.',
  },
  N·m: {
    dimension: 'torque',
    factor: ONE,
    spellings: 'newton meters|newton metres|newton-meters|newton-metres|n·m|n.m|n-m|n⋅m|nm|n m',
    metric: true,
  },
  kgf·m: {
    dimension: 'torque',
    factor: rational('9.80665'),
    spellings: 'kgf·m|kgf-m|kgf m|kgfm|kg·m|kg-m|kgm|kg m|m-kg|mkg',
    metric: true,
  },

  notch: {
    dimension: 'notches',
    factor: ONE,
    spellings: 'notches|notch|grooves|groove',
    counted: true,
  },

  s: { dimension: 'time', factor: ONE, spellings: 'seconds|second|secs|sec.|sec|s', metric: true },
  ms: {
    dimension: 'time',
    factor: rational(1, 1000),
    spellings: 'milliseconds|millisecond|ms',
    metric: true,
  },
  minute: { dimension: 'time', factor: rational(60), spellings: 'minutes|minute|mins' },
  h: { dimension: 'time', factor: rational(3600), spellings: 'hours|hour|hrs|hr|h' },

  g: { dimension: 'mass', factor: ONE, spellings: 'grams|grammes|gram|gm|g', metric: true },
  kg: {
    dimension: 'mass',
    factor: rational(1000),
    spellings: 'kilograms|kilogram|kg',
    metric: true,
  },
  oz: { dimension: 'mass', factor: rational('28.349523125'), spellings: 'ounces|ounce|oz.|oz' },
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
    spellings: 'microfarads|microfarad|mfds|mfd.|mfd|µf|μf|uf',
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
    spellings: '°c|° c|ºc|degrees c|deg c|℃',
    metric: true,
  },
  degF: {
    dimension: 'temperature',
    factor: rational(5, 9),
    offset: rational(-160, 9),
    spellings: '°f|° f|ºf|degrees f|deg f|℉',
  },

  mm2: { dimension: 'area', factor: ONE, spellings: 'mm²|mm2|sq mm|sq. mm', metric: true },
  cm2: {
    dimension: 'area',
    factor: rational(100),
    spellings: 'cm²|cm2|sq cm|sq. cm',
    metric: true,
  },
  in2: { dimension: 'area', factor: inch.mul(inch), spellings: 'in²|in2|sq in|sq. in.' },

  percent: { dimension: 'percent', factor: ONE, spellings: 'percent|per cent|%', metric: true },
};
