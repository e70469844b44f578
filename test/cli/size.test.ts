import { describe, expect, it } from 'vitest';
import { gaugeleaf } from './console.ts';

const size = (argv: readonly string[], input?: string) =>
  gaugeleaf(['size', ...argv], { cwd: '/', ...(input === undefined ? {} : { input }) });

describe('gaugeleaf size', () => {
  it('tells a person everything', async () => {
    const { status, out } = await size(['13/64 ± 1/64 in']);
    expect(status).toBe(0);
    // 13/64 in is 0.203125 in and 5.159375 mm by the inch of 25.4 mm; drills from ASME B94.11M:
    // between 3/16 and 7/32 in 10 by number, 3 by fraction, 8 metric by tenths.
    expect(out).toBe(`13/64 ± 1/64 in
  inches       0.203125 in exactly; 0.2031 in rounded
  millimeters  5.159375 mm exactly; 5.159 mm rounded
  fraction     13/64 in exactly
  limits       0.1875 to 0.21875 in; 4.7625 to 5.55625 mm
  to print     0.2031 in (0.1875–0.2187 in); 5.16 mm (4.77–5.55 mm), limits inward
  gauges       13/64 drill
  next below   No. 7 drill, 0.2010 in (0.0021 in less)
  next above   No. 6 drill, 0.2040 in (0.0009 in more)
  inside       21 gauges, from 3/16 drill to 7/32 drill
  go           4.8 mm drill, 0.1890 in passes
  no-go        5.5 mm drill, 0.2165 in does not
  gauge maker  go 0.1875 +0.00156 in, no-go 0.21875 -0.00156 in, by the 10 % rule
  at hand      13/64 drill; go 4.8 mm drill, no-go 5.5 mm drill
`);
  });

  it('works no bore from a measured flow', async () => {
    const { status, out } = await size(['165 cm3/min']);
    expect(status).toBe(0);
    expect(out).toContain(
      '  bore  none: a measured flow says no bore without the head, the fuel and the shape of the jet on its test rig',
    );
  });

  it('takes a jet marked in hundredths of a millimeter', async () => {
    const { out } = await size(['115 hundredths of mm']);
    expect(out).toContain('millimeters  1.15 mm exactly');
    expect(out).toContain('gauges       1.15 mm drill');
  });

  it.each([
    ['0.0185 in', '  at hand      0.016 in and 0.0025 in leaves together'],
    ['0.0266–0.0274 in', '  at hand      0.014 in and 0.013 in leaves together'],
    ['0.020 in min', '  at hand      0.020 in leaf passes'],
    ['5/8 in', '  at hand      no common gauge fits: nearest is 13 mm drill (0.1132 in less)'],
    // Cited to ASME B89.1.5:1998.
    [
      '0.250–0.254 in',
      '  gauge maker  go 0.25 +0.0002 in, no-go 0.254 -0.0002 in, by the 10 % rule',
    ],
  ])('says of %s what measures it', async (text, line) => {
    const { out } = await size([text]);
    expect(out.split('\n')).toContain(line);
  });

  it('says nothing more of a gauge that is at hand itself, nor of what is no gap', async () => {
    for (const text of ['No. 29 drill', '0.020 in', '475 rpm'])
      expect((await size([text])).out).not.toContain('at hand');
  });

  it('gives the same to programs', async () => {
    const { out } = await size(['--json', '0.0185 in', '0.020 ± 0.002 in']);
    const [stacked, plain] = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(stacked.kit).toEqual({
      text: '0.016 in and 0.0025 in leaves together',
      fits: [],
      stack: {
        leaves: ['0.016 in leaf', '0.0025 in leaf'],
        inch: '0.0185',
        mm: '0.4699',
        fits: true,
      },
      nearest: {
        below: { name: '0.018 in leaf', inch: '0.018', mm: '0.4572' },
        above: { name: '0.019 in leaf', inch: '0.019', mm: '0.4826' },
      },
    });
    expect(plain.kit).toMatchObject({ go: '0.019 in leaf', 'no-go': '0.021 in leaf' });
    expect(plain.kit.fits[0]).toBe('0.020 in leaf');
    expect(plain.made.go).toEqual({
      low: { inch: '0.018', mm: '0.4572' },
      high: { inch: '0.0182', mm: '0.46228' },
    });
  });

  it('writes one object a line', async () => {
    const { status, out } = await size(['--json', 'No. 29 drill', 'drill E', '5,16 mm']);
    expect(status).toBe(0);
    const rows = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(rows.map(({ input, inch, mm, names }) => ({ input, inch, mm, names }))).toEqual([
      { input: 'No. 29 drill', inch: '0.136', mm: '3.4544', names: ['No. 29 drill'] },
      // Drill E is a quarter inch (ASME B94.11M).
      { input: 'drill E', inch: '0.25', mm: '6.35', names: ['drill E', '1/4 drill'] },
      // 5.16 / 25.4 has no end as a decimal.
      { input: '5,16 mm', inch: '129/635', mm: '5.16', names: [] },
    ]);
    expect(rows[0].neighbors).toEqual({
      below: { name: '3.4 mm drill', inch: '17/127', mm: '3.4' },
      above: { name: '3.5 mm drill', inch: '35/254', mm: '3.5' },
    });
  });

  it('takes lines on standard input, empty ones left out', async () => {
    const { status, out } = await size(['--json'], 'No. 60 drill\r\n\n  9/64 in\n');
    expect(status).toBe(0);
    const rows = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(rows.map((row) => row.input)).toEqual(['No. 60 drill', '9/64 in']);
    expect(rows[1].inch).toBe('0.140625');
  });

  it('says why a text is no size, goes on, and ends in 1', async () => {
    const { status, out, err } = await size(['No. 60', '1/2 in']);
    expect(status).toBe(1);
    expect(err).toMatch(/^gaugeleaf: No\. 60 has no system: it could be No\. 60 drill/);
    expect(out).toMatch(/^1\/2 in\n/);
    const json = await size(['--json', 'No. 60', '1/2 in']);
    expect(json.status).toBe(1);
    const rows = json.out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(rows[0]).toMatchObject({ input: 'No. 60', error: expect.stringContaining('no system') });
    expect(rows[1].mm).toBe('12.7');
  });

  it('tells of turns, vacuum and an ambiguous wire', async () => {
    expect((await size(['1-1/4 turns out'])).out).toContain('7-1/2 flats; 450° of turning');
    // NIST SP 811: 1 inHg is 3386.389 Pa; 19 of them 64.34 kPa.
    expect((await size(['19 inHg'])).out).toContain('64.34 kPa');
    // BS 3737: 22 SWG is 0.028 in; the US steel wire gauge has 0.0286 in.
    const both = (await size(['22 SWG'])).out;
    expect(both).toMatch(/or +No\. 22 US steel wire, 0\.0286 in, if that was meant/);
    expect((await size(['--swg', 'us-steel', '22 SWG'])).out).toContain('0.0286 in exactly');
  });

  it('takes hostile text in its stride', async () => {
    const { status, err } = await size(['\u001b[2J', '9'.repeat(10_000), '1/0 in']);
    expect(status).toBe(1);
    expect(err).not.toContain('\u001b');
  });
});
