export { type Imposed, type Imposition, impose } from './impose.ts';
