import type { Dimension } from '../quantity/model.ts';

/**
 * The units in which papers and gauges of the trade tell each dimension (common practice, no
 * source): what a number may have been meant in, where its column's unit cannot be right.
 */
export const commonUnits: Readonly<Partial<Record<Dimension, readonly string[]>>> = {
  length: ['in', 'mm', 'thou'],
  turns: ['turns', 'flats'],
  angle: ['°'],
  speed: ['rpm'],
  vacuum: ['inHg', 'kPa', 'mbar', 'mmHg', 'cmHg'],
  pressure: ['psi', 'bar', 'kPa', 'mbar'],
  volume: ['cm3', 'in3'],
  delivery: ['cm3 per 10 strokes', 'cm3 per stroke'],
  torque: ['ft-lb', 'in-lb', 'N·m', 'kgf·m'],
  time: ['s', 'ms'],
  temperature: ['°F', '°C'],
  percent: ['%'],
};
