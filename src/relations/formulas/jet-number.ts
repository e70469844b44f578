import { defineRelation } from '../define-relation.ts';

/** The bore that a jet's number stands for. */
export default defineRelation({
  id: 'jet-number',
  title: 'Jet number',
  formula: 'bore = number × 0.01 mm, number × 0.001 in, or the drill of that number',
  source: 'definition of each way of numbering; drills of ASME B94.11M',
  assumptions: [
    'The number says the bore, and the sheet says in which system: hundredths of mm, thousandths of an inch, or drill number.',
    'The jet is as it left the maker, neither worn nor reamed.',
  ],
  range:
    'a number that says a measured flow has no bore: that needs the head, the fuel and the shape of the jet on its maker’s test rig, and is refused',
  quantities: {
    bore: { label: 'bore of the jet', symbol: 'bore', dimension: 'length' },
    marked: { label: 'number on the jet', symbol: 'number', dimension: 'length' },
  },
  solutions: [{ for: 'bore', from: ['marked'], above: ['marked'], solve: ({ marked }) => marked }],
});
