export { siteFiles } from './site.ts';
