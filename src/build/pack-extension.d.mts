/** Writes the extension file for the project at `root` into `out` (its `dist`, if absent), and returns its path. */
export declare function packExtension(root: string, out?: string): Promise<string>;
