export { columns } from './columns.ts';
export { toCsv } from './csv.ts';
export { fromData, toData, toDataPackage } from './data.ts';
export { exportRows, type SettingRow, type SheetToExport } from './rows.ts';
