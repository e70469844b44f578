/** One or two calls of each command, with what they do: at the end of its help and in the manual page. */
export const examples: Readonly<
  Record<string, readonly (readonly [call: string, does: string])[]>
> = {
  check: [
    ['check', 'all sheets, and what lies between them'],
    ['check --fix sheets/a.md', 'mend what is certain in one'],
  ],
  card: [
    ['card a b', 'the cards of two sheets'],
    ['card a --watch', 'again at each save'],
  ],
  booklet: [['booklet --imposed', 'also on sheets to print on both sides and fold']],
  pages: [['pages -o site', 'pages for a site, into site/']],
  gauges: [['gauges a --paper a4', 'gauges of paper on A4']],
  size: [['size "No. 29 drill" 13/64', 'two sizes in every notation']],
  draft: [
    ['draft', 'asks for what it has to know'],
    ['draft --from list.xlsx', 'a sheet for each row of a list'],
  ],
  desk: [['desk', 'opens the edition around you']],
  'language-server': [['language-server', 'started by the editor, not by hand']],
  record: [
    ['record a --serial 12', 'a blank record of unit 12'],
    ['record sheets/records/a.12.yaml', 'judges what was filled in'],
  ],
  reread: [
    ['reread a --source m48', 'a blank for one of its papers'],
    ['reread sheets/readings/a.m48.yaml', 'what differs from the sheet'],
  ],
  readings: [['readings', 'the sheets of the project around you']],
  order: [['order a --text', 'a plain list in place of the picture']],
  draw: [['draw a "idle speed"', 'the drawing beside one operation']],
  compare: [['compare editions/first.json', 'what the sheets say otherwise now']],
  export: [['export -f json -o editions/second.json', 'a data file to compare with later']],
  curve: [['curve a advance-curve --at "650 rpm"', 'the band at a speed between two rows']],
  work: [['work a --full', 'with sources, assumptions and range']],
  measured: [['measured a "float level"', 'one setting']],
  sources: [['sources --differing', 'only what sources differ on']],
  find: [
    ['find 13/64', 'by size: 0.203 in and 5.16 mm too'],
    ['find m48 p. 31', 'what that page says'],
  ],
  kind: [
    ['kind', 'the kinds that there are'],
    ['kind KIND NAME', 'all of one name'],
  ],
  schema: [['schema', 'into schemas/ of the project']],
  completion: [['completion bash', 'for bash, to be read by eval']],
  explain: [['explain sizes-disagree', 'one finding, with examples']],
};
