export { howToFold } from './how-to-fold.ts';
export { type Imposed, type Imposition, impose } from './impose.ts';
