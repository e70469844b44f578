import { FLOW_NUMBER, NOT_STATED } from '../quantity/index.ts';
import type { PlacedSize } from '../sheet/model.ts';
import { isBlank } from './blank.ts';
import { type Cure, defineCheck } from './define.ts';
import { readOf, sizesOfSetting } from './stated-sizes.ts';

/** `value: parallel` with `also: [13/64 in]`: words and a figure cannot be held against one another. */
const takenOut = ({ size }: { readonly size: PlacedSize }): Cure => ({
  takeOut: 'entry',
  at: size.span,
});

export default defineCheck({
  id: 'condition-beside-figure',
  severity: 'warning',
  group: 'sizes',
  summary: 'A setting is stated in words and as a figure.',
  explain:
    'Words and a figure say two things, and nothing proves that they mean one: the reader of the card ' +
    'has to choose. A kind says of which settings both belong together. Accept it where the paper ' +
    'gives both and each is needed.',
  messages: {
    both: {
      message: '{setting} is {condition}, and {figure} as well',
      fix: 'keep the one that the source gives, and put the other under `note`',
    },
    nothing: {
      message: '{setting} is {condition}, and yet {figure} is given',
      fix: 'write {figure} as the value, with its source, or take it out',
    },
  },
  run(sheet, _context, report) {
    for (const setting of sheet.figures) {
      if (setting.known?.wordsAndFigure === true) continue;
      const stated = [...sizesOfSetting(setting)]
        .filter(({ role, size }) => (role === 'value' || role === 'also') && !isBlank(size.text))
        .map((each) => ({ ...each, statement: readOf(each.size) }))
        // The number of a measured flow and a bore are two things that are told of one jet.
        .filter(({ statement }) => statement?.qualifier !== FLOW_NUMBER);
      const words = stated.find(({ statement }) => statement?.condition != null);
      const figure = stated.find(({ statement }) => statement && statement.condition === null);
      if (!words || !figure) continue;
      const condition = words.size.text;
      const later = words.size.span.start > figure.size.span.start ? words : figure;
      const other = later === words ? figure : words;
      report({
        message: words.statement?.condition === NOT_STATED ? 'nothing' : 'both',
        span: later.size.span,
        values: { setting: setting.name.value, condition, figure: figure.size.text },
        compared: [other.size.text, later.size.text],
        suggest: () => [later, other].filter(({ role }) => role === 'also').map(takenOut),
        related: [{ span: other.size.span, label: other === words ? 'the words' : 'the figure' }],
        subject: later.subject,
      });
    }
  },
  examples: [
    {
      name: 'a float that is parallel and has a height',
      sheet: {
        settings: 'float-drop: { value: parallel, also: [1/4 in], from: m48 p. 30 }',
      },
      expect: [
        {
          at: '1/4 in',
          message: 'float-drop is parallel, and 1/4 in as well',
          fix: 'keep the one that the source gives, and put the other under `note`',
        },
      ],
    },
    {
      name: 'a figure where nothing is stated',
      sheet: {
        settings: 'balance: { value: not stated, also: [2 %], from: m48 p. 30 }',
      },
      expect: [],
    },
    {
      name: 'a figure of a setting that goes without one',
      sheet: {
        settings: 'idle-speed: { value: not stated, also: [475 rpm], from: m48 p. 30 }',
      },
      expect: [
        {
          at: '475 rpm',
          message: 'idle-speed is not stated, and yet 475 rpm is given',
          fix: 'write 475 rpm as the value, with its source, or take it out',
        },
      ],
    },
    {
      name: 'where both belong, and where two ways of one figure stand',
      sheet: {
        settings:
          'balance: { value: equal, also: [2 %], from: m48 p. 32 }\nfloat-drop: { value: 1/4 in, also: [0.25 in], from: m48 p. 31 }',
      },
      expect: [],
    },
  ],
});
