import { defineSpringRate } from '../spring-rate.ts';

/** How stiff a spring is, from what presses it to two lengths, as forces. */
export default defineSpringRate({
  id: 'spring-rate',
  title: 'Spring rate from two loads',
  dimension: 'force',
  source: 'Hooke’s law',
});
