/** docs/identification.md names the vocabulary of sightings and the questions exactly as the key has them. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { characters, keyKinds, sightingWords } from '../../services/model/index.ts';

const page = readFileSync(new URL('../../docs/identification.md', import.meta.url), 'utf8');
const rowsAfter = (heading: string) =>
  [...(page.split(`## ${heading}`)[1]?.split('\n## ')[0] ?? '').matchAll(/^\| (.+?) \|$/gm)]
    .map((match) => match[1]!.split(' | '))
    .slice(2);

it('lists every word of the vocabulary with its side and species', () => {
  const told = rowsAfter('The words of a sighting').map(([what, side, species]) => ({ what, side, species }));
  const meant = sightingWords.map(({ what, side, species }) => ({
    what: `\`${what}\``,
    side,
    species: species.length > 0 ? species.map((id) => `\`${id}\``).join(', ') : '-',
  }));
  expect(told).toEqual(meant);
});

it('lists every question', () => {
  expect(rowsAfter('What it asks').map(([question]) => question)).toEqual(
    Object.values(characters).map(({ question }) => question),
  );
});

it('says how many kinds there are', () => {
  expect(page).toContain(`${keyKinds.length} kinds`);
});
