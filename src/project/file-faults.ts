import { type Check, defineCheck, type Finding, type Severity } from '../checks/index.ts';
import { LineIndex, type Span } from '../text/index.ts';

/** What can be wrong with a project's files other than its sheets; found while they are read. */
export const projectChecks: readonly Check[] = [
  defineCheck({
    id: 'edition-invalid',
    severity: 'error',
    group: 'reading',
    summary: 'The edition file cannot be read, or a key or value in it is not what belongs there.',
    explain:
      'A booklet that is printed from a misread edition has the wrong order, the wrong paper or the ' +
      'wrong title, in every copy. It cannot be accepted, only mended.',
    messages: {},
    run: () => {},
    examples: [],
  }),
  defineCheck({
    id: 'edition-sheet-missing',
    severity: 'error',
    group: 'reading',
    summary: 'The edition lists a sheet that is not there, or lists one twice.',
    explain:
      'The booklet would lack a unit that its editor meant to be in it, or print one twice. It cannot ' +
      'be accepted, only mended.',
    messages: {},
    run: () => {},
    examples: [],
  }),
  defineCheck({
    id: 'edition-sheet-unlisted',
    severity: 'note',
    group: 'reading',
    summary: 'A sheet of the project is not in the order of its edition.',
    explain:
      'The sheet is checked, and can be printed as a card, but the booklet leaves it out: right while ' +
      'it is being worked on, a slip if it was meant to be in this edition.',
    messages: {},
    run: () => {},
    examples: [],
  }),
  defineCheck({
    id: 'house-tolerance-unknown',
    severity: 'warning',
    group: 'reading',
    summary: 'A tolerance of the house is for a kind or a setting that there is not.',
    explain:
      'It comes to bear on nothing, and the setting that was meant is judged without limits. A kind of ' +
      'unit and its settings go by the names that `gaugeleaf kind` lists.',
    messages: {},
    run: () => {},
    examples: [],
  }),
  defineCheck({
    id: 'house-tolerance-wrong',
    severity: 'error',
    group: 'reading',
    summary: 'A tolerance of the house is none that its setting can have.',
    explain:
      'A tolerance says which way it goes and how far, in a unit of its setting: `± 1/64 in`. What says ' +
      'neither would have to be guessed, on every card. It cannot be accepted, only mended.',
    messages: {},
    run: () => {},
    examples: [],
  }),
  defineCheck({
    id: 'house-tolerance-unused',
    severity: 'note',
    group: 'reading',
    summary: 'No setting of any sheet takes a tolerance of the house.',
    explain:
      'The house speaks only where no source does. Where every sheet states limits of its own, or none ' +
      'states the setting, its tolerance has nothing to say.',
    messages: {},
    run: () => {},
    examples: [],
  }),
  defineCheck({
    id: 'sources-invalid',
    severity: 'error',
    group: 'reading',
    summary:
      'The file of shared sources cannot be read, or a key or value in it is not what belongs there.',
    explain:
      'Every sheet that cites one of its papers prints what it says, in every list of sources. It ' +
      'cannot be accepted, only mended.',
    messages: {},
    run: () => {},
    examples: [],
  }),
  defineCheck({
    id: 'kind-invalid',
    severity: 'error',
    group: 'reading',
    summary: 'A file of a kind of unit cannot be read, or a key or value in it is not in order.',
    explain:
      'Sheets of that kind would be held against a wrong vocabulary, so none of it is used. It cannot ' +
      'be accepted, only mended.',
    messages: {},
    run: () => {},
    examples: [],
  }),
  defineCheck({
    id: 'kind-idle',
    severity: 'warning',
    group: 'reading',
    summary: 'Something in a kind of unit can never come to bear on any sheet.',
    explain:
      'A rule that no work can break or keep, a need that nothing meets, a part that nothing moves or ' +
      'verbs that no part reads look like care taken, and find nothing. It is told where the file of a ' +
      'kind is checked by its name, as `gaugeleaf check kinds/magneto.yaml`; sheets of that kind are held ' +
      'to all the rest of it meanwhile.',
    messages: {},
    run: () => {},
    examples: [],
  }),
  defineCheck({
    id: 'template-invalid',
    severity: 'error',
    group: 'reading',
    summary:
      'A template, style, word or logo of the club asks for what there is not, or can’t be used.',
    explain:
      'Cards and booklets would come out with holes, or not at all. So it is found before anything is ' +
      'printed. docs/templates.md has all names that templates may use. It cannot be accepted, only mended.',
    messages: {},
    run: () => {},
    examples: [],
  }),
  defineCheck({
    id: 'template-unused',
    severity: 'warning',
    group: 'reading',
    summary: 'Something in the club’s templates has a name that nothing reads.',
    explain:
      'It has no effect: a misspelt name of a file, a page or a color is passed over in silence by ' +
      'whatever prints the page.',
    messages: {},
    run: () => {},
    examples: [],
  }),
  defineCheck({
    id: 'record-invalid',
    severity: 'error',
    group: 'reading',
    summary: 'A bench record cannot be read, or a reading in it is none that its setting can have.',
    explain:
      'A reading that is misread would be judged all the same, and the unit go back on its engine by ' +
      'that verdict. So nothing of the record is judged. It cannot be accepted, only mended.',
    messages: {},
    run: () => {},
    examples: [],
  }),
  defineCheck({
    id: 'reading-invalid',
    severity: 'error',
    group: 'reading',
    summary: 'A second reading cannot be read, or belongs to no sheet of the project.',
    explain:
      'What somebody read a second time counts for nothing while its file cannot be read: the figures that ' +
      'it bears out would pass for read once. It cannot be accepted, only mended.',
    messages: {},
    run: () => {},
    examples: [],
  }),
  defineCheck({
    id: 'record-outdated',
    severity: 'warning',
    group: 'reading',
    summary: 'A bench record was made by another revision of its sheet, or to another figure.',
    explain:
      'The readings are judged by the sheet as it stands now. A unit that was right by the older one ' +
      'may be wrong by this one, or the other way round.',
    messages: {},
    run: () => {},
    examples: [],
  }),
  defineCheck({
    id: 'record-incomplete',
    severity: 'warning',
    group: 'reading',
    summary: 'A bench record does not say of which unit it is, who measured, or when.',
    explain:
      'The readings are judged all the same, but nobody can tell later which unit they belong to or ' +
      'whom to ask.',
    messages: {},
    run: () => {},
    examples: [],
  }),
];

/** A file of the project that is no sheet, with what is wrong in it; none where all is well. */
export interface FileFaults {
  /** As reports show it. */
  readonly file: string;
  readonly lines: LineIndex;
  readonly findings: readonly Finding[];
}

/** One fault as it is found. */
export interface Fault {
  readonly check: string;
  readonly span: Span;
  readonly message: string;
  readonly fix: string | null;
  readonly related?: Finding['related'];
}

function severityOf(id: string): Severity {
  return projectChecks.find((check) => check.id === id)?.severity ?? 'error';
}

/** Faults of one file as findings, by place. */
export function fileFaults(file: string, text: string, faults: readonly Fault[]): FileFaults {
  const findings = faults.map(
    (fault): Finding => ({
      check: fault.check,
      severity: severityOf(fault.check),
      file,
      span: fault.span,
      message: fault.message,
      fix: fault.fix,
      compared: null,
      related: fault.related ?? [],
      edits: null,
      subject: null,
      accepted: null,
    }),
  );
  findings.sort((first, second) => first.span.start - second.span.start);
  return { file, lines: new LineIndex(text), findings };
}
