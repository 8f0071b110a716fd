/** A place as files, out and in, and as a figure, for whoever serves them. */
import { readingsCsv } from './readingsCsv.ts';
import { assembleSeason, importSeason, seasonText } from './season.ts';
import { seasonJsonSchema } from './seasonSchema.ts';
import { temperatureOf } from './temperature.ts';

export const files = {
  temperature: temperatureOf,
  asRead: assembleSeason,
  text: seasonText,
  csv: readingsCsv,
  import: importSeason,
  jsonSchema: seasonJsonSchema,
};
