export { browserCache } from './cache.ts';
export { findBrowser } from './find-browser.ts';
