/** Packages that are installed with the program and not bundled. */
export const EXTERNAL: readonly string[];
export function bundle(root: string): Promise<void>;
