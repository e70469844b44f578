import type { Density } from '../lettering/index.ts';
import type {
  DissentLine,
  EditorsNote,
  GaugeTold,
  SheetFace,
  SourceLine,
  ValueLine,
  WorkedLine,
} from '../matter/index.ts';
import type { Margins, PaperSize } from '../orders/index.ts';
import type { ConcordanceTable } from '../sources/model.ts';
import { fields, flag, list, number, type ShapeOf, text } from './shape.ts';

/** What stands at the head of a card, chapter or page. */
export const faceShape: ShapeOf<SheetFace> = fields('The head of a sheet.', {
  id: text('The name of the sheet.'),
  title: text('Its title.'),
  kind: text('What kind of unit it is, in words; nothing where that is not known.'),
  maker: text('The maker.'),
  model: text('The model.'),
  partNumbers: text('Its part numbers, parted by commas.'),
  features: text('Its features in words, parted by commas.'),
  fits: list('The vehicles that it fits.', text('One vehicle with its years.')),
  revision: text('The number of the revision.'),
  date: text('Its date, as written.'),
  mark: text('`DRAFT` or `PROOF`; nothing for a sheet that is released.'),
  measures: list(
    'Sizes and threads of the unit itself.',
    fields('One of them.', {
      label: text('What it is.'),
      written: text('As written, with its equivalents.'),
    }),
  ),
});

export const valueFields = {
  place: text('The barrel or place that it is for; nothing where one value serves all.'),
  written: text('Exactly as the source wrote it.'),
  large: text('What stands in the large type: the figure for the club’s altitude, or as written.'),
  club: fields('Of a figure for the club’s altitude, where it is read; nothing for any other.', {
    altitude: text('The club’s altitude.'),
    readAt: text('Where the source read its own.'),
    worked: flag('Whether the sheet does not state it.'),
  }),
  house: text('The tolerance that the house takes where no source states limits.'),
  inch: text('Decimal inches; nothing where it is no length.'),
  mm: text('Millimeters; nothing where it is no length.'),
  both: text('Inches and millimeters in one line, without what is as written.'),
  other: text('What it comes to in other units, parted by commas.'),
};

/** One value of a setting. */
export const valueShape: ShapeOf<ValueLine> = fields('One value.', valueFields);

/** What another source has, and the ruling. */
export const dissentShape: ShapeOf<DissentLine> = fields('What one other source says.', {
  ...valueFields,
  from: text('Its mark with the page; nothing where it is not named.'),
  ruling: text('Why it is not followed.'),
});

/** A figure that no source states. */
export const workedShape: ShapeOf<WorkedLine> = fields('One worked figure.', {
  label: text('What it is.'),
  place: text('The barrel or place that it is for.'),
  text: text('The figure.'),
  told: text('How it came about; nothing for a gauge, which is chosen.'),
});

/** What one takes to measure a setting. */
const gaugeShape: ShapeOf<GaugeTold> = fields('What is taken for one place.', {
  place: text('The barrel or place that it is for; nothing where one serves all.'),
  take: text('The gauge; nothing where there is only a pair.'),
  go: text('The one that has to go in.'),
  noGo: text('The one that may not.'),
  isSize: flag('Whether the size is itself the gauge’s name.'),
  chosen: flag('Whether it is chosen, since the sheet names none.'),
  held: text('In a bore: how it is held.'),
  more: text('A pair to be made, or the nearest where none fits.'),
  caution: text('What a gauge that lies across a bore would read too little.'),
});

/** The fields of a setting, without its values. */
export const settingFields = {
  number: text('The number that it goes by: that of its task, `5` or `5a`; a letter without one.'),
  task: number('The number of the task that makes it; nothing where none does.'),
  name: text('Its name on the sheet.'),
  label: text('Its name in words.'),
  proof: text(
    'How far its figure is proved: `··` read twice, `·` once, `m` measured; nothing where nobody reads twice.',
  ),
  also: text('Other ways the sheet states it, as written.'),
  gauge: text('What one takes to measure it, in one line; nothing for no gauge.'),
  isGaugeChosen: flag('Whether that is chosen, since the sheet names none.'),
  gauges: list('The same in its parts.', gaugeShape),
  where: text('Where and in what state it is measured, with further figures.'),
  datum: text('Of that, what one has to know to measure it.'),
  further: text('And the rest: figures that go with it.'),
  note: text('The note that stands with it.'),
  from: list('Its sources.', text('A mark with its page: `a p. 31`.')),
  dissents: list('What other sources say.', dissentShape),
  worked: list('Figures that no source states.', workedShape),
};

/** A doubtful point that the editor let stand. */
export const noteShape: ShapeOf<EditorsNote> = fields('One note.', {
  point: text('What is doubtful.'),
  reason: text('Why the editor let it stand.'),
});

/** A source of a sheet. */
export const sourceFields = {
  mark: text('The letter it goes by.'),
  name: text('Its name on the sheet.'),
  title: text('Its title.'),
  facts: text('Its kind and year; empty where the sheet says neither.'),
};
export const sourceShape: ShapeOf<SourceLine> = fields('One source.', sourceFields);

/** The three parts of a safety message, with its signal word. */
export const safetyFields = {
  signal: text('`danger`, `warning`, `caution` or `notice`, for a class.'),
  word: text('The same as it is printed.'),
  alert: flag('Whether the alert symbol stands with it.'),
  label: text('The name of the hazard.'),
  hazard: text('What the hazard is.'),
  consequence: text('What it does.'),
  imperative: text('The same in one imperative.'),
  avoid: text('How to avoid it.'),
};

/** A table of settings by sources. */
export const concordanceTableShape: ShapeOf<ConcordanceTable> = fields('One table.', {
  span: number('How many columns it has, that of the settings among them.'),
  columns: list(
    'The sources.',
    fields('One source.', {
      mark: text('The letter it goes by.'),
      title: text('Its title.'),
    }),
  ),
  rows: list(
    'The settings.',
    fields('One setting.', {
      label: text('Its name.'),
      cells: list(
        'What each source says of it.',
        list(
          'What one source says.',
          fields('One statement.', {
            sign: text('Tells how it stands.'),
            standing: text('The same in a word, for a class.'),
            written: text('As written; nothing where it is the same figure.'),
            under: text('Its page, and by how much it differs.'),
          }),
        ),
      ),
      differs: flag('Whether the sources differ.'),
      remarks: list(
        'What is said of its statements.',
        fields('One remark.', {
          mark: text('The letter of the source.'),
          words: text('Why it is not followed, or a note.'),
        }),
      ),
    }),
  ),
});

/** The type sizes that the press chooses among. */
export const densitiesShape: ShapeOf<readonly Density[]> = list(
  'The type sizes that the press chooses among, the roomiest first.',
  fields('One of them.', {
    name: text('`roomy` to `tight`.'),
    textMm: number('Running text.'),
    labelMm: number('Single words and figures.'),
    fractionMm: number('The figures of fractions.'),
  }),
);

/** The paper. */
export const paperShape: ShapeOf<PaperSize> = fields('The paper.', {
  name: text('`letter`, `a4`, `half-letter` or `a5`.'),
  label: text('Its name in words.'),
  widthMm: number('Its width.'),
  heightMm: number('Its height.'),
  css: text('Width and height for `@page { size: }`.'),
  small: flag('Whether it is half letter or A5.'),
});

/** The margins. */
export const marginsShape: ShapeOf<Margins> = fields('The margins, in millimeters.', {
  topMm: number('Above.'),
  bottomMm: number('Below.'),
  innerMm: number('Toward the fold.'),
  outerMm: number('Away from the fold.'),
});
