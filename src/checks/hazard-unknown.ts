import { defineCheck } from './define.ts';
import { eitherOf, nearest, oneUnit, wordsOf } from './vocabulary.ts';

/** A safety message about a hazard that the kind does not know. */
export default defineCheck({
  id: 'hazard-unknown',
  severity: 'error',
  group: 'cautions',
  summary: 'A safety message names a hazard that the kind of unit does not know.',
  explain:
    'The message is printed all the same, but is counted for no hazard of the work. A hazard that ' +
    'the kind really lacks may be accepted; a misspelling may not.',
  messages: {
    near: {
      message: 'there is no hazard `{hazard}`',
      fix: 'write `hazard={near}`',
      suggest: [{ write: '{near}' }],
    },
    unknown: {
      message: 'there is no hazard `{hazard}` among those of {kind}',
      fix: 'write {known}, or accept it with a reason',
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    if (kind === null) return;
    for (const message of sheet.messages) {
      for (const { value, span, known } of message.hazards) {
        if (known !== null) continue;
        const near = nearest(value, wordsOf(kind.hazards));
        const subject = value;
        if (near !== null)
          report({ message: 'near', span, values: { hazard: value, near }, subject });
        else {
          const values = {
            hazard: value,
            kind: oneUnit(kind),
            known: eitherOf([...kind.hazards.keys()]),
          };
          const suggest = () => [...kind.hazards.keys()].map((write) => ({ write }));
          report({ message: 'unknown', span, values, subject, severity: 'warning', suggest });
        }
      }
    }
  },
  examples: [
    {
      name: 'a misspelt hazard',
      sheet: { body: ':::warning{hazard=gasolin-vapor}\nNo flame.\n:::\n' },
      expect: [
        {
          at: 'gasolin-vapor',
          message: 'there is no hazard `gasolin-vapor`',
          fix: 'write `hazard=gasoline-vapor`',
        },
      ],
    },
    {
      name: 'a hazard that no carburetor has',
      sheet: { body: ':::warning{hazard=falling-anvil}\nStand clear.\n:::\n' },
      expect: [
        {
          at: 'falling-anvil',
          severity: 'warning',
          message: 'there is no hazard `falling-anvil` among those of a carburetor',
          fix: 'write `gasoline-vapor`, `solvent`, `compressed-air`, `carbon-monoxide`, `moving-parts`, `hot-surface`, `backfire`, `vehicle-movement`, `road-test` or `asbestos`, or accept it with a reason',
        },
      ],
    },
    {
      name: 'a hazard of the kind',
      sheet: {
        body: ':::warning{hazard=gasoline-vapor}\nNo flame.\n:::\n\n## Float level\n\n1. Take off the cover: :value[float-level].\n',
      },
      expect: [],
    },
    {
      name: 'two hazards in one message',
      sheet: {
        body: ':::warning{hazard="gasoline-vapor, old-gaskets"}\nNo flame, and no dust.\n:::\n',
      },
      expect: [],
    },
  ],
});
