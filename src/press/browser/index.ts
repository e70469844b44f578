export { faultsOf, loadFonts } from './guard.ts';
export { contentPolicy } from './isolation.ts';
export { keepBrowser, type Run, type Running, startBrowser, stopped, withBrowser } from './run.ts';
