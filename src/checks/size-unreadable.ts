import type { SizeProblem } from '../quantity/model.ts';
import { defineCheck } from './define.ts';
import { meant, probably } from './likely-misprint.ts';
import { withoutStrayLetter } from './size-slips.ts';
import { unreadSizes } from './stated-sizes.ts';

/** Problems that have a check of their own; an empty size is a blank. */
const ELSEWHERE: ReadonlySet<SizeProblem['code']> = new Set([
  'bare-number',
  'no-unit',
  'no-such-gauge',
  'limits-inverted',
  'empty',
]);

const isOwn = (code: SizeProblem['code']): boolean => !ELSEWHERE.has(code);

/** A size that the notation cannot read. */
export default defineCheck({
  id: 'size-unreadable',
  severity: 'error',
  group: 'sizes',
  depth: 0,
  summary: 'A size is written in a way that cannot be read.',
  explain:
    'What cannot be read cannot be proved, converted or compared, and a reader of the card will ' +
    'stumble over it as well. Write it in one of the ways that the notation knows; remarks go under `note`.',
  messages: {
    unreadable: { message: '{problem}', fix: '{fix}' },
    unmended: { message: '{problem}', fix: null },
  },
  run(sheet, context, report) {
    for (const { size, setting, subject, role, problem } of unreadSizes(sheet, isOwn)) {
      if (role === 'gauge' && isInstrument(size.text)) continue;
      const { message } = problem;
      const likely = probably(size, setting, sheet, context);
      const fix =
        likely === '' ? problem.fix : likely + (problem.fix ?? 'look in the source again');
      const suggest = () => {
        const bare = withoutStrayLetter(size.text);
        return [
          ...meant(size, setting, sheet, context, problem),
          ...(bare === null ? [] : [{ write: bare }]),
        ];
      };
      if (fix === null)
        report({ message: 'unmended', span: size.span, values: { problem: message }, subject });
      else
        report({
          message: 'unreadable',
          suggest,
          span: size.span,
          values: { problem: message, fix },
          subject,
        });
    }
  },
  examples: [
    {
      name: 'a slipped key between the figures',
      sheet: { settings: 'float-drop: { value: 0.7x50 in, from: m48 p. 31 }' },
      expect: [
        {
          at: '0.7x50 in',
          message: 'x is no unit that a size is written in',
          fix: 'say the unit after 0.7: in, mm, thou, turns, rpm ...',
        },
      ],
    },
    {
      name: 'a misspelt unit',
      sheet: { settings: 'idle-speed: { value: 475 rpn, from: m48 p. 40 }' },
      expect: [
        {
          at: '475 rpn',
          message: 'rpn is no unit that a size is written in',
          fix: 'write 475 rpm, if that is meant',
        },
      ],
    },
    {
      name: 'a fraction over nothing',
      sheet: { settings: 'float-drop: { value: 23/0 in, from: m48 p. 31 }' },
      expect: [{ at: '23/0 in', message: '23/0 divides by zero', fix: 'look in the source again' }],
    },
    {
      name: 'two sizes in one',
      sheet: { settings: 'float-drop: { value: between 3/4 in, from: m48 p. 31 }' },
      expect: [
        {
          at: 'between 3/4 in',
          message: 'between 3/4 in: between needs a second size after `and`',
          fix: null,
        },
      ],
    },
    {
      name: 'a remark goes under `note`, and an instrument is named in words',
      sheet: {
        settings:
          'float-drop: { value: 3/4 in, note: measured twice, gauge: straight-edge, from: m48 p. 31 }',
      },
      expect: [],
    },
    {
      name: 'a blank that is still to be filled in is another finding',
      sheet: { settings: 'float-drop: { value: fill in, from: m48 p. 31 }' },
      expect: [],
    },
  ],
});

/** `tachometer`, `straight-edge`: an instrument that is named in words proves no size of its own. */
function isInstrument(text: string): boolean {
  return !/\d|[½¼¾⅓⅔⅛⅜⅝⅞]|\b(?:drill|wire|leaf|pin|letter)\b/i.test(text);
}
