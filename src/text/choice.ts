/** What was asked for, or in plain words why it cannot be had; `fix` as an instruction, where there is one. */
export type Choice<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: string; readonly fix: string | null };
