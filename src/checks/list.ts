import { readSheet } from '../sheet/index.ts';
import type { Sheet } from '../sheet/model.ts';
import acceptanceBarred from './acceptance-barred.ts';
import acceptanceUnknown from './acceptance-unknown.ts';
import acceptanceUnreasoned from './acceptance-unreasoned.ts';
import acceptanceUnused from './acceptance-unused.ts';
import { acrossChecks } from './across/list.ts';
import baseUnresolved from './base-unresolved.ts';
import blankToFill from './blank-to-fill.ts';
import cautionLate from './caution-late.ts';
import cautionMissing from './caution-missing.ts';
import conditionBesideFigure from './condition-beside-figure.ts';
import conditionUnknown from './condition-unknown.ts';
import conditionUnsaid from './condition-unsaid.ts';
import countDisagrees from './count-disagrees.ts';
import curveCourseBroken from './curve-course-broken.ts';
import curveDisagrees from './curve-disagrees.ts';
import curveRowOdd from './curve-row-odd.ts';
import curveStationRepeated from './curve-station-repeated.ts';
import curveStationsDisordered from './curve-stations-disordered.ts';
import type { Check, CheckContext, Finding } from './define.ts';
import dimensionWrong from './dimension-wrong.ts';
import directiveUnknown from './directive-unknown.ts';
import dissentUnruled from './dissent-unruled.ts';
import featureDropped from './feature-dropped.ts';
import featureUnknown from './feature-unknown.ts';
import featureUnsaid from './feature-unsaid.ts';
import featuresExclusive from './features-exclusive.ts';
import figureReadOnce from './figure-read-once.ts';
import figuresReversed from './figures-reversed.ts';
import fileUnreadable from './file-unreadable.ts';
import fractionUnruled from './fraction-unruled.ts';
import frontMatterAbsent from './front-matter-absent.ts';
import frontMatterInvalid from './front-matter-invalid.ts';
import frontMatterUnreadable from './front-matter-unreadable.ts';
import gaugeNoneFits from './gauge-none-fits.ts';
import gaugeNonexistent from './gauge-nonexistent.ts';
import gaugeOffNominal from './gauge-off-nominal.ts';
import gaugeOutsideLimits from './gauge-outside-limits.ts';
import gaugeSystemAmbiguous from './gauge-system-ambiguous.ts';
import hazardUnknown from './hazard-unknown.ts';
import hazardUnnamed from './hazard-unnamed.ts';
import headingRepeated from './heading-repeated.ts';
import htmlInText from './html-in-text.ts';
import keyMisspelt from './key-misspelt.ts';
import kindUnknown from './kind-unknown.ts';
import leafInBore from './leaf-in-bore.ts';
import limitsInverted from './limits-inverted.ts';
import limitsTooWide from './limits-too-wide.ts';
import limitsWidened from './limits-widened.ts';
import markBroken from './mark-broken.ts';
import measuredContradicts from './measured-contradicts.ts';
import measuredOutlier from './measured-outlier.ts';
import measuredSpread from './measured-spread.ts';
import measuredTooFew from './measured-too-few.ts';
import measuredUnitsDiffer from './measured-units-differ.ts';
import measuredUnknown from './measured-unknown.ts';
import measuredUnlike from './measured-unlike.ts';
import measuredValueOff from './measured-value-off.ts';
import messageBroken from './message-broken.ts';
import numberTyped from './number-typed.ts';
import numberUnplaced from './number-unplaced.ts';
import olderRuled from './older-ruled.ts';
import operationEarly from './operation-early.ts';
import operationMissing from './operation-missing.ts';
import operationUnknown from './operation-unknown.ts';
import orderUnusual from './order-unusual.ts';
import pageUnsaid from './page-unsaid.ts';
import partLeftOpen from './part-left-open.ts';
import partRefitted from './part-refitted.ts';
import pictureUnprintable from './picture-unprintable.ts';
import pictureUntold from './picture-untold.ts';
import placesDiffer from './places-differ.ts';
import proseDisagrees from './prose-disagrees.ts';
import readBySame from './read-by-same.ts';
import relationUnworkable from './relation-unworkable.ts';
import rulingUnsupported from './ruling-unsupported.ts';
import { runChecks } from './run.ts';
import settingDisturbed from './setting-disturbed.ts';
import settingMissing from './setting-missing.ts';
import settingRepeated from './setting-repeated.ts';
import settingUnknown from './setting-unknown.ts';
import settingUnsourced from './setting-unsourced.ts';
import settingUnused from './setting-unused.ts';
import sheetMisnamed from './sheet-misnamed.ts';
import sheetsJoined from './sheets-joined.ts';
import signalTooMild from './signal-too-mild.ts';
import sizeChopped from './size-chopped.ts';
import sizeLooselyRounded from './size-loosely-rounded.ts';
import sizeUnreadable from './size-unreadable.ts';
import sizeUnusual from './size-unusual.ts';
import sizeWithoutSystem from './size-without-system.ts';
import sizesDisagree from './sizes-disagree.ts';
import sourceUnfindable from './source-unfindable.ts';
import sourceUnknown from './source-unknown.ts';
import sourceUntitled from './source-untitled.ts';
import sourceUnused from './source-unused.ts';
import stateImpossible from './state-impossible.ts';
import stateUnknown from './state-unknown.ts';
import stateUnmet from './state-unmet.ts';
import tableMisplaced from './table-misplaced.ts';
import threadUnknown from './thread-unknown.ts';
import totalDisagrees from './total-disagrees.ts';
import unitSizeUnknown from './unit-size-unknown.ts';
import valueMisplaced from './value-misplaced.ts';
import valueUndefined from './value-undefined.ts';
import variantIdle from './variant-idle.ts';
import workRuleCircular from './work-rule-circular.ts';
import workRuleUnknown from './work-rule-unknown.ts';
import workRuleUnreasoned from './work-rule-unreasoned.ts';
import workedDisagrees from './worked-disagrees.ts';
import workedMissing from './worked-missing.ts';
import yearsReversed from './years-reversed.ts';

