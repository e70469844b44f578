import { type BookletOrder, PressStopped, type Printed } from './orders.ts';

/** Prints an edition as a booklet. Fails with `PressStopped`. */
export async function printBooklet(_order: BookletOrder): Promise<Printed> {
  throw new PressStopped('Booklets are not printed yet.');
}
