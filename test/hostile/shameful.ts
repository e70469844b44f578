/** No file may keep anybody waiting longer: milliseconds of the processor, not of a busy clock. */
export const patience = 10_000;

/** What nothing that the program says may hold: a stack, a hole in a sentence, a fault of its own. */
export const shameful: readonly RegExp[] = [
  /\n\s+at \S+ ?\(/,
  /\[object \w+\]/,
  /a fault in the program/,
  /(?:Type|Range|Reference)Error/,
];

/** Marks that turn the direction of writing: for programs to read they are data, for people a trap. */
export const turning = /[\u202a-\u202e\u2066-\u2069]/;
