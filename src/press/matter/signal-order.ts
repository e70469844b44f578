import type { SignalWord } from '../../kinds/model.ts';

/** The signal words of ANSI Z535.6 in falling order of harm. */
export const signalOrder: readonly SignalWord[] = ['danger', 'warning', 'caution', 'notice'];
