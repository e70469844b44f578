import { definePairFlow } from '../pair-balance.ts';

/** The same by a meter that tells weights of air, as most do. */
export default definePairFlow({
  id: 'pair-flow-by-weight',
  title: 'Balance by weight of air',
  dimension: 'mass-flow',
});
