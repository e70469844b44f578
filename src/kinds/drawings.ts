import type { Dimension } from '../quantity/model.ts';
import type { DrawingData } from './data.ts';

/** What a drawing is fed with: slots for sizes and threads, choices among forms, names of parts. */
export interface DrawingForm {
  /** Sizes by slot, with the dimensions they may have; without a needed one nothing is drawn. */
  readonly sizes: Readonly<
    Record<string, { readonly dimensions: readonly Dimension[]; readonly needed: boolean }>
  >;
  /** Slots for threads of the unit. */
  readonly threads: readonly string[];
  /** Slots for how many there are of what the drawing repeats; without one nothing is drawn. */
  readonly counts?: readonly string[];
  /** Forms that the drawing can take, by slot; without one that is settled nothing is drawn. */
  readonly choices: Readonly<Record<string, readonly string[]>>;
  /** What its parts are called where a kind does not say. */
  readonly labels: Readonly<Record<string, string>>;
}

const needed = (...dimensions: readonly Dimension[]) => ({ dimensions, needed: true });
const also = (...dimensions: readonly Dimension[]) => ({ dimensions, needed: false });

/** The drawings that the press has, by name. None knows a kind: a kind says what each is fed with. */
export const drawingForms = {
  'float-height': {
    sizes: { gap: needed('length') },
    threads: [],
    choices: {
      cover: ['inverted', 'upright'],
      gasket: ['fitted', 'removed'],
      to: ['near', 'far'],
    },
    labels: { float: 'float', cover: 'cover', gasket: 'gasket', needle: 'needle' },
  },
  'plate-gap': {
    sizes: { gap: needed('length'), 'closed-angle': also('angle') },
    threads: [],
    choices: {},
    labels: { plate: 'plate', wall: 'bore' },
  },
  'offset-plate-gap': {
    sizes: { gap: needed('length'), 'closed-angle': also('angle') },
    threads: [],
    choices: { edge: ['upper', 'lower'] },
    labels: { plate: 'plate', wall: 'wall' },
  },
  'needle-turns': {
    sizes: { turns: needed('turns') },
    threads: ['thread'],
    choices: {},
    labels: { needle: 'needle', seat: 'seat' },
  },
  'screw-on-lever': {
    sizes: { turns: needed('turns') },
    threads: ['thread'],
    choices: {},
    labels: { screw: 'screw', lever: 'lever', contact: 'at first contact' },
  },
  'screw-under-slide': {
    sizes: { turns: needed('turns') },
    threads: ['thread'],
    choices: {},
    labels: { screw: 'screw', slide: 'slide', contact: 'at first contact' },
  },
  'gap-on-lobe': {
    sizes: { gap: needed('length') },
    threads: [],
    counts: ['lobes'],
    choices: { arms: ['one', 'two'] },
    labels: {
      lobes: 'lobes',
      block: 'block',
      arm: 'moving contact',
      fixed: 'fixed contact',
      other: 'second set',
    },
  },
  'stepped-cam': {
    sizes: { set: also('speed') },
    threads: [],
    choices: { step: ['highest', 'second', 'third', 'lowest'] },
    labels: {
      screw: 'screw',
      cam: 'cam',
      highest: 'highest step',
      second: 'second step',
      third: 'third step',
      lowest: 'lowest step',
    },
  },
  'rod-in-jet': {
    sizes: { jet: needed('length'), thick: needed('length'), thin: needed('length') },
    threads: [],
    choices: {},
    labels: { rod: 'rod', jet: 'jet', thick: 'thick step', thin: 'thin step' },
  },
  'nut-flats': {
    sizes: { turns: needed('turns') },
    threads: ['thread'],
    choices: {},
    labels: { jet: 'jet', bridge: 'bridge', nut: 'nut' },
  },
  'lever-edge': {
    sizes: { set: needed('condition', 'length') },
    threads: [],
    choices: { what: ['edge', 'travel'] },
    labels: { lever: 'lever', edge: 'straight-edge', rod: 'rod', start: 'start', end: 'end' },
  },
} as const satisfies Readonly<Record<string, DrawingForm>>;

/** The name of a drawing that the press has. */
export type DrawingName = keyof typeof drawingForms;

/** The form of a drawing by its name, or null where there is none of that name. */
export function drawingForm(name: string): DrawingForm | null {
  return Object.hasOwn(drawingForms, name) ? drawingForms[name as DrawingName] : null;
}

/** How one form of a drawing is chosen: by words under a key of the setting, or always the same. */
export interface DrawingChoice {
  /** The key beside the setting's value; null for a choice that is always `otherwise`. */
  readonly by: string | null;
  /** Words that choose a form, looked for in this order. */
  readonly when: ReadonlyMap<string, readonly string[]>;
  /** Where none of the words stands there; null draws nothing then. */
  readonly otherwise: string | null;
}

/** One drawing that an operation shows. */
export interface KindDrawing {
  readonly shows: DrawingName;
  /** Slot to the name of a setting of the kind, or of a size of the unit. */
  readonly sizes: ReadonlyMap<string, string>;
  /** Slot to the key of `unit:` that names a thread. */
  readonly threads: ReadonlyMap<string, string>;
  readonly choices: ReadonlyMap<string, DrawingChoice>;
  /** Slot to an entry of the kind's counts. */
  readonly counts: ReadonlyMap<string, string>;
  /** Names of parts, by slot. */
  readonly labels: ReadonlyMap<string, string>;
  /** Names that the steps may have for a part, by slot: their own word goes before the label. */
  readonly called: ReadonlyMap<string, readonly string[]>;
  /** Features of which the unit must have one, if any stand here, and of which it may have none. */
  readonly ifFeature: readonly string[];
  readonly unlessFeature: readonly string[];
  /** How much it is wanted where there is room for a few: 1 first, `Infinity` where the kind says nothing. */
  readonly rank: number;
}

/** A drawing from its data, whose names `drawingFaults` has passed. */
export function buildDrawing(data: DrawingData): KindDrawing {
  return {
    shows: data.shows as DrawingName,
    sizes: new Map(Object.entries(data.sizes ?? {})),
    threads: new Map(Object.entries(data.threads ?? {})),
    choices: new Map(
      Object.entries(data.choices ?? {}).map(([slot, choice]) => [
        slot,
        {
          by: choice.by ?? null,
          when: new Map(Object.entries(choice.when ?? {})),
          otherwise: choice.otherwise ?? null,
        },
      ]),
    ),
    counts: new Map(Object.entries(data.counts ?? {})),
    labels: new Map(Object.entries(data.labels ?? {})),
    called: new Map(Object.entries(data.called ?? {})),
    ifFeature: data['if-feature'] ?? [],
    unlessFeature: data['unless-feature'] ?? [],
    rank: data.rank ?? Number.POSITIVE_INFINITY,
  };
}
