import { namesOf, nearest } from '../gauges/index.ts';
import type { KindSetting } from '../kinds/model.ts';
import {
  allUnits,
  equivalents,
  principal,
  rational,
  readStatement,
  unitWord,
  wireGaugeNamed,
} from '../quantity/index.ts';
import type { Dimension, Gauge, Statement } from '../quantity/model.ts';
import type { PlacedSize, Setting } from '../sheet/model.ts';
import type { Offer } from './front-words.ts';
import type { DeskDocument } from './model.ts';

/** What a size is being typed for. */
export interface SizeWanted {
  readonly typed: string;
  /** `value`, `also`, `gauge` ... */
  readonly key: string;
  /** The setting as it stands; null where it is not read yet. */
  readonly setting: Setting | null;
  readonly known: KindSetting | null;
  readonly dimensions?: readonly Dimension[];
}

const most = 30;

/** Sizes that may be meant by what is typed: its units, the gauges of that size and on either side, and what the kind knows. */
export function sizeCompletions(document: DeskDocument, wanted: SizeWanted): readonly Offer[] {
  const { typed, key, setting, known } = wanted;
  const dimensions = wanted.dimensions ?? known?.dimensions ?? ['length'];
  const offers = new Map<string, Offer>();
  const add = (label: string, detail: string | null) => {
    if (label !== '' && label !== typed && !offers.has(label)) {
      offers.set(label, { label, kind: 'size', detail, text: label });
    }
  };
  const swg = wireGaugeNamed(document.sheet.wireGauge?.value ?? document.project.context.wireGauge);
  const read = (text: string): Statement | null => {
    const { gauges } = document.project.context;
    const reading = readStatement(text, { gauges, expect: dimensions, swg });
    return reading.ok ? reading.statement : null;
  };
  if (key === 'value' && typed === '') {
    for (const condition of known?.conditions ?? []) add(condition, 'a condition');
  } else if (key === 'value') {
    for (const condition of known?.conditions ?? []) {
      if (condition.startsWith(typed.toLowerCase())) add(condition, 'a condition');
    }
  }
  if (key === 'also' && setting?.value?.reading.ok) addEquivalents(setting.value, add);
  if (['gauge', 'go', 'no-go'].includes(key) && setting?.value?.reading.ok) {
    for (const gauge of around(setting.value.reading.statement)) add(gauge.label, sizeOf(gauge));
  }
  if (typed === '') {
    for (const text of statedElsewhere(document, setting?.id ?? known?.name ?? null)) {
      add(text, 'on another sheet');
    }
    for (const { low, high } of known?.usual ?? [])
      add(low.text, `usual from here to ${high.text}`);
  } else {
    for (const [text, detail] of withUnits(typed, dimensions)) if (read(text)) add(text, detail);
    const whole = read(typed) ?? read(`${typed} in`);
    if (whole?.dimension === 'length') {
      for (const gauge of around(whole)) add(gauge.label, sizeOf(gauge));
      const { inch, mm } = equivalents(whole);
      add(inch ?? '', 'the same in inches');
      add(mm ?? '', 'the same in millimeters');
    }
  }
  return [...offers.values()].slice(0, most);
}

function addEquivalents(
  value: PlacedSize,
  add: (label: string, detail: string | null) => void,
): void {
  if (!value.reading.ok) return;
  const { statement } = value.reading;
  const { inch, mm } = equivalents(statement);
  add(inch ?? '', `${value.text} in inches`);
  add(mm ?? '', `${value.text} in millimeters`);
  const amount = principal(statement);
  if (statement.dimension !== 'length' || amount === null || statement.form !== 'exact') return;
  for (const gauge of namesOf(amount.base)) add(gauge.label, 'a gauge of this size');
}

/** The gauges of a size and on either side of it; none for what has no one size. */
function around(statement: Statement): readonly Gauge[] {
  const amount = principal(statement);
  if (statement.dimension !== 'length') return [];
  const base = amount?.base ?? statement.low?.base ?? null;
  if (base === null) return [];
  const { exact, below, above } = nearest(base);
  return [...exact, ...(below ? [below] : []), ...(above ? [above] : [])];
}

function sizeOf({ mm }: Gauge): string {
  const inches = Number(mm.div(254).mul(10).valueOf()).toFixed(4);
  return `${inches} in, ${Number(mm.valueOf()).toFixed(3)} mm`;
}

/** What is typed, with each unit or name of gauge behind it that makes a size of it. */
function* withUnits(
  typed: string,
  dimensions: readonly Dimension[],
): Generator<readonly [string, string]> {
  if (!/\d$/.test(typed) && !/^drill [a-z]$/i.test(typed)) return;
  if (dimensions.includes('length')) {
    if (/^(?:No\. ?|#)\d+$/i.test(typed)) yield [`${typed} drill`, 'a drill by its number'];
    else {
      yield [`${typed} in`, 'inches'];
      yield [`${typed} mm`, 'millimeters'];
      yield [`${typed} drill`, 'a drill'];
      if (/[.,]/.test(typed)) {
        yield [`${typed} in wire`, 'a round feeler'];
        yield [`${typed} in leaf`, 'a flat feeler'];
      }
    }
  }
  for (const unit of allUnits()) {
    if (unit.dimension !== 'length' && dimensions.includes(unit.dimension)) {
      yield [`${typed} ${unitWord(unit.id, rational(2))}`, unit.dimension];
    }
  }
}

function statedElsewhere(document: DeskDocument, id: string | null): readonly string[] {
  if (id === null) return [];
  const found = new Set<string>();
  for (const other of document.project.others?.() ?? []) {
    for (const setting of other.sheet.settings.values()) {
      if (setting.id === id && setting.value?.reading.ok) found.add(setting.value.text);
    }
  }
  return [...found].slice(0, 10);
}
