/** What was spent against a pest this season, and the weeks it was held within the limit for it. */
import type { PestHeld } from '../../followUps.ts';
import type { PestForecast } from '../../outcome.ts';
import type { Place } from '../../season.ts';
import { speciesById } from '../../species/catalogue.ts';
import { currencyOf } from '../delivery.ts';
import { capital, verbFor } from '../grammar.ts';
import { type Pair, seasonsOf, spanOf, spanWords } from './spans.ts';

/** Fewer weeks won on average have no price. Judgement. */
const hardlyAWeek = 0.5;

export interface Bought {
  /** Its whole cost; absent where no price is noted. */
  money?: number | undefined;
  /** Pests of the place that it hunts. */
  against: readonly string[];
}

/** `weeks` are those of this season that are over, by their place in the courses. */
export function heldOf(
  place: Place,
  { pest, counted }: PestForecast,
  { bought, pair, weeks }: { bought: readonly Bought[]; pair: Pair; weeks: readonly number[] },
): PestHeld {
  const within = (season: readonly number[]) => weeks.filter((i) => season[i]! <= counted.limit).length;
  const seasons = seasonsOf(pair, 'counts').map((own) => ({
    had: within(own.with),
    wouldHave: within(own.without),
  }));
  const won = seasons.reduce((sum, { had, wouldHave }) => sum + had - wouldHave, 0) / seasons.length;
  const money = bought.reduce((sum, each) => sum + (each.money ?? 0) / each.against.length, 0);
  const held = {
    pest,
    releases: bought.length,
    money: cents(money),
    unpriced: bought.filter((each) => each.money === undefined).length,
    weeks: weeks.length,
    weeksHeld: {
      with: spanOf(seasons.map(({ had }) => had)),
      without: spanOf(seasons.map(({ wouldHave }) => wouldHave)),
    },
    ...(money > 0 && won >= hardlyAWeek ? { moneyPerWeekWon: cents(money / won) } : {}),
  };
  return { ...held, text: inWords(place, held) };
}

function inWords(place: Place, held: Omit<PestHeld, 'text'>): string {
  const { pest, weeks, weeksHeld, money, unpriced, moneyPerWeekWon } = held;
  const { shortName: name, proved } = speciesById(pest);
  const sum = (amount: number) => `${amount.toFixed(2)} ${currencyOf(place)}`;
  const cost = unpriced === held.releases ? 'No price is noted' : `Spent: ${sum(money)}`;
  const each = moneyPerWeekWon === undefined ? '' : `, about ${sum(moneyPerWeekWon)} for each week won`;
  return `${capital(name)} ${verbFor(name, 'was', 'were')} within your limit in ${spanWords(weeksHeld.with)} of ${weeks} weeks, without friends in ${spanWords(weeksHeld.without)}${proved === undefined ? unproved : ''}. ${cost}${each}.`;
}

/** In played seasons it believed too much of pests without friends. */
const unproved = ' or fewer, since this forecast has not proved itself';

const cents = (amount: number): number => Math.round(amount * 100) / 100;
