import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

const made: string[] = [];

/** Takes all folders away that were made so far: called after each test, by each-test.ts. */
export function removeFolders(): void {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
}

/** A folder of its own for one test, with these files in it; taken away afterwards. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>> = {}): string {
  const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-test-'));
  made.push(folder);
  for (const [name, content] of Object.entries(files)) {
    const path = join(folder, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, content);
  }
  return folder;
}

/** A sheet without a finding, under any name. */
export function cleanSheet(
  id: string,
  more: { settings?: string; front?: string; work?: string } = {},
): string {
  return `---
gaugeleaf: 1
sheet: ${id}
title: Orlo F27 single-barrel, Wexcombe Four
unit:
  kind: carburetor
  maker: Orlo
  model: F27
  features: [single-barrel, downdraft]
revision: 1
date: 2026-10-03
status: proof
sources:
  m48: { title: Workshop Manual of ${id}, kind: manual, year: 1948 }
settings:
  float-level:
    value: 13/64 in # as the manual prints it
    at: free end of the float
    gasket: removed
    from: m48 p. 31
  idle-mixture: { value: 1-1/4 turns out, from: m48 p. 40 }
${more.settings ?? ''}${more.front ?? ''}---

# Orlo F27 single-barrel

:::warning{hazard=gasoline-vapor}
Gasoline vapor burns. It can burn or kill you. No flame, spark or hot lamp; catch the fuel.
:::

## Float level

1. Take off the cover, turn it over, and lift away its gasket. :state[cover inverted] :state[gasket off]
2. Pass the gauge under the free end: :value[float-level].
3. Refit gasket and cover. :state[gasket on] :state[cover on]

## Initial idle

1. Turn the needle in until lightly seated, then out: :value[idle-mixture].
${more.work ?? ''}`;
}
