import { enlargement, scaleWords } from './enlargement.ts';
import { capital, type Feed, type Sketch } from './feed.ts';
import { Pen, polygon } from './pen.ts';
import { Scene } from './scene.ts';

const AXIS = 15;
/** Half the jet's own breadth, and its faces, in mm. */
const JET = { half: 11.5, top: 14, bottom: 27 };

/** A stepped rod in its jet, in section, its thick step in the bore: all diameters at one scale. */
export function rodInJet(feed: Feed): Sketch | null {
  const [jet, thick, thin] = [feed.size('jet'), feed.size('thick'), feed.size('thin')];
  if (jet?.value == null || thick?.value == null || thin?.value == null) return null;
  // A rod that does not pass its jet is for the checks to tell, not to be drawn.
  if (thick.value >= jet.value || thin.value >= thick.value) return null;
  const scale = enlargement(jet.value, { least: 6, wanted: 11, most: 14 });
  if (scale === null) return null;
  const [bore, upper, lower] = [jet, thick, thin].map((each) => ((each.value ?? 0) * scale) / 2);
  if (bore === undefined || upper === undefined || lower === undefined) return null;
  const scene = new Scene(27);
  for (const sign of [-1, 1]) {
    scene.shape(
      polygon(
        [AXIS + sign * JET.half, JET.top],
        [AXIS + sign * (bore + 1.6), JET.top],
        [AXIS + sign * bore, JET.top + 1.6],
        [AXIS + sign * bore, JET.bottom],
        [AXIS + sign * (JET.half - 2.4), JET.bottom],
        [AXIS + sign * (JET.half - 2.4), JET.top + 5],
        [AXIS + sign * JET.half, JET.top + 5],
      ),
      { hatch: 'right', part: sign < 0 ? 'jet-left' : 'jet-right' },
    );
  }
  const shoulder = JET.bottom + 1.2;
  const taper = shoulder + Math.max(1, (upper - lower) * 1.4);
  const foot = taper + 9.5;
  scene.shape(
    polygon(
      [AXIS - upper, -3],
      [AXIS - upper / 3, -2.2],
      [AXIS + upper / 3, -3.6],
      [AXIS + upper, -3],
      [AXIS + upper, shoulder],
      [AXIS + lower, taper],
      [AXIS + lower, foot - 0.8],
      [AXIS + lower - 0.8, foot],
      [AXIS - lower + 0.8, foot],
      [AXIS - lower, foot - 0.8],
      [AXIS - lower, taper],
      [AXIS - upper, shoulder],
    ),
    { part: 'rod' },
  );
  scene.line(new Pen(AXIS - upper, shoulder).line([AXIS + upper, shoulder]).open());
  scene.line(new Pen(AXIS - lower, taper).line([AXIS + lower, taper]).open());
  scene.axis([AXIS, -5], [AXIS, foot + 1.8]);
  scene.across(AXIS - upper, AXIS + upper, 1, { left: 1, right: 1 }, thick.text, true);
  scene.across(
    AXIS - bore,
    AXIS + bore,
    8.6,
    { left: JET.top + 1.4, right: JET.top + 1.4 },
    jet.text,
    true,
  );
  const low = taper + 5;
  scene.across(AXIS - lower, AXIS + lower, low, { left: low, right: low }, thin.text, true);
  const { label } = feed;
  scene.name(label('jet'), { x: AXIS + JET.half - 3.6, y: 23 }, 20);
  scene.name(label('rod'), { x: AXIS + upper - 1.4, y: 24.6 }, 26);
  scene.note(
    `Diameters drawn ${scaleWords(scale).replace('its', 'their')},`,
    'lengths not to scale.',
  );
  return {
    scene,
    title: `${capital(label('rod'))} in its ${label('jet')}`,
    words: `Section of the ${label('jet')}, bore ${jet.text}, with the ${label('rod')} in it: ${label('thick')} ${thick.text} in the bore, ${label('thin')} ${thin.text} below.`,
  };
}
