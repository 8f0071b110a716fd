/** Every check of references by published value, in the order of the page. */
import { aphidGrowth } from './aphidGrowth.ts';
import { enemyConditions } from './enemyConditions.ts';
import { enemyDays } from './enemyDays.ts';
import { enemyGrowth } from './enemyGrowth.ts';
import { ladybirdCages } from './ladybirdCages.ts';
import { miteTrials } from './miteTrials.ts';
import { openSeries } from './openSeries.ts';
import { otherEnemyDays } from './otherEnemyDays.ts';
import { otherGrowth } from './otherGrowth.ts';
import { otherPestDays } from './otherPestDays.ts';
import { pestDays } from './pestDays.ts';
import { releases } from './releases.ts';
import type { Row } from './row.ts';
import { thripsTrials } from './thripsTrials.ts';

export interface Topic {
  title: string;
  rows: readonly Row[];
}

export const topics: readonly Topic[] = [
  { title: 'Days of development, pests', rows: [...pestDays, ...otherPestDays] },
  { title: 'Days of development, natural enemies', rows: [...enemyDays, ...otherEnemyDays] },
  { title: 'Growth, aphids', rows: aphidGrowth },
  { title: 'Growth, whiteflies, spider mite and thrips', rows: otherGrowth },
  { title: 'Growth, natural enemies', rows: enemyGrowth },
  { title: 'Warmth, air, day length and sprays', rows: enemyConditions },
  { title: 'Releases', rows: [...releases, ...miteTrials, ...thripsTrials, ...openSeries, ...ladybirdCages] },
];
