import type { Kind } from '../kinds/model.ts';
import { nearestName } from '../text/index.ts';
import { fieldNames, type Mapping, rowFieldNames, type Target } from './mapping.ts';

/** A target, or why a text names none, with what was perhaps meant. */
export type TargetRead =
  | { readonly ok: true; readonly target: Target }
  | { readonly ok: false; readonly message: string; readonly near: string | null };

/** Reads what the mapping file says of a column, with the names and aliases of the kind. */
export function targetNamed(text: string, kind: Kind, layout: Mapping['layout']): TargetRead {
  const word = text.trim();
  if (word === 'nothing') return found({ to: 'nothing' });
  const field = fieldNames.find((name) => name === word);
  if (field !== undefined) return found({ to: 'field', field });
  const rowField = rowFieldNames.find((name) => name === word);
  if (rowField !== undefined && layout === 'row-is-setting') {
    return found({ to: 'row', field: rowField });
  }
  const [, head = '', rest = ''] = /^(unit|has|says) +(.+)$/.exec(word) ?? [];
  if (head === 'unit') return unitKey(rest, kind);
  if (head === 'has') return featureOf(rest, kind);
  if (head === 'says') {
    if (layout === 'row-is-setting') return found({ to: 'row-said', key: rest });
    return missing('`says` is for lists of one setting a row; name the setting: `<setting> at`');
  }
  return settingTarget(word, kind, layout);
}

function settingTarget(word: string, kind: Kind, layout: Mapping['layout']): TargetRead {
  const whole = kind.settingNamed(word);
  if (layout === 'row-is-setting') {
    return missing(
      `\`${word}\` is nothing that a column of this list can be`,
      nearestName(word, [...fieldNames, ...rowFieldNames, 'nothing']),
    );
  }
  if (whole !== null) return found({ to: 'value', setting: whole.name });
  const [, name = '', key = ''] = /^(.+?) +([a-z0-9]+(?:-[a-z0-9]+)*)$/.exec(word) ?? [];
  const setting = name === '' ? null : kind.settingNamed(name);
  if (setting !== null && key === 'also') return found({ to: 'also', setting: setting.name });
  if (setting !== null) return found({ to: 'said', setting: setting.name, key });
  return missing(
    `\`${word}\` is no setting of a ${kind.name}, and nothing else that a column can be`,
    nearestName(word, [...fieldNames, ...kind.settings.keys(), 'nothing']),
  );
}

function unitKey(key: string, kind: Kind): TargetRead {
  if (kind.dimensionsOfUnit.has(key) || kind.threadsOfUnit.has(key)) {
    return found({ to: 'unit', key });
  }
  const known = [...kind.dimensionsOfUnit.keys(), ...kind.threadsOfUnit];
  return missing(`a ${kind.name} has no \`${key}\` of its own`, nearestName(key, known));
}

function featureOf(name: string, kind: Kind): TargetRead {
  const feature = kind.featureNamed(name);
  if (feature !== null) return found({ to: 'feature', feature: feature.name });
  return missing(
    `a ${kind.name} has no feature called \`${name}\``,
    nearestName(name, kind.features.keys()),
  );
}

function found(target: Target): TargetRead {
  return { ok: true, target };
}

function missing(message: string, near: string | null = null): TargetRead {
  return { ok: false, message, near };
}
