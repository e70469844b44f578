import type { BuildOptions } from 'esbuild';

/** Packages that are installed with the program and not bundled. */
export const EXTERNAL: string[];

/** How the bundler makes modules of the program that Node runs. */
export const forNode: BuildOptions;
