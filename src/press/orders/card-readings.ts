/** What a bench record says of one value of a setting; every field is text to print. */
export interface CardReading {
  /** The `place` of the value's line; null where one value serves all. */
  readonly place: string | null;
  /** As found and as left, exactly as the record has them; null where nothing was written down. */
  readonly found: string | null;
  readonly left: string | null;
  /** The gauge that was used, with its uncertainty: `caliper, ± 0.001 in`; null for none. */
  readonly gauge: string | null;
  /** The verdict on the unit as it was left, in few words: `conforms`, `unproven`, `no limits`. */
  readonly verdict: string | null;
}

/** A bench record as the card prints it, in the columns that are otherwise left to the pencil. */
export interface CardReadings {
  /** The unit's own number, who set it and the day, as written; null where the record is silent. */
  readonly serial: string | null;
  readonly by: string | null;
  readonly date: string | null;
  /** By which rule the verdicts were reached, to stand by them: `Simple acceptance: ...`. */
  readonly rule: string;
  /** By the setting's name on the sheet; a setting that the record leaves out is absent. */
  readonly settings: ReadonlyMap<string, readonly CardReading[]>;
}
