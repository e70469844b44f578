import { describe, expect, it } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { readStatement } from '../../src/quantity/index.ts';
import { readTool } from '../../src/sheet/tool.ts';

const options = { gauges: gaugeBook(), expect: ['length'] as const };

function read(text: string) {
  return readTool(text, options, readStatement);
}

describe('what a setting is measured with', () => {
  it.each(['T-109', 'gauge T-109', 'tool No. J-610-2', 'KMO 22', 'Gauge T109', 'T 109'])(
    '%s is a factory gauge by its number, and no size',
    (text) => {
      expect(read(text)).toMatchObject({ ok: true, statement: { text, form: 'condition' } });
    },
  );

  it.each([
    ['T-109 (13/64 in)', '5.159375'],
    ['T-109, 13/64 in', '5.159375'],
    ['gauge T-109 (.203")', '5.1562'],
    ['tool J-610 = 5.16 mm', '5.16'],
    ['T-109 13/64 drill', '5.159375'],
  ])('%s has the size that stands behind its number', (text, mm) => {
    const reading = read(text);
    expect(reading.ok && reading.statement.nominal?.base.toString()).toBe(mm);
    expect(reading.ok && reading.statement.text).toBe(text);
  });

  it.each([
    'steel rule',
    '6 in steel rule',
    'a 12 in rule',
    '0-1 in micrometer',
    'stop watch',
    'depth gauge',
  ])('%s reads off any size and proves none', (text) => {
    expect(read(text)).toMatchObject({ ok: true, statement: { form: 'condition', nominal: null } });
  });

  it.each(['13/64 drill', 'drill E', 'No. 29 drill', '0.026 in wire', '22 SWG'])(
    '%s is a gauge as before',
    (text) => {
      expect(read(text)).toEqual(readStatement(text, options));
    },
  );

  it('a drill that does not exist and a bare number are no factory gauges', () => {
    expect(read('No. 98 drill').ok).toBe(false);
    expect(read('No. 60').ok).toBe(false);
    expect(read('60').ok).toBe(false);
  });
});
