import { MergeView } from '@codemirror/merge';
import { EditorState } from '@codemirror/state';
import { EditorView } from '@codemirror/view';
import { el } from './dom.ts';
import type { Differing } from './model.ts';

/** Shows the file and the text side by side, with what differs marked, and asks which one is to stay. */
export function differenceDialog(
  { text }: Differing,
  mine: string,
  nonce: string,
  settle: (keep: 'mine' | 'file') => Promise<void>,
): void {
  const place = el('div', { class: 'both' });
  const box = el(
    'dialog',
    { class: 'difference', 'aria-label': 'The file was changed meanwhile' },
    el('h2', {}, 'The file was changed meanwhile'),
    el(
      'p',
      {},
      text === null
        ? 'It is gone from the disk. Your text is still here.'
        : 'On the left what stands in the file, on the right your text. Nothing is written over: what gives way is kept in .gaugeleaf/desk/aside.',
    ),
    place,
    el(
      'p',
      { class: 'deeds' },
      text === null ? null : choice('Take up the file', 'file'),
      choice('Keep my text and save it', 'mine'),
      el('button', { type: 'button', class: 'close', onclick: () => box.close() }, 'Decide later'),
    ),
  );
  function choice(label: string, keep: 'mine' | 'file'): HTMLElement {
    return el(
      'button',
      { type: 'button', onclick: () => void settle(keep).then(() => box.close()) },
      label,
    );
  }
  document.body.append(box);
  box.addEventListener('close', () => box.remove());
  const fixed = (label: string) => [
    EditorState.readOnly.of(true),
    EditorView.editable.of(false),
    EditorView.cspNonce.of(nonce),
    EditorView.lineWrapping,
    EditorView.contentAttributes.of({ 'aria-label': label, tabindex: '0' }),
  ];
  box.showModal();
  if (text !== null) {
    new MergeView({
      a: { doc: text, extensions: fixed('What stands in the file') },
      b: { doc: mine, extensions: fixed('Your text') },
      parent: place,
      collapseUnchanged: { margin: 3, minSize: 6 },
    });
  }
}
