/** How `check` can write its findings. */
export const formats = ['text', 'json', 'sarif', 'github'] as const;

export type Format = (typeof formats)[number];

/** Shells that a completion can be written for. */
export const shells = ['bash', 'zsh', 'fish'] as const;

export type Shell = (typeof shells)[number];
