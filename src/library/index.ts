export { examine, findings, readSize } from './library.ts';
export type {
  Around,
  Examination,
  FoundThing,
  KnownSize,
  Length,
  Place,
  SettingRow,
  ToldFinding,
  UnknownSize,
} from './model.ts';
