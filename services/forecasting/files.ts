/** A place as files, out and in, for whoever serves them. */
import { readingsCsv } from './readingsCsv.ts';
import { assembleSeason, importSeason, seasonText } from './season.ts';
import { seasonJsonSchema } from './seasonSchema.ts';

export const files = {
  assemble: assembleSeason,
  text: seasonText,
  csv: readingsCsv,
  import: importSeason,
  jsonSchema: seasonJsonSchema,
};
