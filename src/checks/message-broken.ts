import type { UnknownDirective } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';
import { defineCheck } from './define.ts';

const opening =
  /^(:{3,})([ \t]*)(danger|warning|caution|notice)([ \t]*)(\{[^{}\r\n]*\})?[ \t]*(?=\r|\n|$)/i;

/** A safety message whose colons do not open or close it. */
export default defineCheck({
  id: 'message-broken',
  severity: 'error',
  group: 'cautions',
  summary: 'A safety message is not opened or not closed as it must be.',
  explain:
    'A space in the wrong place turns a warning into plain words with colons before them, and a ' +
    'message that is never closed swallows every step and heading below it. It cannot be accepted.',
  messages: {
    spaced: {
      message: '`{written}` is not read as a safety message, because of a space in it',
      fix: 'write `{meant}`',
      suggest: [{ write: '{meant}' }],
    },
    opened: {
      message: '`{written}` is not read as a safety message',
      fix: 'write it as `:::warning{hazard=gasoline-vapor}` on a line of its own, the words below it, and `:::` on a line of its own',
    },
    stray: {
      message: '`{written}` closes no safety message',
      fix: 'take it out, or put the line `:::warning{hazard=gasoline-vapor}` above what it is to close',
      suggest: [{ takeOut: 'words' }],
    },
    unclosed: {
      message:
        'the message that `{written}` opens is never closed, so it takes in all that follows',
      fix: 'put `:::` on a line of its own below its last line',
    },
  },
  run(sheet, _context, report) {
    if (!sheet.text.includes(':::')) return;
    const containers = [...sheet.messages, ...sheet.directives.filter(isContainer)];
    for (const { span } of containers) {
      const whole = sheet.text.slice(span.start, span.end);
      if (isClosed(whole)) continue;
      const written = /^:+[^\s[{]*/.exec(whole)?.[0] ?? '';
      const place = { start: span.start, end: span.start + written.length };
      const [paragraph = ''] = whole.split(/\n[ \t]*\r?\n/, 1);
      const end = span.start + paragraph.trimEnd().length;
      report({
        message: 'unclosed',
        span: place,
        values: { written },
        suggest: () => [{ before: '', behind: '\n:::', at: { start: end, end } }],
      });
    }
    let open = false;
    for (const { text, span, block } of sheet.prose) {
      if (span.start !== block.start || !text.startsWith(':::')) continue;
      const line = firstLine(text).trimEnd();
      const place: Span = { start: span.start, end: span.start + line.length };
      const match = opening.exec(text);
      if (/^:+$/.test(line)) {
        // The closing line of a message that was not opened as it must be has had its finding.
        if (!open) report({ message: 'stray', span: place, values: { written: line } });
        open = false;
      } else if (match === null) {
        const shown = line.length > 60 ? `${line.slice(0, 60)}...` : line;
        const parts = /^(:{3,}\w+(?:\{[^}]*\})?)[ \t]+(\S.*)$/.exec(line);
        report({
          message: 'opened',
          span: place,
          values: { written: shown },
          suggest: () =>
            parts === null
              ? []
              : [{ write: `${parts[1]}\n${parts[2]}` }, { write: `${parts[1]}\n${parts[2]}\n:::` }],
        });
        open = true;
      } else {
        const closing = /^[ \t]*(:{3,})[ \t]*$/m.exec(sheet.text.slice(place.end));
        // Without a closing line of as many colons the cure would swallow what follows.
        const colons = Math.min(
          match[1]?.length ?? 3,
          closing?.[1]?.length ?? Number.POSITIVE_INFINITY,
        );
        const meant = `${':'.repeat(colons)}${match[3]?.toLowerCase()}${match[5] ?? ''}`;
        const closes = closing !== null;
        report({
          message: 'spaced',
          span: place,
          values: { written: line, meant },
          ...(closes ? { edits: [{ span: place, text: meant }] } : {}),
        });
        open = true;
      }
    }
  },
  examples: [
    {
      name: 'a space after the colons',
      sheet: { body: '::: warning{hazard=gasoline-vapor}\nNo flame.\n:::\n' },
      expect: [
        {
          at: '::: warning{hazard=gasoline-vapor}',
          message:
            '`::: warning{hazard=gasoline-vapor}` is not read as a safety message, because of a space in it',
          fix: 'write `:::warning{hazard=gasoline-vapor}`',
          fixed: ':::warning{hazard=gasoline-vapor}',
        },
      ],
    },
    {
      name: 'the words on the line that opens it',
      sheet: { body: ':::warning No flame, spark or hot lamp.\n' },
      expect: [
        {
          at: ':::warning No flame, spark or hot lamp.',
          message: '`:::warning No flame, spark or hot lamp.` is not read as a safety message',
          fix: 'write it as `:::warning{hazard=gasoline-vapor}` on a line of its own, the words below it, and `:::` on a line of its own',
        },
      ],
    },
    {
      name: 'closed twice',
      sheet: { body: ':::warning{hazard=gasoline-vapor}\nNo flame.\n:::\n\n:::\n\nThe bowl.\n' },
      expect: [
        {
          at: ':::',
          message: '`:::` closes no safety message',
          fix: 'take it out, or put the line `:::warning{hazard=gasoline-vapor}` above what it is to close',
        },
      ],
    },
    {
      name: 'never closed',
      sheet: {
        body: ':::warning{hazard=gasoline-vapor}\nNo flame.\n\n## Float level\n\n1. Set it.\n',
      },
      expect: [
        {
          at: ':::warning',
          message:
            'the message that `:::warning` opens is never closed, so it takes in all that follows',
          fix: 'put `:::` on a line of its own below its last line',
        },
      ],
    },
    {
      name: 'opened with more colons than close it, and a space',
      sheet: { body: ':::: warning{hazard=gasoline-vapor}\nNo flame.\n:::\n\n## Float level\n' },
      expect: [
        {
          at: ':::: warning{hazard=gasoline-vapor}',
          message:
            '`:::: warning{hazard=gasoline-vapor}` is not read as a safety message, because of a space in it',
          fix: 'write `:::warning{hazard=gasoline-vapor}`',
          fixed: ':::warning{hazard=gasoline-vapor}',
        },
      ],
    },
    {
      name: 'opened and closed',
      sheet: { body: ':::warning{hazard=gasoline-vapor}\nNo flame.\n:::\n' },
      expect: [],
    },
  ],
});

function isContainer({ kind }: UnknownDirective): boolean {
  return kind === 'container';
}

function firstLine(text: string): string {
  return /^[^\r\n]*/.exec(text)?.[0] ?? '';
}

/** Whether the last line of a container's text is its closing colons. */
function isClosed(text: string): boolean {
  return /[\r\n][ \t>]*:{3,}[ \t]*$/.test(text.slice(-200));
}
