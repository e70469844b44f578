export { capHeightsByFamily } from './font-faces.ts';
export { helperNamed, templateHelpers } from './helpers.ts';
export { render, saidTitle } from './render.ts';
export { withFonts } from './svg-fonts.ts';
