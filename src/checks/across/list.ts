import type { AcrossCheck } from './define.ts';
import interchangeDiffers from './interchange-differs.ts';
import interchangeUnknown from './interchange-unknown.ts';
import partNumberRepeated from './part-number-repeated.ts';
import sameUnitDiffers from './same-unit-differs.ts';
import settingOutlier from './setting-outlier.ts';
import sourceDescribedOtherwise from './source-described-otherwise.ts';
import sourceRepeated from './source-repeated.ts';

/** Every check across sheets, in the order of the findings page. */
export const acrossChecks: readonly AcrossCheck[] = [
  partNumberRepeated,
  sameUnitDiffers,
  interchangeUnknown,
  interchangeDiffers,
  settingOutlier,
  sourceDescribedOtherwise,
  sourceRepeated,
];
