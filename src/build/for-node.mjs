/**
 * Not bundled: the browser's driver and the browser look for their own files beside themselves, and
 * only printing loads these at all. They are the `dependencies` of package.json; all else is bundled, so
 * it is needed to build and stands among the `devDependencies`.
 */
export const EXTERNAL = ['puppeteer-core', '@sparticuz/chromium', '@cantoo/pdf-lib', 'tar-fs'];

/** How the bundler makes modules of the program that Node runs: for dist, benches and tests alike. */
export const forNode = {
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  external: EXTERNAL,
  // For CommonJS packages, which load parts of Node through a `require` that modules lack.
  banner: {
    js: "import{createRequire as __createRequire}from'node:module';const require=__createRequire(import.meta.url);",
  },
};
