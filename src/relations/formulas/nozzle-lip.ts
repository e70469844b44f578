import { defineRelation, refuse } from '../define-relation.ts';
import { fromNothing, subtract } from '../interval.ts';

/** How far the fuel stands below the lip of the nozzle that it is lifted to. */
export default defineRelation({
  id: 'nozzle-lip',
  title: 'Fuel below the lip of the nozzle',
  formula: 'lift = level − nozzle, both below the rim of the bowl',
  quantities: {
    level: { label: 'fuel level', symbol: 'level', dimension: 'length' },
    nozzle: { label: 'nozzle lip below the rim', symbol: 'nozzle', dimension: 'length' },
    lift: { label: 'lift to the nozzle', symbol: 'lift', dimension: 'length' },
  },
  source: 'both are depths below the rim of the bowl: by definition',
  assumptions: [
    'The unit stands level, and its bowl is vented to the air that the nozzle opens into.',
    'Level and nozzle are measured down from one rim.',
  ],
  range: 'level > nozzle',
  solutions: [
    {
      for: 'lift',
      from: ['level', 'nozzle'],
      told: 'fuel at {level} stands {worked} below a nozzle at {nozzle}',
      solve({ level, nozzle }) {
        if (level.hi <= nozzle.lo) {
          return refuse(
            'fuel at {level} below the rim stands no lower than the nozzle at {nozzle}: it runs out by itself',
            'correct the fuel level or the depth of the nozzle',
            'level',
            'nozzle',
          );
        }
        const lift = subtract(level, nozzle);
        return fromNothing(lift);
      },
    },
  ],
});
