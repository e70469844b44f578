import { systemRecord, ZERO } from '../quantity/index.ts';
import type { Gauge, GaugeSystem, Rational } from '../quantity/model.ts';
import { allInstruments, type Instrument } from './instruments.ts';
import { sizedGauge } from './sized-gauge.ts';

/** The instrument of the table that gauges of a system are: a No. 29 is a twist drill, a 22 SWG a wire. */
export function instrumentOf(system: GaugeSystem): Instrument | null {
  const { family } = systemRecord(system);
  return allInstruments().find(({ words }) => words.includes(family)) ?? null;
}

const known = new Map<GaugeSystem, Rational>();

/** How far an ordinary gauge is trusted to be of its size, in mm either side (k = 2), by the table. */
export function gaugeUncertainty({ system }: Gauge): Rational {
  const before = known.get(system);
  if (before !== undefined) return before;
  const mm = sizedGauge('pin', instrumentOf(system)?.uncertainty ?? '')?.mm ?? ZERO;
  known.set(system, mm);
  return mm;
}
