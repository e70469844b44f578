export function bundle(root: string): Promise<void>;
