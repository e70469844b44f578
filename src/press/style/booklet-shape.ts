import type {
  AltitudeTable,
  ChangesPage,
  Chapter,
  ChapterOperation,
  ChapterSetting,
  Fault,
  FigureColumn,
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
  settingFields,
  sourceFields,
  valueFields,
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

function column(meaning: string): ShapeOf<FigureColumn> {
  return fields(meaning, {
    whole: text('What stands before the point.'),
    part: text('The point and what stands behind it.'),
    high: text('The upper limit.'),
    low: text('The lower limit.'),
    bound: text('`min` or `max`, where the figure is the one limit.'),
  });
}

const chapterSettingShape: ShapeOf<ChapterSetting> = fields('One setting.', {
  ...settingFields,
  values: list('Its values.', valueShape),
  anchor: text('Its place, for a link.'),
  changed: flag('Whether it bears a bar: it is not what it was in the last edition.'),
  lines: list(
    'Its values as a table with columns of figures prints them.',
    fields('One value.', {
      ...valueFields,
      inchColumn: column('Decimal inches; nothing where it is no length.'),
      mmColumn: column('Millimeters; nothing where it is no length.'),
    }),
  ),
  take: text('The gauge alone; nothing where the size is itself its name.'),
  taken: text('How that is held, go and no-go.'),
  madeAt: text('Where it is made, for a link.'),
  hasDetails: flag('Whether anything is said beneath its values.'),
  columns: number('How many columns its values take, from the one of what is written on.'),
  fills: flag('Whether those are all that are left of the row.'),
});

const operationShape: ShapeOf<ChapterOperation> = fields('One heading.', {
  number: number('The number of the task; nothing for a heading that is no work.'),
  anchor: text('Its place, for a link.'),
  changed: flag('Whether its heading bears a bar.'),
  gauge: text('The gauges of its settings.'),
  leaves: text('What it leaves otherwise than it found it.'),
  title: html('Its heading.'),
  html: html('Its steps, cautions and figures, with what leads to them.'),
  why: html('The paragraphs that lead to the steps.'),
  work: html(
    'All from the steps on, with one line in each step that meets a hazard in place of its full words.',
  ),
  steps: html('Its steps alone, as a card has them.'),
});

const chapterShape: ShapeOf<Chapter> = fields('One unit.', {
  number: number('Its number.'),
  anchor: text('Its place, for a link and the name of its pages.'),
  tab: number('How far down its tab stands, from 0 to 11.'),
  face: faceShape,
  isNew: flag('Whether the last edition had no such sheet.'),
  intro: html('What stands on the sheet before the work.'),
  settings: list('Its settings in working order.', chapterSettingShape),
  operations: list('All its headings, in the order of the sheet.', operationShape),
  about: list('Headings before the work: how to tell it, tools.', operationShape),
  after: list('Headings behind the work.', operationShape),
  tasks: list('The tasks, in order.', operationShape),
  stages: list(
    'The order of work.',
    fields('One stage.', {
      title: text('Its name.'),
      tasks: list(
        'Its tasks.',
        fields('One task.', {
          number: number('Its number.'),
          title: html('Its heading.'),
          anchor: text('Its place, for a link.'),
        }),
      ),
    }),
  ),
  gauges: list('The gauges of its settings, each once.', text('One gauge.')),
  hazards: list(
    'The hazards of its work in their full words.',
    fields('One hazard.', {
      signal: text('`danger`, `warning`, `caution` or `notice`, for a class.'),
      word: text('The same as it is printed.'),
      alert: flag('Whether the alert symbol stands with it.'),
      label: text('The name of the hazard.'),
      html: html('Its words.'),
      changed: flag('Whether it bears a bar.'),
      task: number('The first task that meets it.'),
    }),
  ),
  checksAnchor: text('The place of the table of symptoms.'),
  checks: list(
    'What to look at, symptom by symptom.',
    fields('One symptom.', {
      symptom: text('What is noticed.'),
      checks: list(
        'The first three checks, the cheapest first.',
        fields('One check.', {
          number: text('The number that the setting goes by.'),
          label: text('Its name.'),
          way: text('Which way it is out.'),
          span: number('How many columns it takes.'),
        }),
      ),
      rest: text('The numbers of what is left to check.'),
    }),
  ),
  footnotes: html('Footnotes; empty for none.'),
  notes: list('Doubtful points that the editor let stand.', noteShape),
  sources: list(
    'Where its figures come from.',
    fields('One source.', {
      ...sourceFields,
      cited: text('Its pages with the numbers of the settings; empty where none is cited.'),
    }),
  ),
  rulings: list('Settings that the sources differ on.', chapterSettingShape),
  figures: list(
    'Figures that no source states.',
    fields('One figure.', {
      number: text('The number of its setting.'),
      label: text('What it is.'),
      place: text('The barrel or place that it is for.'),
      text: text('The figure.'),
      told: text('How it came about.'),
    }),
  ),
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
  title: text('What is noticed.'),
  units: list(
    'The units whose chapters have it.',
    fields('One unit.', { ...placeFields, name: text('Its maker and model.') }),
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
      places: list(
        'Where they stand.',
        fields('One place.', {
          number: number('The number of the chapter; nothing for a part that is none.'),
          anchor: text('Its place, for a link.'),
        }),
      ),
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
  hasProofs: flag('Whether marks tell how far figures are proved.'),
  orderGraphs: flag(
    'Whether every chapter gets the picture of its order of work, and not only where a page is left.',
  ),
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
    index: section('The index.'),
  }),
  introduction: list('The editors’ own words.', text('One paragraph.')),
  safety: list(
    'The cautions that the work of the edition calls for: of all units, then kind by kind.',
    fields('One group.', {
      kind: text('The kind of unit; nothing for what holds for all.'),
      lines: list(
        'Its cautions.',
        fields('One caution.', {
          signal: text('`danger`, `warning`, `caution` or `notice`, for a class.'),
          word: text('The same as it is printed.'),
          alert: flag('Whether the alert symbol stands with it.'),
          label: text('The name of the hazard.'),
          words: list(
            'Its words, once or kind by kind.',
            fields('The words.', {
              kind: text('The kind of unit whose words they are; nothing where all say the same.'),
              hazard: text('What the hazard is.'),
              consequence: text('What it does.'),
              avoid: text('How to avoid it.'),
            }),
          ),
        }),
      ),
    }),
  ),
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
