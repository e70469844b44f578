import { halfSpeed } from '../half-speed.ts';

/** The same speed told at the camshaft, or what it drives, and at the crank. */
export default halfSpeed({
  id: 'half-speed-shaft',
  title: 'Speed of a half-speed shaft and of the crank',
  formula: 'crank speed = 2 × shaft speed',
  dimension: 'speed',
});
