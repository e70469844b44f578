import type { Options } from 'ajv/dist/2020.js';

/** How ajv is set up, for the compiled validators and for the tests of the schemas. */
export declare const ajvOptions: Options;
/** Writes all of src/generated for the project at `root`; fails with the file and the reason. */
export declare function generate(root: string): Promise<void>;
/** A schema of schemas/ as plain data, by its short name: `sheet`. */
// biome-ignore lint/suspicious/noExplicitAny: a schema is free-form JSON, looked into by tests only
export declare function readSchema(root: string, name: string): any;
