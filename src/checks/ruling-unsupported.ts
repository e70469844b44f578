import { differs, isFollowed } from '../sheet/index.ts';
import type { Citation, Setting } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { nearest } from './vocabulary.ts';

/** The figure that a sheet rules is one that none of its sources states. */
export default defineCheck({
  id: 'ruling-unsupported',
  severity: 'error',
  group: 'provenance',
  summary: 'A ruling follows a source that states nothing, or a figure that no source states.',
  explain:
    'Whoever looks the figure up finds no paper that has it. A source that is followed must be among ' +
    'the statements: that cannot be accepted, only mended. A figure of the editor’s own, such as the ' +
    'middle of two, may be accepted with the way it was found.',
  messages: {
    near: {
      message: '`{setting}` follows `{source}`, but none of its statements is from it',
      fix: 'write `{near}`',
      suggest: [{ write: '{near}' }],
    },
    unknown: {
      message: '`{setting}` follows `{source}`, but none of its statements is from it',
      fix: 'add what that source states, or follow one that is listed',
    },
    page: {
      message: '`{setting}` follows `{source}`, but that source is not cited at {page}',
      fix: 'write the page as it stands beside the statement, {pages}',
    },
    twice: {
      message: '`{setting}` follows `{source}`, which states both `{first}` and `{second}`',
      fix: 'add the page of the right one to `follows:`',
    },
    figure: {
      message: 'no statement of `{setting}` supports `{value}`; the sources say {stated}',
      fix: 'write a figure that one of them states, or accept this with the way it was found',
    },
  },
  run(sheet, _context, report) {
    for (const setting of sheet.figures) {
      const { name, id, value, follows, statements } = setting;
      const subject = id;
      const own = value !== null && statements.every((each) => each.value !== value);
      const stated = statements.flatMap((each) => each.value ?? []);
      if (own && stated.length > 0 && stated.every((size) => differs(value, size))) {
        report({
          message: 'figure',
          severity: 'warning',
          span: value.span,
          values: { setting: name.value, value: value.text, stated: written(stated) },
          related: stated.map(({ span }) => ({ span, label: 'a statement' })),
          suggest: () => [...new Set(stated.map(({ text }) => text))].map((write) => ({ write })),
          subject,
        });
      }
      if (follows === null) continue;
      const source = follows.id;
      const { span } = follows;
      const cited = citationsOf(setting);
      const fromIt = cited.filter((each) => each.id === source);
      if (fromIt.length === 0) {
        const near = nearest(source, new Set(cited.map((each) => each.id)));
        const values = { setting: name.value, source };
        const suggest = () =>
          [...new Set(cited.map((each) => each.id))].map((write) => ({ write }));
        if (near === null) report({ message: 'unknown', span, values, subject, suggest });
        else report({ message: 'near', span, values: { ...values, near }, subject });
        continue;
      }
      const { page } = follows;
      if (page !== null && fromIt.every((each) => each.page !== page)) {
        const pages = [...new Set(fromIt.map((each) => `\`${each.page ?? 'none'}\``))].join(' or ');
        report({
          message: 'page',
          span,
          values: { setting: name.value, source, page, pages },
          suggest: () => fromIt.map((each) => ({ write: citedAs(each) })),
          subject,
        });
        continue;
      }
      const [first, ...others] = statements.filter((each) => isFollowed(each, follows));
      const second = others.find((each) => each.value && differs(first?.value ?? null, each.value));
      if (own || !first?.value || !second?.value) continue;
      report({
        message: 'twice',
        span,
        values: {
          setting: name.value,
          source,
          first: first.value.text,
          second: second.value.text,
        },
        compared: [first.value.text, second.value.text],
        suggest: () => fromIt.flatMap((each) => (each.page ? [{ write: citedAs(each) }] : [])),
        related: [first.value, second.value].map((size) => ({ span: size.span, label: 'one' })),
        subject,
      });
    }
  },
  examples: [
    {
      name: 'a source that states nothing',
      sheet: {
        settings:
          'idle-mixture:\n  statements:\n    - { value: 1-1/4 turns out, from: m48 p. 40 }\n  follows: bulletin',
      },
      expect: [
        {
          at: 'bulletin',
          message: '`idle-mixture` follows `bulletin`, but none of its statements is from it',
          fix: 'add what that source states, or follow one that is listed',
        },
      ],
    },
    {
      name: 'a misspelt source',
      sheet: {
        settings: 'idle-mixture: { value: 1-1/4 turns out, from: m48 p. 40, follows: m84 }',
      },
      expect: [
        {
          at: 'm84',
          message: '`idle-mixture` follows `m84`, but none of its statements is from it',
          fix: 'write `m48`',
        },
      ],
    },
    {
      name: 'a page that is not cited',
      sheet: {
        settings:
          'idle-mixture:\n  statements:\n    - { value: 1-1/4 turns out, from: m48 p. 40 }\n  follows: m48 p. 41',
      },
      expect: [
        {
          at: 'm48 p. 41',
          message: '`idle-mixture` follows `m48`, but that source is not cited at p. 41',
          fix: 'write the page as it stands beside the statement, `p. 40`',
        },
      ],
    },
    {
      name: 'a manual that contradicts itself',
      sheet: {
        settings:
          'idle-mixture:\n  statements:\n    - { value: 1-1/4 turns out, from: m48 p. 40 }\n    - { value: 1 turn out, from: m48 p. 118, ruling: a misprint }\n  follows: m48',
      },
      expect: [
        {
          at: 'm48',
          message:
            '`idle-mixture` follows `m48`, which states both `1-1/4 turns out` and `1 turn out`',
          fix: 'add the page of the right one to `follows:`',
        },
      ],
    },
    {
      name: 'a figure between two',
      sheet: {
        settings:
          'idle-mixture:\n  value: 1-1/8 turns out\n  statements:\n    - { value: 1-1/4 turns out, from: m48 p. 40 }\n    - { value: 1 turn out, from: m48 p. 118 }\n  ruling: the middle of the two',
      },
      expect: [
        {
          at: '1-1/8 turns out',
          severity: 'warning',
          message:
            'no statement of `idle-mixture` supports `1-1/8 turns out`; the sources say `1-1/4 turns out` and `1 turn out`',
          fix: 'write a figure that one of them states, or accept this with the way it was found',
        },
      ],
    },
    {
      name: 'the page says which, and a figure is supported in another form',
      sheet: {
        settings:
          'idle-mixture:\n  statements:\n    - { value: 1-1/4 turns out, from: m48 p. 40 }\n    - { value: 1 turn out, from: m48 p. 118, ruling: a misprint }\n  follows: m48 p. 40\nfloat-level:\n  value: 13/64 in\n  at: free end of the float\n  gasket: removed\n  statements: [{ value: 0.203 in, from: m48 p. 31 }]',
      },
      expect: [],
    },
  ],
});

/** A source with its page, as `follows:` has it. */
function citedAs({ id, page }: Citation): string {
  return page === null ? id : `${id} ${page}`;
}

function written(stated: readonly { readonly text: string }[]): string {
  const texts = [...new Set(stated.map(({ text }) => `\`${text}\``))];
  return texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`;
}

function citationsOf({ from, statements }: Setting) {
  return [...statements.flatMap((each) => each.from ?? []), ...from];
}
