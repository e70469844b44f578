export { toCsv } from './csv.ts';
export { fromData, toData, toDataPackage } from './data.ts';
export { exportRows } from './rows.ts';
