export { listOrder } from './list.ts';
export { drawOrder } from './svg.ts';
