/** How `check` can write its findings. */
export const formats = ['text', 'json', 'sarif', 'github'] as const;

export type Format = (typeof formats)[number];
