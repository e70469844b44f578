export { findIn } from './find.ts';
export { queryOf, withinFrom } from './query.ts';
export { foundText } from './text.ts';
