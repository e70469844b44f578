/** One command by one release of Node. */
export interface Tried {
  readonly version: string;
  readonly name: string;
  readonly status: number | null;
  readonly said: string;
  readonly digest: string;
}

export function tryPacked(
  root: string,
  home: string,
  options: {
    readonly releases: readonly string[];
    readonly quick: boolean;
    /** A browser's path or `packaged`; null where nothing is printed. */
    readonly browser: string | null;
  },
): readonly Tried[];

export function table(results: readonly Tried[]): {
  readonly lines: readonly string[];
  readonly good: boolean;
};
