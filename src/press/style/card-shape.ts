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

const signalFields = {
  signal: text('`danger`, `warning`, `caution` or `notice`, for a class.'),
  word: text('The same as it is printed.'),
  alert: flag('Whether the alert symbol stands with it.'),
};

const hazardShape = fields('One hazard in full.', {
  ...signalFields,
  html: html('All of its words.'),
});

/** A size with its limits on a line of their own. */
function stackedShape(meaning: string) {
  return fields(meaning, {
    nominal: text('The size.'),
    limits: text('Its limits; nothing for none.'),
  });
}

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
  hanging: fields('The hole that it hangs by, and what that leaves of the width.', {
    frontMm: number('From the text’s left edge to the room of the hole, on fronts.'),
    backMm: number('The same on backs.'),
    gapMm: number('The breadth of that room.'),
    depthMm: number('From the text’s upper edge to below the hole.'),
  }),
  density: text('The one that the card begins with.'),
  hazards: fields('The hazards of its work.', {
    dangers: list('Those that stand in full at its head.', hazardShape),
    strip: list(
      'The rest there, those of one signal word in a line.',
      fields('One line.', {
        ...signalFields,
        hazards: list(
          'Its hazards.',
          fields('One hazard.', {
            label: text('Its name.'),
            imperative: text('How to avoid it, in one imperative.'),
          }),
        ),
      }),
    ),
    full: list('The full words of the rest, which stand behind the work.', hazardShape),
  }),
  settings: list(
    'The settings in the order of their tasks.',
    fields('One setting.', {
      ...settingFields,
      rows: number('Rows of the table that its number runs over.'),
      hasDatum: flag('Whether a line stands below: its datum, or where the source read it.'),
      datumIsWide: flag('Whether that line may run on below what the value comes to.'),
      sameTask: flag('Whether the row above is made by the same task.'),
      gaugeLines: list('What one takes to measure it.', text('One line.')),
      hasMore: flag('Whether anything is said of it behind the work.'),
      values: list(
        'Its values.',
        fields('One value.', {
          ...valueFields,
          inches: stackedShape('Decimal inches without their unit; nothing for none.'),
          millimeters: stackedShape('Millimeters without their unit; nothing for none.'),
          others: list(
            'What no length comes to in other units.',
            stackedShape('One of them, with its unit.'),
          ),
          runsOn: flag('Whether it may run on into the columns beside it.'),
          hasLimits: flag('Whether what it comes to takes more than one line.'),
          rows: number('Rows of the table that its other columns run over.'),
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
  drawings: list(
    'Drawings of the unit; as many are printed as there is room for.',
    fields('One drawing.', {
      number: number('The number of its task.'),
      title: text('What it shows.'),
      svg: html('The drawing itself.'),
      widthMm: number('Its width.'),
      heightMm: number('Its height.'),
    }),
  ),
  operations: list(
    'The tasks, in order.',
    fields('One task.', {
      number: number('Its number.'),
      title: html('Its heading.'),
      steps: html('Its steps.'),
      page: number('Its page in the booklet; nothing where no booklet is known.'),
    }),
  ),
  altitudes: list(
    'Settings that fall with altitude.',
    fields('One setting.', {
      number: text('Its number.'),
      label: text('Its name in words.'),
      readings: list(
        'What it reads.',
        fields('At one altitude.', {
          altitude: text('The altitude.'),
          isClubs: flag('Whether that is the club’s.'),
          reading: text('The reading; nothing where none can be given.'),
        }),
      ),
    }),
  ),
  footnotes: html('Footnotes; empty for none.'),
  notes: list('Doubtful points that the editor let stand.', noteShape),
  sources: list('Where the figures come from.', sourceShape),
  hasGauges: flag('Whether any setting has a gauge.'),
  hasMore: flag('Whether anything is said behind the work of any setting.'),
  hasProofs: flag('Whether marks tell how far figures are proved.'),
  record: fields('Who set the unit, from a bench record; nothing for a card to fill in.', {
    serial: text('The number of the unit.'),
    by: text('Who set it.'),
    date: text('When.'),
    rule: text('By which rule the verdicts were reached.'),
  }),
});
