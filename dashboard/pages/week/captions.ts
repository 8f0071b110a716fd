/** What stands under the roof: its chance in words, and a line for each pest the sentence is not about. */
import type { Advice, Candidate, PestForecast } from '../../../services/model/index.ts';
import type { CountWeek } from '../../figures/countWeeks.ts';
import { chanceCounts, chanceWord, paneNumber, paneWords } from '../../words/chances.ts';
import { dayAndMonth } from '../../words/dates.ts';
import { enemyWords, pestDoes } from '../../words/names.ts';
import { insects } from '../../words/numbers.ts';
import { perUnit } from '../../words/pests.ts';
import { apartWords, planned, wayOf } from '../../words/ways.ts';

export interface Caption {
  lead: string;
  text: string;
}

/**
 * Begins with what the panes are a chance of, so that no part of it reads as a statement. `counted` says whether the
 * last count was over the limit: then there is nothing left to pass.
 */
export function roofCaption(advice: Advice, counted: 'over' | 'within'): Caption {
  const { chanceIfLeft, chanceWithPlan, passesLimitBy, pest, plan } = advice;
  if (chanceIfLeft === undefined)
    return { lead: 'Dotted panes:', text: 'too little is known to say how likely anything is.' };
  const verb = counted === 'over' ? 'is over' : 'passes';
  const passes = pest ? pestDoes(pest, verb) : `the pest ${verb}`;
  const until = counted === 'over' ? 'on any day until' : 'by';
  const by = passesLimitBy ? ` ${until} ${dayAndMonth(passesLimitBy)}` : '';
  const panes = paneWords(chanceIfLeft);
  const withPlan =
    chanceWithPlan !== undefined && plan
      ? `; ${paneNumber(chanceWithPlan)} with ${planned(advice)?.washFirst ? 'a wash and ' : ''}${enemyWords[plan.enemy].name}`
      : '';
  return {
    lead: `Chance that ${passes} your limit${by} if left:`,
    text: `${panes.charAt(0).toLowerCase()}${panes.slice(1)}${withPlan}.`,
  };
}

/** Under it, where there is a plan: a later week, and what leaving it and the plan may cost. */
export function planApart(
  advice: Advice,
  chosen: Candidate | undefined,
  { currency, timeZone }: { currency: string | undefined; timeZone: string },
): string {
  const left = advice.candidates.find(({ id }) => id === 'leave');
  if (!left || !chosen || !advice.plan) return '';
  return apartWords(
    { ...left, way: wayOf(advice, left) },
    { ...chosen, way: wayOf(advice, chosen) },
    { how: chosen.washFirst ? 'after a wash and with them' : 'with them', currency, timeZone },
  );
}

/** A warning beside the sentence of the page: neither is said twice. */
export function warningWords(
  { text, reason, ends }: { text: string; reason: string; ends: string },
  sentence: string,
): { words: string; note: string } {
  // What to order and by when stands in the sentence already.
  const words = text.includes(sentence) ? 'The order of this week' : text;
  const why = text.includes(reason) || reason === sentence ? [] : [reason];
  return { words, note: [...why, ends].join(' ') };
}

/**
 * `last count 2; over your limit of 10: very unlikely (fewer than 1 of 10).` Two lines on a phone. Of a pest that was
 * never found the chance is only what usually happens.
 */
export function otherPestWords(pest: PestForecast, lastCount: CountWeek | undefined, found: boolean): string {
  const { probability } = pest.passesLimit;
  const { unit, limit: ownLimit } = pest.counted;
  const ofLeaves = unit === 'ten-leaves' ? ` ${perUnit[unit]}` : '';
  const none = lastCount ? 'none found so far' : 'not counted yet';
  const counted = lastCount && found ? `last count ${insects(lastCount.middle)}${ofLeaves}` : none;
  const limit = Math.round(ownLimit);
  const usually = found ? '' : 'as seasons usually go, ';
  return `${counted}; ${usually}over your limit of ${limit}: ${chanceWord(probability)} (${chanceCounts(probability)}).`;
}