const list = [
  // reading
  fileUnreadable,
  frontMatterUnreadable,
  sheetsJoined,
  frontMatterAbsent,
  frontMatterInvalid,
  baseUnresolved,
  variantIdle,
  sheetMisnamed,
  kindUnknown,
  featureUnknown,
  featuresExclusive,
  featureUnsaid,
  featureDropped,
  yearsReversed,
  settingUnknown,
  settingRepeated,
  keyMisspelt,
  unitSizeUnknown,
  settingMissing,
  conditionUnsaid,
  operationUnknown,
  operationMissing,
  headingRepeated,
  valueUndefined,
  markBroken,
  blankToFill,
  settingUnused,
  directiveUnknown,
  htmlInText,
  pictureUnprintable,
  pictureUntold,
  // sizes
  sizeUnreadable,
  conditionUnknown,
  conditionBesideFigure,
  threadUnknown,
  sizeWithoutSystem,
  gaugeNonexistent,
  limitsInverted,
  dimensionWrong,
  sizesDisagree,
  sizeChopped,
  sizeLooselyRounded,
  limitsWidened,
  limitsTooWide,
  sizeUnusual,
  fractionUnruled,
  gaugeOutsideLimits,
  gaugeOffNominal,
  gaugeSystemAmbiguous,
  gaugeNoneFits,
  leafInBore,
  placesDiffer,
  tableMisplaced,
  curveStationRepeated,
  curveStationsDisordered,
  curveCourseBroken,
  curveRowOdd,
  curveDisagrees,
  totalDisagrees,
  relationUnworkable,
  figuresReversed,
  workedDisagrees,
  workedMissing,
  // prose
  valueMisplaced,
  proseDisagrees,
  countDisagrees,
  numberTyped,
  numberUnplaced,
  // order
  stateUnknown,
  operationEarly,
  orderUnusual,
  stateUnmet,
  stateImpossible,
  settingDisturbed,
  partLeftOpen,
  partRefitted,
  workRuleUnknown,
  workRuleUnreasoned,
  workRuleCircular,
  // provenance
  settingUnsourced,
  sourceUnknown,
  sourceUntitled,
  sourceUnfindable,
  sourceUnused,
  pageUnsaid,
  dissentUnruled,
  olderRuled,
  rulingUnsupported,
  measuredTooFew,
  figureReadOnce,
  readBySame,
  measuredUnknown,
  measuredUnitsDiffer,
  measuredUnlike,
  measuredOutlier,
  measuredValueOff,
  measuredContradicts,
  measuredSpread,
  // cautions
  cautionMissing,
  cautionLate,
  messageBroken,
  hazardUnknown,
  hazardUnnamed,
  signalTooMild,
  // acceptance
  acceptanceUnknown,
  acceptanceUnreasoned,
  acceptanceBarred,
  acceptanceUnused,
] as const;

/** The id of every check there is: a closed union, made from the list. */
export type CheckId = (typeof list)[number]['id'];

/** Every check, in the order of the findings page: by group, and in a group from coarse to fine. */
export const allChecks: readonly Check[] = list;

const acrossIds = acrossChecks.map(({ id }) => id);

/** A sheet and what the checks found on it; a sheet with errors is still there to be previewed. */
export interface Examined {
  readonly sheet: Sheet;
  /** Sorted by place, then id; accepted ones are among them and carry their reason. */
  readonly findings: readonly Finding[];
}

/** Reads a text as a sheet and checks it. Never throws for what the text says. */
export function examine(text: string, file: string, context: CheckContext): Examined {
  const {
    kinds,
    gauges,
    wireGauge,
    family = null,
    sharedSources = null,
    records = null,
    houseTolerances = null,
  } = context;
  const sheet = readSheet(text, file, {
    kinds,
    gauges,
    wireGauge,
    family,
    sharedSources,
    records,
    houseTolerances,
  });
  return { sheet, findings: examineParsed(sheet, context) };
}

/** Checks a sheet that has been read. */
export function examineParsed(sheet: Sheet, context: CheckContext): readonly Finding[] {
  return runChecks(allChecks, sheet, context, acrossIds);
}

/** The check of that id; null where there is none. */
export function checkNamed(id: string): Check | null {
  return allChecks.find((check) => check.id === id) ?? null;
}
