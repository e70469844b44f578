import type {
  AltitudeTable,
  ChangesPage,
  Chapter,
  ChapterSetting,
  Fault,
  FormulaLine,
  GaugeTable,
  IndexLetter,
} from '../booklet/index.ts';
import type { BookletModel, GatherLine, Section } from '../booklet/model.ts';
import {
  concordanceTableShape,
  faceShape,
  marginsShape,
  noteShape,
  paperShape,
  safetyShape,
  settingFields,
  sourceShape,
  valueShape,
} from './common-shapes.ts';
import { fields, flag, html, list, number, type ShapeOf, text } from './shape.ts';

function section(meaning: string): ShapeOf<Section> {
  return fields(meaning, {
    anchor: text('Its place, for a link and the name of its pages.'),
    title: text('Its heading.'),
  });
}

const placeFields = {
  number: number('The number of the chapter.'),
  anchor: text('Its place, for a link.'),
};
const placeShape = fields('One chapter.', placeFields);

const gatherShape: ShapeOf<GatherLine> = fields('One gauge.', {
  label: text('Its name.'),
  inch: text('Decimal inches; nothing where it has no size.'),
  mm: text('Millimeters; nothing where it has no size.'),
  usedBy: list(
    'The chapters that need it.',
    fields('One chapter.', {
      ...placeFields,
      settings: text('The settings there, parted by commas.'),
    }),
  ),
});

const chapterSettingShape: ShapeOf<ChapterSetting> = fields('One setting.', {
  ...settingFields,
  values: list('Its values.', valueShape),
  anchor: text('Its place, for a link.'),
  changed: flag('Whether it bears a bar: it is not what it was in the last edition.'),
  hasDetails: flag('Whether anything is said beside its values.'),
});

const chapterShape: ShapeOf<Chapter> = fields('One unit.', {
  number: number('Its number.'),
  anchor: text('Its place, for a link and the name of its pages.'),
  face: faceShape,
  isNew: flag('Whether the last edition had no such sheet.'),
  intro: html('What stands on the sheet before the work.'),
  settings: list('Its settings in working order.', chapterSettingShape),
  operations: list(
    'The work, in order.',
    fields('One operation.', {
      number: number('The number of the task; nothing for a heading that is no work.'),
      anchor: text('Its place, for a link.'),
      changed: flag('Whether its heading bears a bar.'),
      title: html('Its heading.'),
      html: html('Its steps, cautions and figures.'),
      steps: html('Its steps alone.'),
      work: html(
        'As `html`, with one line in each step that meets a hazard in place of its full words.',
      ),
    }),
  ),
  footnotes: html('Footnotes; empty for none.'),
  notes: list('Doubtful points that the editor let stand.', noteShape),
  sources: list('Where its figures come from.', sourceShape),
  rulings: list('Settings that the sources differ on.', chapterSettingShape),
  order: html('The picture of the order of work; nothing where the edition wants none.'),
});

const changesShape: ShapeOf<ChangesPage> = fields('What changed; nothing where nobody says.', {
  before: text('Which edition came before.'),
  units: list(
    'The units that changed.',
    fields('One unit.', {
      ...placeFields,
      title: text('Its title.'),
      revision: text('From which revision to which.'),
      isNew: flag('Whether the last edition had no such sheet.'),
      lines: list(
        'Its changes.',
        fields('One change.', {
          label: text('What it is about.'),
          html: html('What is said now, and what was said before.'),
          size: text('By how much; nothing where there is no number.'),
          anchor: text('Where it stands, for a link.'),
        }),
      ),
    }),
  ),
  dropped: list('Units that are left out.', text('The title of one.')),
  wording: number('How many changes are of wording, sources and notes alone.'),
});

const altitudeShape: ShapeOf<AltitudeTable> = fields('Some readings side by side.', {
  columns: list(
    'The readings.',
    fields('One reading.', {
      ...placeFields,
      title: text('The unit.'),
      stated: text('As the sheet states it.'),
      readAt: text('The altitude it was read at.'),
    }),
  ),
  rows: list(
    'The altitudes.',
    fields('One altitude.', {
      altitude: text('How high.'),
      isClubs: flag('Whether it is the club’s own.'),
      readings: list(
        'A reading to each column.',
        text('One of them; nothing where none can be given.'),
      ),
    }),
  ),
});

