/**
 * The schema for editors of a sheet that is `based-on:` another: as that of a sheet, but nothing is
 * needed that the base may say, and `none` may stand where something is left out. The program itself
 * holds the variant, put together with its base, to the schema of a sheet.
 */
export function variantSchema(sheet) {
  const schema = structuredClone(sheet);
  schema.$id = 'variant.schema.json';
  schema.title = 'Adjustment sheet based on another';
  schema.description =
    'Front matter of a sheet that states only what differs from the sheet it is based on.';
  schema.required = ['gaugeleaf', 'sheet', 'title', 'based-on', 'revision', 'date', 'status'];
  delete schema.$defs.unit.required;
  delete schema.$defs.setting.anyOf;
  for (const key of ['settings', 'work']) {
    const whole = schema.properties[key];
    const { title, description, examples } = schema.$defs[whole.additionalProperties.$ref.slice(8)];
    whole.additionalProperties = {
      title,
      description: `${description} \`none\` leaves out what the base has.`,
      ...(examples ? { examples } : {}),
      anyOf: [{ const: 'none' }, whole.additionalProperties],
    };
  }
  return schema;
}

/** The same as a file. */
export function variantSchemaText(sheet) {
  return `${JSON.stringify(variantSchema(sheet), null, 2)}\n`;
}
