export { largestLogo, pngLogoFault } from './check-logo.ts';
export { checkStyle } from './check-style.ts';
