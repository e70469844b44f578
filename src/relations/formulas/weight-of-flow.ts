import { defineRelation } from '../define-relation.ts';
import { divide, multiply } from '../interval.ts';

/** A flow of a mL/s at a density of 1000 kg/m³ is a gram a second. */
const THOUSAND = { lo: 1000, hi: 1000 };

/** The weight of fuel that a flow carries, by the fuel's density. */
export default defineRelation({
  id: 'weight-of-flow',
  title: 'Weight of fuel in a flow',
  formula: 'weight flow = flow × ρ',
  quantities: {
    flow: { label: 'flow', symbol: 'flow', dimension: 'flow' },
    density: { label: 'density of the fuel', symbol: 'ρ', dimension: 'density' },
    'weight-flow': {
      label: 'weight of fuel in a time',
      symbol: 'weight flow',
      dimension: 'mass-flow',
    },
  },
  source: 'by definition of density',
  assumptions: ['The density is that of the fuel at the temperature it is timed at.'],
  range: 'ρ > 0',
  solutions: [
    {
      for: 'weight-flow',
      from: ['flow', 'density'],
      told: '{flow} of fuel of {density} is {worked}',
      above: ['density'],
      solve: ({ flow, density }) => divide(multiply(flow, density), THOUSAND),
    },
    {
      for: 'flow',
      from: ['weight-flow', 'density'],
      told: '{weight-flow} of fuel of {density} is {worked}',
      above: ['density'],
      solve: ({ 'weight-flow': weight, density }) => divide(multiply(weight, THOUSAND), density),
    },
    {
      for: 'density',
      from: ['weight-flow', 'flow'],
      told: '{weight-flow} in a flow of {flow} asks for {worked}',
      above: ['flow'],
      offer: false,
      solve: ({ 'weight-flow': weight, flow }) => divide(multiply(weight, THOUSAND), flow),
    },
  ],
});
