export { listOrder, stageTitles } from './list.ts';
export { sheetOrder } from './sheet-order.ts';
export { drawOrder } from './svg.ts';
