import { describe, expect, test } from 'vitest';
import { builtInKinds, levelName } from '../../src/kinds/index.ts';
import { NameBook } from '../../src/kinds/name-book.ts';

test.each([
  ['Choke Pull-Down ', 'choke-pull-down'],
  ['choke_pull  down', 'choke-pull-down'],
  ['Strip & inspect', 'strip-and-inspect'],
  ["Editor's notes", 'editors-notes'],
  ['Editor’s notes', 'editors-notes'],
  ['  ', ''],
  ['—', ''],
  ['Ｆloat', 'float'], // a full-width letter is the same letter
  ['Größe', 'größe'],
])('levelName(%j) is %j', (text, wanted) => {
  expect(levelName(text)).toBe(wanted);
});

describe('operations of a carburetor, as headings name them', () => {
  const kind = builtInKinds().get('carburetor');
  test.each([
    // exact names and aliases
    ['Float level', 'float-level'],
    ['FLOAT  LEVEL', 'float-level'],
    ['Float height', 'float-level'],
    ['Accelerator pump', 'pump-stroke'],
    ['Choke thermostat', 'choke-cover-index'],
    ['Choke', 'choke-cover-index'],
    ['Vacuum break', 'choke-pull-down'],
    ['Initial adjustments', 'initial-idle'],
    ['Idle mixture baseline', 'initial-idle'],
    ['Idle stop', 'initial-idle'],
    ['Refitting the cover', 'assembly'],
    ['Teardown', 'strip'],
    ['Warm-up', 'first-start'],
    ['Balance between instruments', 'balance'],
    ['How to tell it apart', 'identification'],
    ['Tools', 'gauges'],
    // what is said around a name
    ['Setting the float level', 'float-level'],
    ['Check the float drop', 'float-drop'],
    ['Idle adjustment', 'idle-speed'],
    ['Idle mixture adjustment', 'idle-mixture'],
    ['Pump stroke check', 'pump-stroke'],
    ['Metering rod measurement', 'metering-rods'],
    ['Checking the float level again', 'float-level'],
    ['Idle speed with the engine hot', 'idle-speed'],
    ['Float levels', 'float-level'],
    // numbering, brackets, and what follows a comma, colon or dash
    ['3. Float level', 'float-level'],
    ['3) Float level', 'float-level'],
    ['IV. Float level', 'float-level'],
    ['Step 4: Pump stroke', 'pump-stroke'],
    ['2.1. Choke unloader', 'unloader'],
    ['Idle speed, again', 'idle-speed'],
    ['Float: drop', 'float-drop'],
    ['Choke unloader (throttle wide open)', 'unloader'],
    ['Fast idle speed – on the second step', 'fast-idle-speed'],
    ['Road test, last of all', 'road-test'],
    // nothing that is known, or more than one thing
    ['Flote level', null],
    ['Jet', null],
    ['Setting', null],
    ['Float level, pump stroke', null],
    ['Valve clearances', null],
    ['', null],
    ['---', null],
    ['float level '.repeat(1000), null],
  ])('%s', (heading, wanted) => {
    expect(kind?.operationNamed(heading)?.name ?? null).toBe(wanted);
  });
});

test('settings, features and hazards are named as freely', () => {
  const kind = builtInKinds().get('carburetor');
  expect(kind?.settingNamed('Idle mixture baseline')?.name).toBe('idle-mixture');
  expect(kind?.settingNamed('fast-idle-cam-position')?.name).toBe('fast-idle-cam');
  expect(kind?.settingNamed('vacuum-break')?.name).toBe('choke-pull-down');
  expect(kind?.settingNamed('float_levl')).toBeNull();
  expect(kind?.featureNamed('Accelerating pump')?.name).toBe('pump');
  expect(kind?.hazardNamed('hot-manifold')?.name).toBe('hot-surface');
  expect(kind?.hazardNamed('runaway')?.name).toBe('vehicle-movement');
  expect(kind?.hazardNamed('old gaskets')?.name).toBe('asbestos');
});

describe('a book of names', () => {
  const book = new NameBook([
    ['gap', ['point gap', 'setting']],
    ['gap-setting', []],
    ['dwell', ['gap check', 'angle']],
    ['advance', ['curves']],
  ]);
  test.each<[string, string | null, string]>([
    ['gap setting', 'gap-setting', 'a name before one that needs something taken off'],
    ['gap check', 'dwell', 'an alias before a name that needs something taken off'],
    ['the gap setting', 'gap-setting', 'the reading that takes off least'],
    ['gap, setting', 'gap-setting', 'the whole before its parts'],
    ['dwell (gap)', 'dwell', 'what stands outside the brackets'],
    ['advance, dwell', null, 'two things at once are none'],
    ['setting', 'gap', 'a word that is taken off elsewhere may be an alias'],
    ['curve', null, 'an alias is not guessed from its beginning'],
  ])('%s → %s: %s', (text, wanted, _why) => {
    expect(book.find(text)).toBe(wanted);
  });
});
