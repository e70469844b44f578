export { formulaInches, gaugeBook } from './book.ts';
export { type Confusable, confusable } from './confusable.ts';
export { type GoNoGo, goNoGo } from './go-no-go.ts';
export { inside, type Neighbors, namesOf, nearest } from './search.ts';
export { type Thread, thread, threads } from './threads.ts';
