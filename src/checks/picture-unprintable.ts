import { defineCheck } from './define.ts';

/** A picture that the press cannot or will not take. */
export default defineCheck({
  id: 'picture-unprintable',
  severity: 'error',
  group: 'reading',
  summary:
    'A picture is missing, lies outside the project, is on the network, or is of no printable type.',
  explain:
    'A step that says "as in the picture" is worth nothing without it. Pictures are read from the ' +
    "project's folder only: a booklet must print the same next year, with no network. It cannot be " +
    'accepted.',
  messages: {
    missing: {
      message: 'there is no picture `{url}`',
      fix: 'put the file there, as seen from the sheet, or correct the path; capitals count',
    },
    outside: {
      message: 'the picture `{url}` lies outside the project',
      fix: 'copy the file to `sheets/pictures/` and write `pictures/{name}`',
    },
    remote: {
      message: 'the picture `{url}` is not in the project but on the network',
      fix: 'save it to `sheets/pictures/` and write `pictures/{name}`',
    },
    unsupported: {
      message: 'the picture `{url}` is of a type that cannot be printed',
      fix: 'save it as PNG, JPEG, WebP or SVG',
    },
    damaged: {
      message: 'the picture `{url}` is damaged, or not what its name says',
      fix: 'open it in a program for pictures and save it again',
    },
    unsafe: {
      message: 'the picture `{url}` has a script, a page or an address from outside in it',
      fix: 'save it as a plain SVG of shapes alone, with its pictures in it',
    },
    heavy: {
      message:
        'the picture `{url}` is too large to draw: its pixels, or parts that show one another',
      fix: 'save it smaller: 3000 pixels are sharp across a page; of an SVG, as PNG',
    },
  },
  run(sheet, context, report) {
    if (context.picture === null) return;
    for (const { url, span } of sheet.pictures) {
      // Without an address, or with a reference that leads nowhere, there is nothing to look for.
      const state = url === '' ? 'missing' : context.picture(url);
      if (state === 'found') continue;
      const plain = url.replace(/[?#].*$/s, '');
      const name = plain.slice(plain.search(/[^/\\]*$/)) || 'name.png';
      const values = state === 'outside' || state === 'remote' ? { url, name } : { url };
      report({ message: state, span, values, subject: url });
    }
  },
  examples: [
    {
      name: 'a file that is not there',
      sheet: { body: '![The bowl from below](pictures/absent.png)\n' },
      expect: [
        {
          at: '![The bowl from below](pictures/absent.png)',
          message: 'there is no picture `pictures/absent.png`',
          fix: 'put the file there, as seen from the sheet, or correct the path; capitals count',
        },
      ],
    },
    {
      name: 'a file outside of the project',
      sheet: { body: '![The bowl from below](../../outside/bowl.png)\n' },
      expect: [
        {
          at: '![The bowl from below](../../outside/bowl.png)',
          message: 'the picture `../../outside/bowl.png` lies outside the project',
          fix: 'copy the file to `sheets/pictures/` and write `pictures/bowl.png`',
        },
      ],
    },
    {
      name: 'a picture on the network',
      sheet: { body: '![The bowl from below](https://pictures.example/bowl.png?size=2)\n' },
      expect: [
        {
          at: '![The bowl from below](https://pictures.example/bowl.png?size=2)',
          message:
            'the picture `https://pictures.example/bowl.png?size=2` is not in the project but on the network',
          fix: 'save it to `sheets/pictures/` and write `pictures/bowl.png`',
        },
      ],
    },
    {
      name: 'a type that does not print',
      sheet: { body: '![The bowl from below](pictures/bowl.tiff)\n' },
      expect: [
        {
          at: '![The bowl from below](pictures/bowl.tiff)',
          message: 'the picture `pictures/bowl.tiff` is of a type that cannot be printed',
          fix: 'save it as PNG, JPEG, WebP or SVG',
        },
      ],
    },
    {
      name: 'a picture that is none',
      sheet: { body: '![The bowl from below](pictures/damaged.png)\n' },
      expect: [
        {
          at: '![The bowl from below](pictures/damaged.png)',
          message: 'the picture `pictures/damaged.png` is damaged, or not what its name says',
          fix: 'open it in a program for pictures and save it again',
        },
      ],
    },
    {
      name: 'a picture with a script in it',
      sheet: { body: '![The bowl from below](pictures/unsafe.svg)\n' },
      expect: [
        {
          at: '![The bowl from below](pictures/unsafe.svg)',
          message:
            'the picture `pictures/unsafe.svg` has a script, a page or an address from outside in it',
          fix: 'save it as a plain SVG of shapes alone, with its pictures in it',
        },
      ],
    },
    {
      name: 'a picture of which one part shows ten others, and each of them ten',
      sheet: { body: '![The bowl from below](pictures/heavy.svg)\n' },
      expect: [
        {
          at: '![The bowl from below](pictures/heavy.svg)',
          message:
            'the picture `pictures/heavy.svg` is too large to draw: its pixels, or parts that show one another',
          fix: 'save it smaller: 3000 pixels are sharp across a page; of an SVG, as PNG',
        },
      ],
    },
    {
      name: 'a picture beside the sheets',
      sheet: { body: '![The bowl from below](pictures/bowl.png)\n' },
      expect: [],
    },
  ],
});
