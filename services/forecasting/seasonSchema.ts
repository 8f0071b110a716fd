/**
 * The JSON Schema of the season file, made from the zod schema that checks it.
 * Run as a program it writes docs/season.schema.json: `npx tsx services/forecasting/seasonSchema.ts`.
 */
import { writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { z } from 'zod';
import { seasonSchema } from '../model/index.ts';

const published = new URL('../../docs/season.schema.json', import.meta.url);

/** As written by a person: fields with a default may be left out. */
export function seasonJsonSchema(): object {
  return z.toJSONSchema(seasonSchema, { io: 'input' });
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  writeFileSync(published, `${JSON.stringify(seasonJsonSchema(), null, 2)}\n`);
}
