/** docs/species is what the records say. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { speciesPages, speciesPagesFolder } from '../house/speciesPages.ts';

it('the pages in docs/species are those of the records: npx tsx tests/house/speciesPages.ts writes them', () => {
  const pages = speciesPages();
  expect(readdirSync(speciesPagesFolder).sort()).toEqual([...pages.keys()].sort());
  for (const [file, text] of pages) expect(readFileSync(`${speciesPagesFolder}/${file}`, 'utf8')).toBe(text);
});

it('a page shows the line in use, its rival and where both come from', () => {
  const page = speciesPages().get('trialeurodes-vaporariorum.md')!;
  expect(page).toContain('Begins above 8.3 °C');
  expect(page).toMatch(/\| lower threshold, egg to adult \| 2\.92 \|/);
  expect(page).toMatch(/Osborne LS 1982/);
});
