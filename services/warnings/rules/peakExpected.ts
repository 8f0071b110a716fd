import {
  capital,
  endOfSeason,
  enemyTraits,
  formatDay,
  isCountedOver,
  lastCount,
  limitPhrase,
  localDay,
  openOrders,
  type PestForecast,
  type PestId,
  speciesById,
} from '../../model/index.ts';
import { dayMs, done, type Matter, type WarningFacts, type WarningRule, withdrawn } from './rule.ts';

/** `Probably` in our words; once said it stands until passing becomes unlikely. Judgement. */
const sayFrom = 0.65;
const holdFrom = 0.35;
/** Farther ahead there is time to count again first. Judgement. */
const aheadDays = 21;

/** A pest will probably pass the person's limit soon, and the advice itself does not speak of it. */
export const peakExpected: WarningRule = {
  id: 'peak-expected',
  matters: (facts) =>
    spokenOf(facts)
      ? []
      : facts.issued.forecast.pests
          .filter(({ pest }) => !isMetByOrder(pest, facts))
          .flatMap((ahead) => matterOf(ahead, facts)),
  ending(warning, facts) {
    const { sentence } = facts.issued.advice;
    const own = facts.issued.forecast.pests.find(({ pest }) => warning.id.startsWith(stem(pest)));
    if (own && isOver(own, facts)) return done('It was counted over your limit.');
    if (own && isMetByOrder(own.pest, facts)) return done('A parcel against it is on its way.');
    if (spokenOf(facts)) return done(`The advice has taken it up: ${sentence}`);
    return warning.deadlineMs < facts.nowMs
      ? done('The day has come.')
      : withdrawn('Passing your limit has become unlikely.');
  },
};

const spokenOf = ({ issued: { advice } }: WarningFacts) =>
  advice.decision !== 'leave' && advice.decision !== 'wait';

/** The page speaks of the parcel; more alarm helps nobody. */
const isMetByOrder = (pest: PestId, { season, nowMs }: WarningFacts): boolean =>
  openOrders(season, nowMs).some(({ enemy }) =>
    enemyTraits(speciesById(enemy)).attacks.some(({ prey }) => prey === pest),
  );

/** What is counted over the limit is told by the count. */
const isOver = ({ pest, counted }: PestForecast, { season, nowMs }: WarningFacts): boolean =>
  isCountedOver(counted.limit, lastCount(season, pest, nowMs));

const stem = (pest: PestId) => `peak-${pest}-`;

function matterOf(ahead: PestForecast, facts: WarningFacts): Matter[] {
  const { pest, passesLimit } = ahead;
  const { place } = facts.season;
  const { probability, when } = passesLimit;
  const today = localDay(facts.nowMs, place.timeZone);
  const id = stem(pest) + endOfSeason(place, today);
  const lasts = facts.lasts(id);
  if (when === undefined || probability < (lasts ? holdFrom : sayFrom)) return [];
  const deadlineMs = Date.parse(when.q50);
  if (deadlineMs < facts.nowMs || isOver(ahead, facts)) return [];
  if (!lasts && Date.parse(when.q10) > facts.nowMs + aheadDays * dayMs) return [];
  const day = (instant: string) => formatDay(localDay(Date.parse(instant), place.timeZone));
  const [from, to] = [day(when.q10), day(when.q90)];
  const around = from === to ? ` on ${from}` : ` between ${from} and ${to}`;
  const words = limitPhrase(ahead, speciesById(pest).shortName, undefined);
  return [
    {
      id,
      opensMs: Number.NEGATIVE_INFINITY,
      deadlineMs,
      text: `${capital(words)}${around}.`,
      reason: facts.issued.advice.sentence,
      ends: 'Ends when passing your limit becomes unlikely, it is counted over it, a parcel is ordered, or the advice takes it up.',
    },
  ];
}
