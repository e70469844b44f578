import type {
  FeatureEntry,
  HazardEntry,
  KindEntry,
  OperationEntry,
  PartEntry,
  SettingEntry,
} from '../../kinds/reference/model.ts';
import {
  asked,
  drawn,
  gaugesOf,
  measuredHow,
  reason,
  statedAs,
  unitWords,
  usualOf,
} from './words.ts';

/** A label and what stands behind it. */
export type Row = readonly [label: string, words: string];

/** Everything of one entry, row by row; a label may come again. */
export function entryRows(entry: KindEntry): readonly Row[] {
  return rowsOf(entry).filter(([, words]) => words !== '');
}

function rowsOf(entry: KindEntry): readonly Row[] {
  switch (entry.section) {
    case 'setting':
      return settingRows(entry);
    case 'operation':
      return operationRows(entry);
    case 'part':
      return partRows(entry);
    case 'hazard':
      return hazardRows(entry);
    case 'feature':
      return featureRows(entry);
    case 'unit':
      return [['size', unitWords(entry)]];
  }
}

/** A key, and words that say it behind the value as well. */
function withWords({ saidBy }: SettingEntry, key: string): string {
  const words = saidBy.find((each) => each.key === key)?.words ?? [];
  return words.length === 0 ? key : `${key} (${words.join(', ')})`;
}

function settingRows(entry: SettingEntry): readonly Row[] {
  return [
    ['also', entry.aliases.join(', ')],
    ['is', entry.explain],
    ['stated as', statedAs(entry)],
    ['usual', usualOf(entry)],
    ['beside it', entry.mustSay.map((key) => withWords(entry, key)).join(', ')],
    ['may say', entry.maySay.map((key) => withWords(entry, key)).join(', ')],
    ['measured', measuredHow(entry)],
    ['gauges', gaugesOf(entry)],
    ...entry.symptoms.map(({ way, noticed }): Row => [way, noticed.join(', ')]),
    ['made in', entry.setBy.join(', ')],
    ['read in', entry.measuredBy.join(', ')],
    ...entry.needs.map((rule): Row => ['needs', `${rule.says} ${reason(rule)}`]),
    ...entry.disturbedBy.map((each): Row => ['moved by', `${each.says} ${reason(each)}`]),
    ['asked by', [...(entry.always ? ['every unit'] : []), ...entry.askedBy].join(', ')],
    ...entry.drawings.map((drawing): Row => ['drawing', drawn(drawing)]),
  ];
}

function operationRows(entry: OperationEntry): readonly Row[] {
  return [
    ['also', entry.aliases.join(', ')],
    ['is', entry.explain],
    ['stage', entry.stage],
    ['makes', entry.settings.join(', ')],
    ['reads', entry.measures.join(', ')],
    ['hazards', entry.hazards.join(', ')],
    ...entry.rules.map((rule): Row => ['rule', `${rule.says} ${reason(rule)}`]),
    ['leaves', entry.leaves.join(', ')],
    ...entry.steps.map((step): Row => ['step', step]),
    ['asked by', [...(entry.always ? ['every unit'] : []), ...entry.askedBy].join(', ')],
    ...entry.drawings.map((drawing): Row => ['drawing', drawn(drawing)]),
  ];
}

function partRows(entry: PartEntry): readonly Row[] {
  return [
    ['also', entry.aliases.join(', ')],
    ...entry.conditions.map(
      ({ name, aliases }): Row => [
        `:state[${entry.name} ${name}]`,
        aliases.length === 0 ? 'by no other name' : `also ${aliases.join(', ')}`,
      ],
    ),
    ['begins', entry.starts ?? ''],
    ['ends', entry.home.join(' or ')],
    ['on units', entry.ifFeature.join(' or ')],
    ['needed by', entry.neededBy.join(', ')],
  ];
}

function hazardRows(entry: HazardEntry): readonly Row[] {
  return [
    ['also', entry.aliases.join(', ')],
    ['signal', `at least ${entry.signal}`],
    ['hazard', entry.message.hazard],
    ['harm', entry.message.consequence],
    ['avoid', entry.message.avoid],
    ['met by', entry.metBy.join(', ')],
  ];
}

function featureRows(entry: FeatureEntry): readonly Row[] {
  return [
    ['also', entry.aliases.join(', ')],
    ['is', entry.explain],
    ['settings', asked(entry.settings)],
    ['work', asked(entry.operations)],
    ['not beside', entry.excludes.join(', ')],
    ['parts', entry.parts.join(', ')],
  ];
}
