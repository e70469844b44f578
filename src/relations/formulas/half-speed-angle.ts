import { halfSpeed } from '../half-speed.ts';

/** The same angle told at the camshaft, or what it drives, and at the crank. */
export default halfSpeed({
  id: 'half-speed-angle',
  title: 'Degrees of a half-speed shaft and of the crank',
  formula: 'crank degrees = 2 × shaft degrees',
  dimension: 'angle',
});
