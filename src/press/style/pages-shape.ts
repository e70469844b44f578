import type {
  CautionsPage,
  GaugesPage,
  HomePage,
  PageFrame,
  PageLink,
  UnitPage,
  UnitSetting,
  WorkedPage,
} from '../site/model.ts';
import {
  faceShape,
  noteShape,
  safetyFields,
  settingFields,
  sourceShape,
  valueShape,
} from './common-shapes.ts';
import { fields, flag, html, list, number, type Shape, type ShapeOf, text } from './shape.ts';

const linkFields = {
  href: text('Where it leads.'),
  label: text('Its words.'),
};

function link(meaning: string): ShapeOf<PageLink> {
  return fields(meaning, linkFields);
}

const frameFields: ShapeOf<PageFrame>['fields'] = {
  language: text('The tag of the language: `en`.'),
  windowTitle: text('What the browser calls the page.'),
  siteTitle: text('The title of the edition.'),
  club: text('The club’s name.'),
  edition: text('Which edition it is.'),
  date: text('Its date, as written.'),
  notice: text('Whose work it is and who may copy it.'),
  draft: flag('Whether every page says that it is a draft.'),
  mayLoad: text('What the page may load: its Content Security Policy.'),
  root: text('From the page to the folder of the site: empty, or `../`.'),
  pages: list(
    'The general pages.',
    fields('One of them.', { ...linkFields, isHere: flag('Whether it is this page.') }),
  ),
};

const homeShape: ShapeOf<HomePage> = fields('The first page.', {
  ...frameFields,
  subtitle: text('The subtitle of the edition.'),
  introduction: list('The editors’ own words.', text('One paragraph.')),
  altitude: text('The altitude that the figures are read at.'),
  counts: text('How many units and settings there are.'),
  hasMarks: flag('Whether any sheet is not released yet.'),
  marques: list(
    'The units by marque.',
    fields('One marque.', {
      id: text('Its place, for a link.'),
      marque: text('Its name.'),
      units: list(
        'Its units.',
        fields('One unit.', {
          ...linkFields,
          number: number('Its number.'),
          kind: text('What kind of unit it is.'),
          fits: text('What it fits there.'),
          partNumbers: list('Its part numbers.', text('One of them.')),
          mark: text('`DRAFT` or `PROOF`; nothing for a sheet that is released.'),
        }),
      ),
    }),
  ),
  partNumbers: list(
    'All part numbers.',
    fields('One of them.', { ...linkFields, number: text('The part number.') }),
  ),
});

const unitSettingShape: ShapeOf<UnitSetting> = fields('One setting.', {
  ...settingFields,
  values: list('Its values.', valueShape),
  id: text('Its place, for a link.'),
  madeBy: link('The operation that makes it; nothing where none does.'),
});

const unitShape: ShapeOf<UnitPage> = fields('A unit’s page.', {
  ...frameFields,
  number: number('Its number.'),
  face: faceShape,
  intro: html('What stands on the sheet before the work.'),
  settings: list('Its settings in working order.', unitSettingShape),
  cautions: list(
    'The cautions before the work.',
    fields('One caution.', {
      ...safetyFields,
      isInWork: flag('Whether the sheet’s own words stand before the steps that meet it.'),
    }),
  ),
  operations: list(
    'The work, in order.',
    fields('One operation.', {
      number: number('The number of the task; nothing for a heading that is no work.'),
      id: text('Its place, for a link.'),
      title: html('Its heading.'),
      html: html('Its steps, cautions and figures.'),
      sets: list(
        'The settings that it makes.',
        fields('One setting.', {
          ...linkFields,
          number: text('The number that it goes by.'),
          values: list('Its values.', valueShape),
          gauge: text('What it is made with.'),
        }),
      ),
    }),
  ),
  footnotes: html('Footnotes; empty for none.'),
  rulings: list('Settings that the sources differ on.', unitSettingShape),
  hasProofs: flag('Whether marks tell how far figures are proved.'),
  hasWorked: flag('Whether any setting has a worked figure.'),
  workedHref: text('Where it stands how they were worked.'),
  notes: list('Doubtful points that the editor let stand.', noteShape),
  sources: list('Where its figures come from.', sourceShape),
  previous: link('The unit before; nothing for the first.'),
  next: link('The unit after; nothing for the last.'),
});

const cautionsShape: ShapeOf<CautionsPage> = fields('The general cautions.', {
  ...frameFields,
  groups: list(
    'The cautions that the work of the edition calls for, by kind of unit.',
    fields('One kind.', {
      id: text('Its place, for a link.'),
      title: text('Its name.'),
      cautions: list(
        'Its cautions.',
        fields('One caution.', { ...safetyFields, id: text('Its place, for a link.') }),
      ),
    }),
  ),
  clubSafety: list('What the club adds to them.', text('One paragraph.')),
});

const gaugesShape: ShapeOf<GaugesPage> = fields('The gauges to gather.', {
  ...frameFields,
  groups: list(
    'The gauges by family.',
    fields('One family.', {
      id: text('Its place, for a link.'),
      title: text('Its name.'),
      gauges: list(
        'Its gauges.',
        fields('One gauge.', {
          label: text('Its name.'),
          inch: text('Decimal inches; nothing where it has no size.'),
          mm: text('Millimeters; nothing where it has no size.'),
          usedBy: list(
            'The units that need it.',
            fields('One unit.', { ...linkFields, settings: text('The settings there.') }),
          ),
        }),
      ),
    }),
  ),
  fewest: text('How few gauges serve the settings that name none.'),
  ungauged: list(
    'Settings that nothing at hand measures.',
    fields('One unit’s.', { ...linkFields, text: text('Which they are.') }),
  ),
});

const workedShape: ShapeOf<WorkedPage> = fields('Figures that are worked from others.', {
  ...frameFields,
  units: list(
    'The units that figures are worked for.',
    fields('One unit.', {
      ...linkFields,
      id: text('Its place, for a link.'),
      proved: text('How many stated figures were worked again; nothing for none.'),
      figures: list(
        'Its figures.',
        fields('One figure.', {
          setting: text('The setting it is of.'),
          href: text('Where that stands.'),
          label: text('What it is.'),
          place: text('The barrel or place that it is for.'),
          text: text('The figure.'),
          told: text('How it came about.'),
          formula: link('By which formula.'),
        }),
      ),
    }),
  ),
  formulas: list(
    'The formulas that they are worked by.',
    fields('One formula.', {
      id: text('Its place, for a link.'),
      title: text('Its name.'),
      formula: text('The formula.'),
      source: text('Where it comes from.'),
      assumptions: list('What it takes for granted.', text('One assumption.')),
      range: text('What it holds for.'),
    }),
  ),
});

/** What each of the templates of a club's site is given, by its file. */
export const pageShapes: ReadonlyMap<string, Shape> = new Map<string, Shape>([
  ['pages/index.hbs', homeShape],
  ['pages/unit.hbs', unitShape],
  ['pages/cautions.hbs', cautionsShape],
  ['pages/gauges.hbs', gaugesShape],
  ['pages/worked.hbs', workedShape],
]);
