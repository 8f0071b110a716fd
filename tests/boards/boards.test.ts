/**
 * The programs of docs/boards.md are compiled, run, and what they send is read by the service's own decoder. What a 1-wire
 * probe gives when it fails (-127, and 85 after power-up): data sheet of the DS18B20, from memory.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { decodeReadings } from '../../services/ingest/decoders/decodeReadings.ts';
import { parseTopic } from '../../services/ingest/topics.ts';

const folder = mkdtempSync(join(tmpdir(), 'glasstide-boards-'));
afterAll(() => rmSync(folder, { recursive: true }));
const has = (command: string) => spawnSync(command, ['--version']).status === 0;
const measured = [19.4, -0.25, 0, 38.06];
const failures = ['-127', '85', 'nan'];

/** What was sent for each temperature, as the service reads it. */
function readBack(lines: readonly string[]) {
  return lines.map((line) => {
    const [topic = '', payload = ''] = line.split('\t');
    expect(parseTopic(topic)).toMatchObject({ kind: 'reading', placeId: 'lean-to', sensorId: 'bench' });
    const options = { arrivedMs: Date.parse('2026-05-13T06:10:00Z'), unit: 'Cel' as const };
    return decodeReadings(new TextEncoder().encode(payload), options);
  });
}
const read = (temperatureC: number) => ({
  readings: [{ temperatureC, timeFrom: 'arrival', timeMs: Date.parse('2026-05-13T06:10:00Z') }],
});

describe.skipIf(!has('cc'))('docs/boards/board.c', { timeout: 60_000 }, () => {
  it('compiles without a warning, and sends what the probe measured and nothing else', () => {
    const stub = join(folder, 'stub.c');
    writeFileSync(
      stub,
      `#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
static double now;
bool read_celsius(double *celsius) { *celsius = now; return true; }
bool mqtt_publish(const char *topic, const char *payload, int qos, bool retain) {
  return qos == 1 && !retain && printf("%s\\t%s\\n", topic, payload) > 0;
}
void wait_seconds(unsigned seconds) { (void)seconds; }
bool send_reading(void);
int main(int count, char **values) {
  for (int n = 1; n < count; n++) { now = atof(values[n]); send_reading(); }
  return 0;
}
`,
    );
    const program = join(folder, 'board');
    const flags = ['-std=c99', '-Wall', '-Wextra', '-Werror', '-pedantic'];
    execFileSync('cc', [...flags, 'docs/boards/board.c', stub, '-o', program]);
    const values = [...measured.map(String), ...failures];
    const lines = execFileSync(program, values, { encoding: 'utf8' }).trim().split('\n');
    expect(readBack(lines)).toMatchObject(measured.map(read));
    expect(lines).toHaveLength(measured.length);
  });
});

describe.skipIf(!has('python3'))('docs/boards/board.py', { timeout: 60_000 }, () => {
  it('is Python that runs, and sends what the probe measured and nothing else', () => {
    const script = `
import sys
sys.dont_write_bytecode = True
sys.path.insert(0, "docs/boards")
import board
for value in sys.argv[1:]:
    message = board.payload(float(value))
    if message:
        print(board.topic() + "\\t" + message)
if board.payload(None) is not None:
    sys.exit("a missing probe was sent")
`;
    const values = [...measured.map(String), ...failures];
    const output = execFileSync('python3', ['-c', script, ...values], { encoding: 'utf8' });
    const lines = output.trim().split('\n');
    expect(readBack(lines)).toMatchObject(measured.map(read));
    expect(lines).toHaveLength(measured.length);
  });
});
