/** The update of a whole season after a week's counts: two pests, three friends, 20 weeks with two cards and leaves. */
import { adviseFrom } from '../../services/model/advise.ts';
import { fit as fitSeason } from '../../services/model/forecast.ts';
import type { EnemyId, Season } from '../../services/model/season.ts';
import { startGarden } from '../../simulators/startGarden.ts';
import { trialByName } from '../../simulators/trials.ts';

const weeks = 20;

function season(): Season {
  const garden = startGarden(trialByName('two-pests'), 1);
  while (garden.week() < weeks) garden.advanceWeek();
  const played = garden.season();
  const released = (enemy: EnemyId, form: string, number: number): Season['releases'][number] => ({
    id: enemy,
    enemy,
    form,
    number,
    aliveShare: 0.9,
    time: new Date(garden.nowMs() - 60 * 86_400_000).toISOString(),
  });
  return {
    ...played,
    releases: [
      ...played.releases,
      released('encarsia-formosa', 'pupa on card', 60),
      released('neoseiulus-cucumeris', 'mixed stages in sachets', 1000),
    ],
  };
}

const seconds = (work: () => unknown) => {
  const from = performance.now();
  work();
  return (performance.now() - from) / 1000;
};

/** Sixty parcels of Encarsia weighed to the end of the season, and the advice of that week. */
export function planLines(): string[] {
  const garden = startGarden(trialByName('early-whitefly'), 1);
  while (garden.week() < 12) garden.advanceWeek();
  const time = new Date(garden.nowMs()).toISOString();
  const season = garden.season();
  const fitted = fitSeason(season, time, {});
  const ways = Array.from({ length: 60 }, (_, i) => ({
    id: 'plan',
    enemy: 'encarsia-formosa' as const,
    form: 'pupa on card',
    number: 10 * (i + 1),
    aliveShare: 1,
    time,
  }));
  const spent = seconds(() =>
    ways.map((way) => fitted.overLimit('trialeurodes-vaporariorum', { releases: [way] })),
  );
  let advice = adviseFrom(season, fitted, time);
  const advising = seconds(() => {
    advice = adviseFrom(season, fitted, time);
  });
  return [
    `plan of ${ways.length} parcels to the end of the season, once fitted: ${spent.toFixed(1)} s`,
    `advice once fitted, ${advice.ways?.length ?? 0} ways weighed, those decided between again on more seasons: ${advising.toFixed(1)} s`,
  ];
}

/** Lines to print: 1,000 members and as many as the house runs. */
export function weeklyLines(): string[] {
  const whole = season();
  const rounds = [...new Set(whole.trapCounts.map(({ time }) => time))].sort();
  const [before, now] = [rounds.at(-2)!, rounds.at(-1)!];
  return [300, 1000].map((members) => {
    const earlier = fitSeason(whole, before, { members });
    const anew = seconds(() => fitSeason(whole, now, { members }));
    const going = seconds(() => fitSeason(whole, now, { members, earlier }));
    const { rss } = process.memoryUsage();
    return `weekly update, ${whole.trapCounts.length} counts, two pests, three friends, ${members} members: ${going.toFixed(1)} s, from the start ${anew.toFixed(1)} s (${(anew / going).toFixed(1)} x); ${Math.round(rss / 2 ** 20)} MB resident`;
  });
}
