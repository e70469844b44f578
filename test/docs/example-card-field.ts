import type { CardModel } from '../../src/press/card/model.ts';
import { cardShape } from '../../src/press/style/card-shape.ts';
import { fields, number, type ShapeOf } from '../../src/press/style/shape.ts';

/** In `CardModel`: the field, and what it is counted in. */
export interface CountedCard extends CardModel {
  /** Rows of the table of settings, each setting once. */
  readonly settingCount: number;
}

/** In `cardModel`: what it comes to. Templates do not reckon. */
export function counted(card: CardModel): CountedCard {
  return { ...card, settingCount: card.settings.length };
}

/** In `cardShape`: what a club reads of it. Without that line the program does not compile. */
export const countedShape: ShapeOf<CountedCard> = fields(cardShape.meaning, {
  ...cardShape.fields,
  settingCount: number('How many settings the table has.'),
});
