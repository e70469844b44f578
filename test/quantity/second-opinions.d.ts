/** What the tests use of two libraries that bring no types. */
declare module '@lhncbc/ucum-lhc' {
  export const UcumLhcUtils: {
    getInstance(): {
      convertUnitTo(
        from: string,
        value: number,
        to: string,
      ): { status: string; toVal: number | null; msg: readonly string[] };
    };
  };
}

declare module 'convert-units' {
  export default function convert(value: number): {
    from(unit: string): { to(unit: string): number };
  };
}
