export { readWording } from '../orders/index.ts';
export { largestLogo, pngLogoFault } from './check-logo.ts';
export { type ClubStyle, checkStyle, templateShapes } from './check-style.ts';
export type { TemplateFault } from './template-fault.ts';
