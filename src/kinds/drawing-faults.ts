import { nearestName } from '../text/index.ts';
import type { DrawingData, KindData } from './data.ts';
import { drawingForm, drawingForms } from './drawings.ts';
import type { KindFault } from './faults.ts';

type Path = readonly (string | number)[];

/**
 * What is wrong among the drawings of a kind's operations: a drawing, a slot or a form that is not
 * there, a needed slot that nothing feeds, a size or a thread that the kind lacks. In the order of
 * the file.
 */
export function drawingFaults(data: KindData): KindFault[] {
  const faults: KindFault[] = [];
  for (const [name, operation] of Object.entries(data.operations)) {
    operation.drawings?.forEach((drawing, i) => {
      faults.push(...faultsOf(drawing, ['operations', name, 'drawings', i], data));
    });
  }
  return faults;
}

function faultsOf(drawing: DrawingData, path: Path, data: KindData): KindFault[] {
  const faults: KindFault[] = [];
  const unknown = (
    at: Path,
    message: string,
    name: string,
    names: readonly string[],
    onKey = true,
  ): void => {
    if (names.includes(name)) return;
    const near = nearestName(name, names);
    const listed = names.map((each) => `\`${each}\``).join(', ');
    const fix =
      near !== null
        ? `did you mean \`${near}\`?`
        : names.length > 0
          ? `write one of them: ${listed}`
          : 'take it out';
    faults.push({ path: at, onKey, message, fix });
  };
  const form = drawingForm(drawing.shows);
  if (form === null) {
    const message = `there is no drawing \`${drawing.shows}\``;
    unknown([...path, 'shows'], message, drawing.shows, Object.keys(drawingForms), false);
    return faults;
  }
  const slots = (
    section: 'sizes' | 'threads' | 'counts' | 'choices' | 'labels' | 'called',
    names: readonly string[],
  ) => {
    for (const slot of Object.keys(drawing[section] ?? {})) {
      const message = `the drawing \`${drawing.shows}\` has nothing called \`${slot}\` among its ${section}`;
      unknown([...path, section, slot], message, slot, names);
    }
  };
  const unit = Object.entries(data.unit ?? {});
  const threads = unit.filter(([, is]) => is[0] === 'thread').map(([key]) => key);
  const measures = unit.map(([key]) => key).filter((key) => !threads.includes(key));
  slots('sizes', Object.keys(form.sizes));
  for (const [slot, from] of Object.entries(drawing.sizes ?? {})) {
    const message = `\`${from}\` is neither a setting of this kind nor a size of its unit`;
    const names = [...Object.keys(data.settings), ...measures];
    unknown([...path, 'sizes', slot], message, from, names, false);
  }
  slots('threads', form.threads);
  for (const [slot, from] of Object.entries(drawing.threads ?? {})) {
    unknown(
      [...path, 'threads', slot],
      `\`${from}\` is no thread of the unit`,
      from,
      threads,
      false,
    );
  }
  slots('choices', Object.keys(form.choices));
  for (const [slot, choice] of Object.entries(drawing.choices ?? {})) {
    const forms = form.choices[slot] ?? [];
    const at = [...path, 'choices', slot];
    const no = (name: string) => `\`${slot}\` of \`${drawing.shows}\` has no form \`${name}\``;
    for (const name of Object.keys(choice.when ?? {})) {
      unknown([...at, 'when', name], no(name), name, forms);
    }
    const { otherwise } = choice;
    if (otherwise !== undefined)
      unknown([...at, 'otherwise'], no(otherwise), otherwise, forms, false);
  }
  slots('counts', form.counts ?? []);
  slots('labels', Object.keys(form.labels));
  slots('called', Object.keys(form.labels));
  const missing = [
    ...Object.entries(form.sizes)
      .filter(([slot, { needed }]) => needed && drawing.sizes?.[slot] === undefined)
      .map(([slot]) => ['sizes', slot]),
    ...Object.keys(form.choices)
      .filter((slot) => drawing.choices?.[slot] === undefined)
      .map((slot) => ['choices', slot]),
    ...(form.counts ?? [])
      .filter((slot) => drawing.counts?.[slot] === undefined)
      .map((slot) => ['counts', slot]),
  ];
  for (const [section, slot] of missing) {
    const message = `the drawing \`${drawing.shows}\` needs \`${slot}\` among its ${section}`;
    faults.push({ path, onKey: false, message, fix: `add \`${slot}:\` under \`${section}:\`` });
  }
  return faults;
}
