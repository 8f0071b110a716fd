/** The shorter parts of the week's page: days to keep, why, what would change it, other ways, cautions. */
import type { Advice, Way } from '../../../services/model/index.ts';
import { Section } from '../../parts/section.tsx';
import { SeedLabel } from '../../parts/seedLabel.tsx';
import { Table } from '../../parts/table.tsx';
import { currency, place } from '../../state.ts';
import { chanceCounts } from '../../words/chances.ts';
import { dayAndMonth, shortWeekday } from '../../words/dates.ts';
import { money, unbroken } from '../../words/numbers.ts';
import { planned, wayOf, weeksOver } from '../../words/ways.ts';

export function DaysToKeep({ advice }: { advice: Advice }) {
  if (advice.daysToKeep.length === 0) return null;
  return (
    <Section title="Days to keep">
      <ol class="seed-rows">
        {advice.daysToKeep.map((each) => (
          <SeedLabel
            key={`${each.day} ${each.verb}`}
            above={`${each.verb.toLowerCase().startsWith('order') ? 'by ' : ''}${shortWeekday(each.day)}`}
            date={dayAndMonth(each.day)}
            next={each.isNext}
          >
            <strong>{each.verb}</strong> {unbroken(withoutVerb(each.text, each.verb))}
          </SeedLabel>
        ))}
      </ol>
    </Section>
  );
}

/** The service may repeat the verb at the start of the text. */
function withoutVerb(text: string, verb: string): string {
  return text.toLowerCase().startsWith(verb.toLowerCase())
    ? text.slice(verb.length).replace(/^[: ]+/, '')
    : text;
}

export function Why({ advice }: { advice: Advice }) {
  return (
    <Section title="Why">
      <ol class="reasons">
        {advice.reasons.map((reason) => (
          <li key={reason}>{unbroken(reason)}</li>
        ))}
      </ol>
      <a class="text-link" href="/ahead">
        The counts and degree-days behind this
      </a>
    </Section>
  );
}

export function WouldChange({ advice }: { advice: Advice }) {
  if (advice.wouldChange.length === 0) return null;
  return (
    <Section title="What would change this">
      <ul class="ruled">
        {advice.wouldChange.map((each) => (
          <li key={each}>{unbroken(each)}</li>
        ))}
      </ul>
    </Section>
  );
}

/** What does not hold, or nobody can say, is read first. */
const openFirst = (conditions: Advice['conditions']) =>
  [...conditions].sort((a, b) => Number(a.verdict === 'holds') - Number(b.verdict === 'holds'));

const verdictWords = { holds: 'yes', fails: 'no', 'cannot-say': 'cannot say' } as const;

export function Conditions({ advice }: { advice: Advice }) {
  if (advice.conditions.length === 0) return null;
  return (
    <Section title="Conditions">
      <ul class="ruled">
        {openFirst(advice.conditions).map((each) => (
          <li key={each.rule} class="condition">
            <span>{unbroken(each.text)}</span> <strong>{verdictWords[each.verdict]}</strong>
          </li>
        ))}
      </ul>
    </Section>
  );
}

export function OtherWays({ advice }: { advice: Advice }) {
  const advised =
    advice.decision === 'wash' ? advice.candidates.find(({ id }) => id === 'wash') : planned(advice);
  const ways = advice.candidates.map((each) => wayOf(advice, each));
  const { cells, note } = weeksOver(advice.candidates.map((each, row) => ({ ...each, way: ways[row] })));
  const lost = (way: Way | undefined) => (way ? money(way.expectedLoss, currency.value, 0) : '');
  const weighed = ways.some(Boolean);
  const wash = advice.candidates.find(({ id }) => id === 'wash')?.price;
  const price = (amount: number | undefined) =>
    amount === undefined ? 'not typed in' : money(amount, currency.value);
  return (
    <Section title="Other ways" id="other-ways">
      {advice.candidates.length === 0 ? (
        <p class="note">Nothing else to weigh yet.</p>
      ) : (
        <Table
          caption="Other ways, how often each passes your limit, weeks over it, its price, and what may be lost in all"
          head={['Way', 'Passes limit', 'Weeks over', 'Price', ...(weighed ? ['In all'] : [])]}
          rows={advice.candidates.map((each, row) => [
            each.label,
            unbroken(chanceCounts(each.passesLimit)),
            unbroken(cells[row] ?? ''),
            price(each.price),
            ...(weighed ? [lost(ways[row])] : []),
          ])}
          strong={(row) => advice.candidates[row] === advised}
        />
      )}
      <p class="note">
        {advice.candidates.length > 0 && `${note} `}
        {weighed && 'In all: crop and money that may be lost until the season ends. '}
        {wash !== undefined && `A wash is reckoned at ${money(wash, currency.value)}. `}
        {place.value?.supplier
          ? `Prices of your supplier, in ${currency.value}, as typed in under Settings.`
          : `No supplier is typed in yet: prices and sums are assumed, in ${currency.value}.`}
      </p>
    </Section>
  );
}

export function Cautions({ advice }: { advice: Advice }) {
  if (advice.cautions.length === 0) return null;
  return (
    <p class="cautions">
      <strong>Before you act:</strong> {unbroken(advice.cautions.join(' '))}
    </p>
  );
}
