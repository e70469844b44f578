import type { PaperGaugesModel } from '../paper-gauges/model.ts';
import type { SlipModel } from '../slip/model.ts';
import type { ConcordanceModel } from '../sources/model.ts';
import {
  concordanceTableShape,
  densitiesShape,
  faceShape,
  marginsShape,
  paperShape,
  sourceShape,
} from './common-shapes.ts';
import { fields, flag, html, list, type Shape, type ShapeOf, text } from './shape.ts';

const club = text('The club’s name.');
const language = text('The tag of the language: `en`.');

const concordanceShape: ShapeOf<ConcordanceModel> = fields('What the sources of a sheet say.', {
  language,
  face: faceShape,
  paper: paperShape,
  margins: marginsShape,
  sources: list('The sources.', sourceShape),
  tables: list('As many sources to a table as there is room for.', concordanceTableShape),
});

const paperGaugesShape: ShapeOf<PaperGaugesModel> = fields('Gauges to cut out of paper.', {
  face: faceShape,
  club,
  language,
  paper: paperShape,
  margins: marginsShape,
  draft: flag('Whether DRAFT goes across each side.'),
  bars: fields('The bars to measure before anything is cut.', {
    along: html('That along the page.'),
    down: html('That down the page.'),
  }),
  gauges: list(
    'The gauges.',
    fields('One gauge.', {
      svg: html('The drawing, at its true size.'),
      label: text('What it is for.'),
    }),
  ),
  hasTravel: flag('Whether one of them is held beside a travel.'),
  refused: list(
    'Settings that paper will not do for.',
    fields('One reason.', {
      why: text('The reason.'),
      settings: text('The settings.'),
    }),
  ),
});

const slipShape: ShapeOf<SlipModel> = fields('An errata slip.', {
  title: text('The title of the edition.'),
  club,
  language,
  before: text('Of which edition it corrects copies.'),
  after: text('Which edition has it right.'),
  paper: paperShape,
  margins: marginsShape,
  densities: densitiesShape,
  density: text('The one that the slip begins with.'),
  units: list(
    'The units that changed.',
    fields('One unit.', {
      title: text('Its title.'),
      revision: text('From which revision to which.'),
      lines: list(
        'Its corrections.',
        fields('One correction.', {
          label: text('What it is about.'),
          html: html('What to do to the old copy.'),
          size: text('By how much; nothing where there is no number.'),
        }),
      ),
    }),
  ),
  added: list('New sheets.', text('The title of one.')),
  dropped: list('Sheets that are left out.', text('The title of one.')),
  rest: text('How many changes of wording are left out.'),
});

/** What each of the templates of single leaves, the card apart, is given, by its file. */
export const leafShapes: ReadonlyMap<string, Shape> = new Map<string, Shape>([
  ['concordance.hbs', concordanceShape],
  ['paper-gauges.hbs', paperGaugesShape],
  ['slip.hbs', slipShape],
]);