const faultShape: ShapeOf<Fault> = fields('One symptom.', {
  anchor: text('Its place, for a link.'),
  title: text('What is noticed.'),
  causes: list(
    'The settings to look at.',
    fields('One setting.', {
      label: text('Its name.'),
      way: text('Which way it is out.'),
      places: list(
        'The chapters; empty where they are too many.',
        fields('One chapter.', {
          ...placeFields,
          task: text('The number that the setting goes by there.'),
        }),
      ),
    }),
  ),
});

const formulaShape: ShapeOf<FormulaLine> = fields('One formula.', {
  title: text('Its name.'),
  formula: text('The formula.'),
  source: text('Where it comes from.'),
  assumptions: text('What it takes for granted.'),
  usedBy: list('The chapters with figures worked by it.', placeShape),
});

const gaugeTableShape: ShapeOf<GaugeTable> = fields('One family.', {
  title: text('Its name.'),
  rows: list(
    'The sizes that the edition uses, with their neighbors.',
    fields('One size.', {
      label: text('Its name.'),
      inch: text('Decimal inches.'),
      mm: text('Millimeters.'),
      isUsed: flag('Whether the edition uses it.'),
      afterGap: flag('Whether sizes are left out before it.'),
    }),
  ),
});

const indexShape: ShapeOf<IndexLetter> = fields('One letter.', {
  letter: text('The letter.'),
  entries: list(
    'Its entries.',
    fields('One entry.', {
      text: text('Its words.'),
      anchors: list('Where they stand.', text('One place, for a link.')),
    }),
  ),
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
  bars: fields('The bars beside what changed, in millimeters.', {
    reachMm: number('How far they reach out of the text.'),
    innerMm: number('What that leaves of the inner margin.'),
    outerMm: number('What that leaves of the outer margin.'),
  }),
  draft: flag('Whether DRAFT goes across every page.'),
  mark: text('The worst mark among the sheets; nothing where all are released.'),
  sections: fields('The parts that have a heading in the contents.', {
    introduction: section('The editors’ own words.'),
    reading: section('How to read a sheet.'),
    safety: section('The general cautions.'),
    changes: section('What changed.'),
    quick: section('The quick reference.'),
    altitude: section('Vacuum by altitude.'),
    faults: section('Fault finding.'),
    gauges: section('The gauges to gather.'),
    tables: section('Sizes of gauges.'),
    concordance: section('What the sources say.'),
    formulas: section('The formulas of worked figures.'),
    sources: section('The sources.'),
    index: section('The index.'),
  }),
  introduction: list('The editors’ own words.', text('One paragraph.')),
  safety: list('The cautions that the work of the edition calls for.', safetyShape),
  clubSafety: list('What the club adds to them.', text('One paragraph.')),
  changes: changesShape,
  altitudes: list('Vacuum readings by altitude.', altitudeShape),
  chapters: list('The units.', chapterShape),
  coverUnits: list(
    'What the cover lists; none where they are too many.',
    text('The title of a unit.'),
  ),
  faults: list('Symptoms and what may be out.', faultShape),
  formulas: list('The formulas of worked figures.', formulaShape),
  gaugeTables: list('Sizes of the gauges that the edition uses.', gaugeTableShape),
  index: list('The index.', indexShape),
  gauges: list(
    'The gauges to gather, by family.',
    fields('One family.', {
      title: text('Its name.'),
      gauges: list('Its gauges.', gatherShape),
    }),
  ),
  concordances: list(
    'Units on whose settings several sources speak.',
    fields('One unit.', {
      ...placeFields,
      title: text('Its title.'),
      tables: list(
        'What they say, as many sources to a table as there is room for.',
        concordanceTableShape,
      ),
    }),
  ),
  fewest: text('How few gauges serve the settings that name none.'),
  ungauged: list(
    'Settings that nothing at hand measures.',
    fields('One chapter’s.', {
      ...placeFields,
      text: text('Which they are, with the nearest gauges.'),
    }),
  ),
});
