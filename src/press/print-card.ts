import { type CardOrder, PressStopped, type Printed } from './orders.ts';

/** Prints one sheet as a bench card on one leaf. Fails with `PressStopped`. */
export async function printCard(_order: CardOrder): Promise<Printed> {
  throw new PressStopped('Cards are not printed yet.');
}
