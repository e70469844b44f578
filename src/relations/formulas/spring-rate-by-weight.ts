import { defineSpringRate } from '../spring-rate.ts';

/** The same of loads that a paper tells as weights: ounces, pounds, grams. */
export default defineSpringRate({
  id: 'spring-rate-by-weight',
  title: 'Spring rate from two weights',
  dimension: 'mass',
  source: 'Hooke’s law; a weight presses as it does under standard gravity, 9.80665 m/s²',
});
