import { rational } from '../quantity/index.ts';
import { enclose } from './interval.ts';

/** Standard gravity, m/s²: 9.80665 by definition (SI Brochure, 9th edition). */
export const GRAVITY = enclose(rational('9.80665'));
