import { expect, it } from 'vitest';
import { animals, stageName, trapCatch } from '../../dashboard/words/names.ts';
import { pestRecords } from '../../services/model/species/catalogue.ts';

it('every whitefly stage of the record has a name a grower knows; other stages keep their own', () => {
  const whitefly = pestRecords.find((record) => record.id === 'trialeurodes-vaporariorum');
  expect(
    whitefly?.development.stages.map((stage) => stageName('trialeurodes-vaporariorum', stage.name)),
  ).toEqual([
    'egg',
    'crawler and first scale (N1)',
    'young scale (N2)',
    'young scale (N3)',
    'old scale (N4, pupa)',
  ]);
  expect(stageName('myzus-persicae', 'N1')).toBe('N1');
});

it('one animal is named in the singular', () => {
  expect([trapCatch(1, 'aphid'), trapCatch(2, 'aphid'), trapCatch(1, 'whitefly')]).toEqual([
    '1 winged aphid',
    '2 winged aphids',
    '1 whitefly',
  ]);
  expect([animals(1, 'adalia-bipunctata'), animals(50, 'adalia-bipunctata')]).toEqual([
    '1 ladybird',
    '50 ladybirds',
  ]);
});
