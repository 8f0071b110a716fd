/** What friends did over the season, for what money, and what that suggests for the next one. */
import type { FollowUp, PestHeld } from '../../../services/model/index.ts';
import { Almanac, Line } from '../../parts/almanac.tsx';
import { Section } from '../../parts/section.tsx';
import { capital, pestNames } from '../../words/names.ts';
import { money, unbroken } from '../../words/numbers.ts';

function HeldLine({ held, currency }: { held: PestHeld; currency: string | undefined }) {
  const { pest, releases, unpriced, weeks, weeksHeld } = held;
  const spent = unpriced === releases ? 'no price' : money(held.money, currency);
  return (
    <Line
      name={capital(pestNames[pest])}
      value={`${Math.round(weeksHeld.with.q50)} of ${weeks} weeks, ${spent}`}
      note={held.text}
    />
  );
}

/** Weeks within the limit by pest, as it was and without friends. */
export function WhatFriendsHeld({ followUp }: { followUp: FollowUp }) {
  return (
    <Section title="What friends held">
      <Almanac>
        {followUp.pests.map((held) => (
          <HeldLine key={held.pest} held={held} currency={followUp.currency} />
        ))}
      </Almanac>
      <a class="text-link" href="/releases">
        Each release, settled or not
      </a>
    </Section>
  );
}

export function NextYear({ suggestions }: { suggestions: FollowUp['nextYear'] }) {
  return (
    <Section title="For next year">
      <Almanac>
        {suggestions.map(({ code, text, evidence }) => (
          <Line key={`${code} ${text}`} name={text} value="" note={evidence} />
        ))}
      </Almanac>
      <p class="note">{unbroken('From this season alone: one season can mislead.')}</p>
    </Section>
  );
}
