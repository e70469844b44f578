import type { CardModel } from '../card/model.ts';
import {
  densitiesShape,
  faceShape,
  marginsShape,
  noteShape,
  paperShape,
  settingFields,
  sourceShape,
  valueFields,
} from './common-shapes.ts';
import { fields, flag, html, list, number, type ShapeOf, text } from './shape.ts';

/** What `card.hbs` is given. */
export const cardShape: ShapeOf<CardModel> = fields('A bench card.', {
  face: faceShape,
  club: text('The club’s name.'),
  edition: text('Which edition it is.'),
  notice: text('Whose work it is and who may copy it.'),
  language: text('The tag of the language: `en`.'),
  paper: paperShape,
  margins: marginsShape,
  draft: flag('Whether DRAFT goes across each side.'),
  code: text('Tells whether two cards say the same.'),
  readingDistanceMm: number('How far from the eye it is read.'),
  densities: densitiesShape,
  density: text('The one that the card begins with.'),
  content: text('How much of the work it has: `full`, `brief`, `terse` or `list`.'),
  cautions: list(
    'The cautions before the work.',
    fields('One caution.', {
      signal: text('`danger`, `warning`, `caution` or `notice`, for a class.'),
      word: text('The same as it is printed.'),
      alert: flag('Whether the alert symbol stands with it.'),
      html: html('All of its words.'),
      short: html('The hazard and how to avoid it.'),
    }),
  ),
  settings: list(
    'The settings in working order.',
    fields('One setting.', {
      ...settingFields,
      rows: number('Rows of the table that its number runs over.'),
      hasDetails: flag('Whether a line of details stands below it.'),
      equalsBelow: flag('Whether its equivalents stand among the details.'),
      values: list(
        'Its values.',
        fields('One value.', {
          ...valueFields,
          equivalents: list('What it comes to in other units.', text('One of them.')),
          rows: number('Rows of the table that its columns to write in run over.'),
          reading: fields('What a bench record says of it; nothing without a record.', {
            place: text('The barrel or place.'),
            found: text('As found.'),
            left: text('As left.'),
            gauge: text('The gauge that was used.'),
            verdict: text('The verdict on it as it was left.'),
          }),
        }),
      ),
    }),
  ),
  operations: list(
    'The work, in order.',
    fields('One operation.', {
      number: number('Its number.'),
      title: html('Its heading.'),
      sets: text('The numbers of the settings that it makes; nothing for none.'),
      alert: flag('Whether a hazard stands among its steps.'),
      steps: html('Its steps.'),
    }),
  ),
  footnotes: html('Footnotes; empty for none.'),
  notes: list('Doubtful points that the editor let stand.', noteShape),
  sources: list('Where the figures come from.', sourceShape),
  hasGauges: flag('Whether any setting has a gauge.'),
  record: fields('Who set the unit, from a bench record; nothing for a card to fill in.', {
    serial: text('The number of the unit.'),
    by: text('Who set it.'),
    date: text('When.'),
    rule: text('By which rule the verdicts were reached.'),
  }),
});
