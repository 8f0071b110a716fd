/** The evidence in sentences: why, what would change it, which days to keep, what to mind. */
import { addDays, formatDay, localDay } from '../climate/calendar.ts';
import type { Advice, ReleasePlan } from '../outcome.ts';
import type { EnemyId, Season } from '../season.ts';
import { enemyTraits, speciesById } from '../species/catalogue.ts';
import { trapKindOf } from '../species/signs.ts';
import { pieces } from './candidates.ts';
import { chanceCount } from './chances.ts';
import { nextCountDay, type PestDecision } from './decide.ts';
import { middle } from './evidence.ts';
import { rule } from './trigger.ts';
import { groupOf } from './waitingTimes.ts';

export function reasonsFor(season: Season, decision: PestDecision, asOfMs: number): string[] {
  const pest = speciesById(decision.pest).shortName;
  const { evidence, ahead, chosen } = decision;
  const reasons = [catches(season, decision, asOfMs)];
  const wave = ahead.waves[0];
  if (wave) {
    const day = (instant: string) => formatDay(localDay(Date.parse(instant), season.place.timeZone));
    reasons.push(
      `The next adult ${pest} come between ${day(wave.adults.q10)} and ${day(wave.adults.q90)} in 8 of 10 cases.`,
    );
  }
  if (chosen) {
    reasons.push(
      `If left, ${pest} pass your limit in ${chanceCount(ahead.passesLimit.probability)} possible seasons; with ${chosen.candidate.label} in ${chanceCount(chosen.candidate.passesLimit)}.`,
    );
  } else if (evidence.parasitised) {
    reasons.push(
      `${evidence.parasitised.signs} of ${evidence.parasitised.of} on the leaves were black or mummies.`,
    );
  }
  const blocked = decision.conditions.find((c) => c.verdict === 'fails');
  if (blocked) reasons.push(blocked.text);
  return reasons;
}

function catches(season: Season, { pest, evidence }: PestDecision, asOfMs: number): string {
  const kind = trapKindOf(pest);
  const last = season.trapCounts
    .filter((c) => c.counts[kind] !== undefined && Date.parse(c.time) <= asOfMs)
    .sort((a, b) => Date.parse(a.time) - Date.parse(b.time))
    .slice(-3)
    .map((c) => Math.round(middle(c.counts[kind] ?? 0)));
  const name = speciesById(pest).shortName;
  if (last.length === 0)
    return `No trap has been counted yet; ${evidence.onLeaves} ${name} were seen on leaves.`;
  const row = last.length === 1 ? `${last[0]}` : `${last.slice(0, -1).join(', ')} then ${last.at(-1)}`;
  const rate = evidence.catchPerTrapWeek;
  const pooled =
    rate === undefined
      ? ''
      : ` That is about ${rate < 10 ? rate.toFixed(1) : Math.round(rate)} a trap and week.`;
  return `The last counts were ${row} ${name}.${pooled}`;
}

export function whatWouldChange(season: Season, decision: PestDecision): string[] {
  const pest = speciesById(decision.pest).shortName;
  if (decision.choice === 'leave' || decision.choice === 'wait') {
    return [
      `If the traps show ${rule.catchPerTrapWeek} ${pest} or more a week on two days, a release is weighed.`,
    ];
  }
  const changes = [
    `If the next count is ${Math.floor((decision.evidence.lastCatch ?? 2) / 2)} or fewer, wait and count again.`,
  ];
  const plan = decision.chosen?.candidate.plan;
  if (plan) {
    const { huntsAboveC } = enemyTraits(speciesById(plan.enemy));
    changes.push(`If the house stays under ${huntsAboveC} °C by day, set them out a week later.`);
    changes.push('If you sprayed anything this season, enter it first: residue harms them.');
  }
  if (season.place.supplier === undefined)
    changes.push('Enter your supplier’s days and prices: the dates here assume five days.');
  return changes;
}

export function daysToKeep(season: Season, decision: PestDecision, asOfMs: number): Advice['daysToKeep'] {
  const countOn = nextCountDay(season, decision.evidence.lastCountMs, asOfMs);
  const count = { day: countOn, verb: 'Count', text: 'the traps and look under ten leaves' };
  const plan =
    decision.choice === 'order' || decision.choice === 'top-up' ? decision.chosen?.candidate.plan : undefined;
  const kept = plan ? [...planDays(plan), count] : [count];
  return kept
    .sort((a, b) => a.day.localeCompare(b.day))
    .map((entry, index) => ({ ...entry, isNext: index === 0 }));
}

function planDays(plan: ReleasePlan) {
  const record = speciesById(plan.enemy);
  const traits = enemyTraits(record);
  const { verb, where, lookFor } = traits.release;
  return [
    {
      day: plan.orderBy ?? plan.windowFrom,
      verb: 'Order',
      text: `${pieces(plan.number, traits)} of ${record.shortName}`,
    },
    {
      day: plan.windowFrom,
      verb: verb.charAt(0).toUpperCase() + verb.slice(1),
      text: `the ${record.shortName}, ${where}`,
    },
    { day: plan.lookOn, verb: 'Look', text: `for ${lookFor}` },
    { day: addDays(plan.lookOn, 7), verb: 'Top up', text: 'or stop: we will say which' },
  ];
}

export function cautionsFor(decision: PestDecision): string[] {
  const enemy = decision.chosen?.candidate.plan.enemy ?? decision.order?.enemy;
  return [
    ...(enemy === undefined ? [] : releaseCautions(enemy)),
    'The label and the law where you live come first.',
    ...(decision.choice === 'wash' ? ['Keep water away from sockets and heaters.'] : []),
  ];
}

function releaseCautions(enemy: EnemyId): string[] {
  const { name } = speciesById(enemy);
  const licence = `${name} may need a licence where you live: ask your supplier and your authority.`;
  if (groupOf[enemy] === 'wasp') return [licence, 'Small wasps do not sting people.'];
  if (groupOf[enemy] === 'mite')
    return [licence, 'Open mite tubes at arm’s length; do not blow or breathe the dust.'];
  return [licence];
}
