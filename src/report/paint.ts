/** Colors for a terminal, or the same text unchanged. */
export interface Paint {
  readonly red: (text: string) => string;
  readonly yellow: (text: string) => string;
  readonly blue: (text: string) => string;
  readonly green: (text: string) => string;
  readonly bold: (text: string) => string;
  readonly dim: (text: string) => string;
  readonly underline: (text: string) => string;
}

function sequence(on: number, off: number, color: boolean): (text: string) => string {
  // ECMA-48 select graphic rendition; each is switched off alone, so paints may be nested.
  return color ? (text) => `\u001b[${on}m${text}\u001b[${off}m` : (text) => text;
}

/** The paints of a terminal, plain where `color` is false. */
export function paint(color: boolean): Paint {
  return {
    red: sequence(31, 39, color),
    yellow: sequence(33, 39, color),
    blue: sequence(34, 39, color),
    green: sequence(32, 39, color),
    bold: sequence(1, 22, color),
    dim: sequence(2, 22, color),
    underline: sequence(4, 24, color),
  };
}
