/** A place as files, out and in, and as a figure, for whoever serves them. */
import { readingsCsv } from './readingsCsv.ts';
import { importSeason, seasonText } from './season.ts';
import { seasonJsonSchema } from './seasonSchema.ts';
import { temperatureOf } from './temperature.ts';

export const files = {
  temperature: temperatureOf,
  text: seasonText,
  csv: readingsCsv,
  import: importSeason,
  jsonSchema: seasonJsonSchema,
};
