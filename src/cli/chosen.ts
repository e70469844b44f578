import { Refusal } from '../project/index.ts';
import type { Choice } from '../text/index.ts';

/** What was asked for. Fails with `Refusal` where it cannot be had. */
export function chosen<T>(choice: Choice<T>): T {
  if (choice.ok) return choice.value;
  throw new Refusal(choice.message, choice.fix);
}
