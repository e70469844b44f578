export type { AcrossFinding } from './across/define.ts';
export { factsIn, type SheetFacts, sheetFacts } from './across/facts.ts';
export { acrossChecks } from './across/list.ts';
export { packFacts, unpackFacts } from './across/packed-facts.ts';
export { runAcross } from './across/run.ts';
export { isSameDescription } from './across/same-source.ts';
export { type DescribedSource, repeatedSources } from './across/source-repeated.ts';
export {
  type Check,
  type CheckContext,
  type Cure,
  checkGroups,
  defineCheck,
  type Edit,
  type Finding,
  type PictureState,
  type Severity,
} from './define.ts';
export { explainCheck, type ToldCheck } from './findings-page.ts';
export { allChecks, type CheckId, checkNamed, examineParsed } from './list.ts';
export { markText, orderProof } from './order-proof.ts';
export { suggestedCures } from './suggest.ts';
