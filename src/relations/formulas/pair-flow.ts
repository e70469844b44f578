import { definePairFlow } from '../pair-balance.ts';

/** The balance of instruments by a meter that tells volumes of air. */
export default definePairFlow({ id: 'pair-flow', title: 'Balance by flow', dimension: 'flow' });
