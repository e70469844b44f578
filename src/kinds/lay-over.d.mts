type Table = Readonly<Record<string, unknown>>;
export function laidOver(under: Table, over: Table): Table;
