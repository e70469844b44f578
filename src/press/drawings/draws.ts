import type { Draws } from './feed.ts';
import { floatHeight } from './float-height.ts';
import { gapOnLobe } from './gap-on-lobe.ts';
import { leverEdge } from './lever-edge.ts';
import { needleTurns } from './needle-turns.ts';
import { nutFlats } from './nut-flats.ts';
import { offsetPlateGap, plateGap } from './plate-gap.ts';
import { rodInJet } from './rod-in-jet.ts';
import { screwOnLever } from './screw-on-lever.ts';
import { screwUnderSlide } from './screw-under-slide.ts';
import { steppedCam } from './stepped-cam.ts';

/** All drawings of the press. A name without a drawing, or a drawing without a name, does not compile. */
export const draws: Draws = {
  'float-height': floatHeight,
  'plate-gap': plateGap,
  'offset-plate-gap': offsetPlateGap,
  'needle-turns': needleTurns,
  'screw-on-lever': screwOnLever,
  'screw-under-slide': screwUnderSlide,
  'gap-on-lobe': gapOnLobe,
  'stepped-cam': steppedCam,
  'rod-in-jet': rodInJet,
  'nut-flats': nutFlats,
  'lever-edge': leverEdge,
};
