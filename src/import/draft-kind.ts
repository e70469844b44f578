import { scalar } from '../text/index.ts';

/** A new kind of unit with one setting and the operation that makes it, to be written on. */
export function draftKind(order: {
  readonly name: string;
  readonly title: string;
  /** The way from the file to its schema, for editors. */
  readonly schema: string;
}): string {
  return `# yaml-language-server: $schema=${order.schema}
#
# Where it comes from: say here which papers the kind was made from.
gaugeleaf-kind: 1
kind: ${order.name}
title: ${scalar(order.title)}

# What every sheet of this kind carries; of each list one at least.
always:
  settings:
    - [first-setting]

settings:
  first-setting:
    label: First setting
    explain: What it is, and what is noticed when it is out.
    dimensions: [length]

operations:
  first-setting:
    stage: bench
    steps:
      - "Measure it: {setting}."
`;
}
