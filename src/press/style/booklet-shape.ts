import type { BookletModel, Chapter, GatherLine, Section } from '../booklet-model.ts';
import {
  faceShape,
  marginsShape,
  noteShape,
  paperShape,
  safetyShape,
  settingShape,
  sourceShape,
} from './common-shapes.ts';
import { fields, flag, html, list, number, type ShapeOf, text } from './shape.ts';

function section(meaning: string): ShapeOf<Section> {
  return fields(meaning, {
    anchor: text('Its place, for a link and the name of its pages.'),
    title: text('Its heading.'),
  });
}

const chapterNumber = number('The number of the chapter.');
const chapterAnchor = text('The place of the chapter, for a link.');

const gatherShape: ShapeOf<GatherLine> = fields('One gauge.', {
  label: text('Its name.'),
  inch: text('Decimal inches; nothing where it has no size.'),
  mm: text('Millimeters; nothing where it has no size.'),
  usedBy: list(
    'The chapters that need it.',
    fields('One chapter.', {
      number: chapterNumber,
      anchor: chapterAnchor,
      settings: text('The settings there, parted by commas.'),
    }),
  ),
});

const chapterShape: ShapeOf<Chapter> = fields('One unit.', {
  number: number('Its number.'),
  anchor: text('Its place, for a link and the name of its pages.'),
  face: faceShape,
  intro: html('What stands on the sheet before the work.'),
  settings: list('Its settings in working order.', settingShape),
  operations: list(
    'The work, in order.',
    fields('One operation.', {
      number: number('Its number.'),
      title: html('Its heading.'),
      html: html('Its steps, cautions and figures.'),
      steps: html('Its steps alone.'),
    }),
  ),
  footnotes: html('Footnotes; empty for none.'),
  notes: list('Doubtful points that the editor let stand.', noteShape),
  sources: list('Where its figures come from.', sourceShape),
  rulings: list('Settings that the sources differ on.', settingShape),
  order: html('The picture of the order of work; nothing where the edition wants none.'),
});

/** What `booklet.hbs` is given. */
export const bookletShape: ShapeOf<BookletModel> = fields('A booklet.', {
  title: text('The title of the edition.'),
  subtitle: text('Its subtitle.'),
  club: text('The club’s name.'),
  edition: text('Which edition it is.'),
  date: text('Its date, as written.'),
  notice: text('Whose work it is and who may copy it.'),
  altitude: text('The altitude that the figures are read at.'),
  language: text('The tag of the language: `en`.'),
  paper: paperShape,
  margins: marginsShape,
  draft: flag('Whether DRAFT goes across every page.'),
  mark: text('The worst mark among the sheets; nothing where all are released.'),
  sections: fields('The parts that have a heading in the contents.', {
    introduction: section('The editors’ own words.'),
    reading: section('How to read a sheet.'),
    safety: section('The general cautions.'),
    quick: section('The quick reference.'),
    gauges: section('The gauges to gather.'),
    sources: section('The sources.'),
  }),
  introduction: list('The editors’ own words.', text('One paragraph.')),
  safety: list('The cautions that the work of the edition calls for.', safetyShape),
  clubSafety: list('What the club adds to them.', text('One paragraph.')),
  chapters: list('The units.', chapterShape),
  gauges: list(
    'The gauges to gather, by family.',
    fields('One family.', {
      title: text('Its name.'),
      gauges: list('Its gauges.', gatherShape),
    }),
  ),
  fewest: text('How few gauges serve the settings that name none.'),
  ungauged: list(
    'Settings that nothing at hand measures.',
    fields('One chapter’s.', {
      number: chapterNumber,
      anchor: chapterAnchor,
      text: text('Which they are, with the nearest gauges.'),
    }),
  ),
});
